/**
 * The drawing as a list: a row for every side and corner of every round, a cell for every position.
 * Nothing is built before it is asked for: a list of a million positions is a few rows with a count.
 */
import type { Pointed, Snapshot } from '../state/snapshot.ts';
import * as say from '../words/position.ts';
import type { Speech } from '../words/words.ts';
import { describePosition, meetsAnother, partnerOf, type RingNode, standingAt } from './describe.ts';
import { type Progress, progressAt } from './progress.ts';
import { type Drawn, type Ring, ringFor } from './ring.ts';
import type { Stretch } from './rounds.ts';
import { frontStretches } from './whole/build.ts';

export type TwinCell = {
  at: Pointed;
  kind: say.PositionKind;
  state: say.PositionState;
  partner: Pointed | null;
  /** Title and sentences as on the drawing. */
  title: string;
  lines: string[];
};

type TwinRow = {
  key: string;
  round: Pointed['round'];
  edging: number;
  side: number;
  /** -1 on a side. */
  corner: number;
  name: string;
  /** Cells in the row. */
  length: number;
  /** The node of its first cell. */
  first: number;
  /** Builds one cell; indices outside give the nearest. */
  cell(index: number): TwinCell;
};

export type Twin = {
  rows: readonly TwinRow[];
  /** Row and cell of a position, or null. */
  find(at: Pointed): { row: number; cell: number } | null;
};

type Source = Pick<Snapshot, 'step'> & { making: Drawn };

/** What all rows are read from. */
type Listed = { drawn: Drawn; ring: Ring; progress: Progress; speech: Speech };

/** Nodes of one round that stand in a row, the last not included. */
type NodeRange = { index: number; from: number; to: number };

/** The list of a snapshot. Cheap: call it anew for each. */
export function twinOf({ making, step }: Source, speech: Speech): Twin {
  const ring = ringFor(making);
  const listed: Listed = { drawn: making, ring, progress: progressAt(step), speech };
  const rows: TwinRow[] = [];
  const add = (index: number, stretches: readonly Stretch[]) => {
    for (const stretch of stretches) {
      const turn = Math.min(stretch.cornerFrom, stretch.to);
      if (turn > stretch.from) rows.push(rowOf(listed, { index, from: stretch.from, to: turn }));
      if (stretch.to > turn) rows.push(rowOf(listed, { index, from: turn, to: stretch.to }));
    }
  };
  add(-1, frontStretches(making.edge));
  ring.rounds.forEach((laid, index) => {
    add(index, laid.stretches);
  });
  return {
    rows,
    find(at) {
      const row = rows.findIndex(
        ({ round, edging, first, length }) =>
          round === at.round && edging === at.edging && at.node >= first && at.node < first + length,
      );
      return row < 0 ? null : { row, cell: at.node - rows[row]!.first };
    },
  };
}

function pointedAt({ index, node }: RingNode): Pointed {
  if (index < 0) return { round: 'front', edging: 0, node };
  return index === 0
    ? { round: 'foundation', edging: 0, node }
    : { round: 'edging', edging: index - 1, node };
}

function rowOf({ drawn, ring, progress, speech }: Listed, { index, from, to }: NodeRange): TwinRow {
  const first = { index, node: from };
  const { round, edging } = pointedAt(first);
  const words = { speech, edgings: ring.rounds.length - 1, round: drawn.edge.corners.length === 0 };
  const standing = standingAt(drawn, ring, first);
  const made = index < 0 ? Infinity : index === 0 ? progress.foundation : progress.edgings(index - 1);
  return {
    key: `${round}.${edging}.${from}`,
    round,
    edging,
    side: standing.side,
    corner: standing.corner,
    name: say.sayRow(index, standing, words),
    length: to - from,
    first: from,
    cell(asked) {
      const node = from + Math.max(0, Math.min(to - from - 1, asked));
      const own = { index, node };
      const at = pointedAt(own);
      const partner = partnerOf(ring, own);
      const alone = meetsAnother(ring, index) && partner === null;
      const described = describePosition(drawn, at, speech);
      return {
        at,
        kind: standingAt(drawn, ring, own).kind,
        state: alone ? 'alone' : node < made ? 'made' : 'to-come',
        partner: partner && pointedAt(partner),
        title: described?.title ?? '',
        lines: described?.lines ?? [],
      };
    },
  };
}
