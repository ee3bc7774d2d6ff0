/** The number that goes into a field: marks are stitches only, and the field may count corners too. */
import { rowOf } from '../state/fields.ts';
import type { Field, Snapshot } from '../state/snapshot.ts';
import type { View } from './view.ts';

export type FieldNumber = {
  stitches: number;
  /** Positions of corners that the field's number takes in beside them. */
  corners: number;
};

export function numberFor(field: Field, stitches: number, { project, making }: Snapshot): FieldNumber {
  const row = rowOf(field);
  const isFront = row?.kind === 'side' || row?.kind === 'front-again';
  if (!row || !isFront || project.counted === 'stitches-only' || project.sideCount === 0)
    return { stitches, corners: 0 };
  const { corners } = making.edge;
  const sizeAt = (corner: number): number => corners[(corner + corners.length) % corners.length]?.size ?? 0;
  const before = project.counted === 'both-corners' ? sizeAt(row.index - 1) : 0;
  return { stitches, corners: sizeAt(row.index) + before };
}

type Linked = Pick<View, 'field' | 'snapshot' | 'counted' | 'panel'>;

/** What stands in the photo's field. */
export const inField = ({ field, snapshot }: Linked): string => snapshot.project.texts[field] ?? '';

/** The photo was taken for the panel in hand. */
export const isOwn = ({ panel, snapshot }: Linked): boolean => panel === snapshot.project.name;

/** The gap along the photo's side, as long as its field holds the number that was counted on it; else 0. */
export const gapOn = (of: Linked): number =>
  of.counted !== null && isOwn(of) && of.counted === inField(of) ? gapAlong(of.field, of.snapshot) : 0;

/** By how much the back is longer than the front along a front side; 0 for what is no front side. */
function gapAlong(field: Field, { making, isStale }: Snapshot): number {
  const row = rowOf(field);
  if (isStale || row?.kind !== 'side') return 0;
  return making.pairing.sides.find(({ frontSide }) => frontSide === row.index)?.surplus ?? 0;
}
