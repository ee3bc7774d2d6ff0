/** Words on and about the drawings of the cloth. */
import { type Piece, type Rounding, toTape } from '../../../core/index.ts';
import type { Units } from '../../state/snapshot.ts';
import { many } from '../numbers.ts';
import { sayOutline } from './cut.ts';
import { sayLength } from './lengths.ts';

/** `says` for who does not see it, `inside` in its middle. */
export type FigureWords = { says: string; inside: string[] };

export const laidWords = (cut: Piece, seam: Piece, units: Units): FigureWords => ({
  says: `The cloth from its right side, ${sayOutline(cut, units, 'up')}, with the strip face down on its edge`,
  inside: ['right side of the cloth', 'strip face down', `seam ${sayOutline(seam, units)}`],
});

export const turnedWords = (back: Piece, units: Units): FigureWords => ({
  says: `The finished back from its right side, ${sayOutline(back, units)}`,
  inside: ['turned', 'right side of the cloth'],
});

/** A length at the edge it measures; of a cut as it is told, to the next step of a tape above. */
export const edgeLength = (mm: number, units: Units, rounding: Rounding): string =>
  sayLength(toTape(mm, units, rounding), units);

export const acrossOf = (length: string): string => `${length} across`;

export const sideName = (side: number): string => `side ${side}`;

export const LAYOUT_SAYS = 'Pieces laid on the cloth';

export const sayMoreRows = (rows: number): string => `${many(rows, 'row')} in all`;

/** The two looks at the cloth, on the switch and below the drawing. */
export const LOOKS = {
  heading: 'The drawing shows',
  laid: { says: 'laid on', caption: 'Base chains on the raw edge, seam just below the edging.' },
  turned: { says: 'turned', caption: 'Turned outwards: the edging stands round the cloth.' },
} as const;

export const SAVE_DRAWING = 'Save the drawing (SVG)';
export const SAVE_LAYOUT = 'Save the layout (SVG)';
export const TRUE_SIZE = 'It is of true size: 1 mm of the drawing is 1 mm of the cloth.';
export const savedAs = (file: string): string => `Saved as ${file}.`;

/** Names of the files, behind the project's own. */
export const FILE_NAMES = { laid: 'cloth', turned: 'finished back', layout: 'cutting layout' } as const;
