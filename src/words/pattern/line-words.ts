/** The words of a panel as a few lines of plain text: what is written is read back by the same words. */
import type { FieldKind } from '../../state/fields.ts';

/** Of a project and how it is shown, in the order in which they are written. */
export type LineLabel =
  | 'name'
  | 'sideCount'
  | 'counted'
  | 'cornerMade'
  | 'cornersDiffer'
  | 'edgingCount'
  | 'foundationStart'
  | 'foundationClosing'
  | 'edgingClosing'
  | 'mishap'
  | 'adjustment'
  | 'stands'
  | 'dialect'
  | 'hand'
  | 'units'
  | 'tab'
  | 'place'
  | 'answered'
  | 'check';

export type LineWords = {
  /** The first line, by which the lines are found in a letter. */
  head: string;
  labels: Record<LineLabel, string>;
  fields: Record<FieldKind, string>;
  /** Words for what is chosen out of a few; what is not among them stands as it is. */
  values: Record<string, string>;
  /** Numbers of an act that count from 1 where they are read. */
  acts: { side: string; corner: string; edging: string; place: string };
  foundation: string;
  edging: string;
  /** A count that was not made. */
  open: string;
};
