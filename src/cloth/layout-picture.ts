/** The cutting layout to scale: the width of the cloth across, its length downwards, pieces in rows. */
import type { Layout } from '../../core/index.ts';
import type { Units } from '../state/snapshot.ts';
import { LAYOUT_SAYS, sayMoreRows } from '../words/cloth/figures.ts';
import { sayLength } from '../words/cloth/lengths.ts';
import type { Figure, Shape } from './figure.ts';

export type LaidOut = {
  layout: Layout;
  /** mm: the width of the cloth, what is not used along each selvedge, and the box around one piece. */
  clothWidth: number;
  selvedge: number;
  piece: { width: number; height: number };
  count: number;
  units: Units;
};

/** Further rows are told and not drawn. */
const MOST_ROWS = 4;

export function layoutPicture({ layout, clothWidth, selvedge, piece, count, units }: LaidOut): Figure {
  const [wide, high] = layout.isTurned ? [piece.height, piece.width] : [piece.width, piece.height];
  const rows = Math.min(layout.rows, MOST_ROWS);
  const length = (rows - 1) * layout.rowStep + high;
  const scale = Math.max(clothWidth, length) / 300;
  const margin = 36 * scale;
  const pieces = Array.from({ length: Math.min(count, rows * layout.across) }, (_, i): Shape[] => {
    const x = selvedge + (i % layout.across) * wide;
    const y = Math.floor(i / layout.across) * layout.rowStep;
    return [
      { kind: 'path', ink: 'piece', d: `M${x} ${y}h${wide}v${high}h${-wide}Z`, width: 1.4 * scale },
      { kind: 'words', ink: 'word', x: x + wide / 2, y: y + high / 2, size: 16 * scale, text: `${i + 1}` },
    ];
  });
  return {
    box: [-margin, -margin, clothWidth + 2 * margin, length + 2 * margin],
    says: LAYOUT_SAYS,
    shapes: [
      { kind: 'path', ink: 'cloth', d: `M0 0H${clothWidth}V${length}H0Z` },
      ...pieces.flat(),
      {
        kind: 'words',
        ink: 'length',
        x: clothWidth / 2,
        y: -14 * scale,
        size: 17 * scale,
        text: sayLength(clothWidth, units),
      },
      {
        kind: 'words',
        ink: 'word',
        x: clothWidth / 2,
        y: length + 16 * scale,
        size: 16 * scale,
        text: rows < layout.rows ? sayMoreRows(layout.rows) : sayLength(length, units),
      },
    ],
  };
}
