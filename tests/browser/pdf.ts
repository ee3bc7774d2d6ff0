/** Reads what stands in a PDF: sizes, straight lines and words, in mm from the lower left of each page. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export type Line = { from: [x: number, y: number]; to: [x: number, y: number] };
/** `closed`: outlines that are drawn and close, like boxes. */
export type Sheet = {
  width: number;
  height: number;
  lines: Line[];
  words: string[];
  images: number;
  closed: number;
};

const mm = (points: number): number => (points * 25.4) / 72;

type Matrix = [number, number, number, number, number, number];
const times = ([a, b, c, d, e, f]: Matrix, [g, h, i, j, k, l]: Matrix): Matrix => [
  a * g + c * h,
  b * g + d * h,
  a * i + c * j,
  b * i + d * j,
  a * k + c * l + e,
  b * k + d * l + f,
];

/** What the library calls the parts of a path, in the order of its codes. */
const parts = { move: 0, line: 1, curve: 2, quadratic: 3, close: 4 } as const;

export async function readPdf(data: Uint8Array): Promise<Sheet[]> {
  const file = await getDocument({ data, verbosity: 0 }).promise;
  const sheets: Sheet[] = [];
  for (let n = 1; n <= file.numPages; n++) {
    const page = await file.getPage(n);
    const [left, low, right, high] = page.view as [number, number, number, number];
    const { fnArray, argsArray } = await page.getOperatorList();
    const { items } = await page.getTextContent();
    const words = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item.str] : []));
    const sheet = {
      width: mm(right - left),
      height: mm(high - low),
      words,
      lines: [] as Line[],
      images: 0,
      closed: 0,
    };
    let matrix: Matrix = [1, 0, 0, 1, 0, 0];
    const kept: Matrix[] = [];
    fnArray.forEach((kind, i) => {
      if (kind === OPS.save) kept.push(matrix);
      else if (kind === OPS.restore) matrix = kept.pop() ?? matrix;
      else if (kind === OPS.transform) matrix = times(matrix, argsArray[i] as Matrix);
      else if (kind === OPS.constructPath) {
        sheet.lines.push(...linesIn(argsArray[i], matrix));
        sheet.closed += closedIn(argsArray[i]);
      } else if (kind === OPS.paintImageXObject || kind === OPS.paintInlineImageXObject) sheet.images++;
    });
    sheets.push(sheet);
  }
  await file.destroy();
  return sheets;
}

function closedIn(args: unknown): number {
  const [painted, [path]] = args as [number, [ArrayLike<number> | null], unknown];
  if (painted !== OPS.stroke && painted !== OPS.closeStroke) return 0;
  const lengths = {
    [parts.move]: 2,
    [parts.line]: 2,
    [parts.curve]: 6,
    [parts.quadratic]: 4,
    [parts.close]: 0,
  };
  let closed = 0;
  for (let i = 0; path && i < path.length; ) {
    const part = path[i] as keyof typeof lengths;
    if (part === parts.close) closed++;
    i += 1 + lengths[part];
  }
  return closed;
}

/** A page as a printer sees it, `density` points an inch. */
export async function rasterOf(
  data: Uint8Array,
  page: number,
  density: number,
): Promise<{ data: Uint8ClampedArray; width: number; height: number }> {
  const file = await getDocument({ data: data.slice(), verbosity: 0 }).promise;
  const sheet = await file.getPage(page);
  const viewport = sheet.getViewport({ scale: density / 72 });
  const [width, height] = [Math.ceil(viewport.width), Math.ceil(viewport.height)];
  const factory = file.canvasFactory as { create(width: number, height: number): Made };
  const { canvas, context } = factory.create(width, height);
  await sheet.render({ canvas, viewport }).promise;
  const { data: points } = context.getImageData(0, 0, width, height);
  await file.destroy();
  return { data: points, width, height };
}

type Made = { canvas: HTMLCanvasElement; context: CanvasRenderingContext2D };

function linesIn(args: unknown, matrix: Matrix): Line[] {
  const [painted, [path]] = args as [number, [ArrayLike<number> | null], unknown];
  // Clips and fills are paths too.
  if (painted !== OPS.stroke) return [];
  const place = (x: number, y: number): [number, number] => {
    const [, , , , e, f] = times(matrix, [1, 0, 0, 1, x, y]);
    return [mm(e), mm(f)];
  };
  const lines: Line[] = [];
  let here: [number, number] = [0, 0];
  for (let i = 0; path && i < path.length; ) {
    const part = path[i++];
    const point = (): [number, number] => place(path[i++] as number, path[i++] as number);
    if (part === parts.move) here = point();
    else if (part === parts.line) {
      const to = point();
      lines.push({ from: here, to });
      here = to;
    } else if (part === parts.curve || part === parts.quadratic) {
      i += part === parts.curve ? 4 : 2;
      here = point();
    }
  }
  return lines;
}
