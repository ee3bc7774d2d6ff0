/** An address as a QR code: modules as one path, with its quiet zone. ISO/IEC 18004. */
import { html, type TemplateResult } from 'lit-html';
import qrcode from 'qrcode-generator';

/** Modules of paper all round that a reader needs (ISO/IEC 18004). */
const QUIET = 4;

/** Dark modules as runs along each row: `M x y h n v 1 h -n z`. */
function qrOf(text: string): { size: number; path: string } {
  const code = qrcode(0, 'M');
  code.addData(text, 'Byte');
  code.make();
  const count = code.getModuleCount();
  const runs: string[] = [];
  for (let row = 0; row < count; row++)
    for (let column = 0; column < count; column++) {
      const from = column;
      while (column < count && code.isDark(row, column)) column++;
      if (column > from) runs.push(`M${from + QUIET} ${row + QUIET}h${column - from}v1h${from - column}z`);
    }
  return { size: count + 2 * QUIET, path: runs.join('') };
}

export function qrPicture(text: string, says: string): TemplateResult {
  const { size, path } = qrOf(text);
  return html`<svg class="sheet-qr" viewBox="0 0 ${size} ${size}" role="img" aria-label=${says} shape-rendering="crispEdges">
    <path d=${path} />
  </svg>`;
}
