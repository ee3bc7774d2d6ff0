/** A mishap being chosen: what was pressed and typed so far, the bounds of each number, and what it comes to. */
import { limits, type Mishap, type MishapKind, mishapKinds, type Plan } from '../../../core/index.ts';
import type { AppProblem } from '../../state/problem.ts';
import { readWhole } from '../../state/whole-number.ts';
import type { When } from './kinds.ts';

/** Numbers are kept as typed; null where nothing was typed and the usual one shows. */
export type Draft = {
  when: When;
  kind: MishapKind | null;
  side: number;
  corner: number;
  place: string | null;
  count: string | null;
  late: boolean;
  end: 'before' | 'after';
  then: 'from-corner' | 'from-total';
};

export const emptyDraft: Draft = {
  when: { round: 'edging', edging: 0 },
  kind: null,
  side: 1,
  corner: 1,
  place: null,
  count: null,
  late: true,
  end: 'before',
  then: 'from-corner',
};

export type Bounds = { least: number; most: number; usual: number };

/** A draft whose side, corner and edging are there on this plan. */
export function fitted(draft: Draft, plan: Plan): Draft {
  const within = (index: number, count: number): number => Math.max(0, Math.min(index, count - 1));
  const edging = within(draft.when.edging, plan.edgings.length);
  const [before, after] = plan.edgings[edging]?.arm ?? [0, 0];
  const onlyEnd = before === 0 ? 'after' : after === 0 ? 'before' : null;
  return {
    ...draft,
    when: { ...draft.when, edging },
    side: within(draft.side, plan.edge.sides.length),
    corner: within(draft.corner, plan.edge.corners.length),
    end: onlyEnd ?? draft.end,
  };
}

/** The round of the plan in which a draft happens: its sides and corners. */
function shapeOf({ when }: Draft, plan: Plan): Plan['foundation'] | Plan['edgings'][number] {
  return when.round === 'edging' ? (plan.edgings[when.edging] ?? plan.foundation) : plan.foundation;
}

/** Which stitch of the side, from 1. The stitches worked into corners are another mishap's. */
export function placeBounds(draft: Draft, plan: Plan): Bounds {
  const count = shapeOf(draft, plan).sides[draft.side] ?? 1;
  const hasCorners = plan.edge.corners.length > 0;
  const [before, after] =
    draft.when.round === 'edging' && hasCorners ? (plan.edgings[draft.when.edging]?.arm ?? [0, 0]) : [0, 0];
  const least = after + 1;
  const most = Math.max(least, count - before);
  return { least, most, usual: Math.round((least + most) / 2) };
}

/** How many; what that means depends on the kind. Null where the kind has no number. */
export function countBounds(draft: Draft, plan: Plan): Bounds | null {
  switch (draft.kind) {
    case 'stitch-missed':
    case 'stitch-doubled': {
      const { least, most } = placeBounds(draft, plan);
      return { least: 1, most: most - least + 1, usual: 1 };
    }
    case 'corner-moved':
      return { least: 1, most: Math.max(1, roomAtCorner(draft, plan)), usual: 1 };
    case 'corner-chains': {
      const size = cornerSize(draft, plan);
      return { least: 0, most: limits.cornerSize, usual: size < limits.cornerSize ? size + 1 : size - 1 };
    }
    case 'join-offset':
      return { least: 1, most: Math.max(1, plan.pairs - 1), usual: 1 };
    case 'join-wrong-side':
      return { least: 1, most: Math.max(1, plan.edge.sides.length - 1), usual: 1 };
    default:
      return null;
  }
}

/** What the recipe asks for at the corner chosen. */
export const cornerSize = (draft: Draft, plan: Plan): number =>
  shapeOf(draft, plan).corners[draft.corner]?.size ?? 0;

/** Stitches beside a corner on the side towards which it moves: a start side is worked in two parts. */
function roomAtCorner({ corner, late }: Draft, { foundation }: Plan): number {
  const last = foundation.corners.length - 1;
  if (late) return corner === last ? foundation.tail : (foundation.sides[corner + 1] ?? 0);
  return corner === 0 ? foundation.lead : (foundation.sides[corner] ?? 0);
}

export const needs = (kind: MishapKind, what: 'side' | 'place' | 'corner' | 'end' | 'then'): boolean =>
  mishapKinds[kind].needs.includes(what);

export type ReadDraft = { ok: true; mishap: Mishap } | { ok: false; problems: AppProblem[] };

/** The mishap a draft comes to, or what has to be changed first; problems are at `mishap.place` and `mishap.count`. */
export function readDraft(draft: Draft, plan: Plan): ReadDraft {
  const { kind, when } = draft;
  if (!kind) return { ok: false, problems: [{ at: 'kind', code: 'no-kind', params: {} }] };
  const problems: AppProblem[] = [];
  const mishap: Mishap = { kind, round: when.round };
  if (when.round === 'edging') mishap.edging = when.edging;
  if (needs(kind, 'side')) mishap.side = draft.side;
  if (needs(kind, 'corner')) mishap.corner = draft.corner;
  if (needs(kind, 'end')) mishap.end = draft.end;
  if (needs(kind, 'then')) mishap.then = draft.then;
  if (needs(kind, 'place')) {
    const place = readNumber('mishap.place', draft.place, placeBounds(draft, plan), problems);
    mishap.place = place - 1;
  }
  const bounds = countBounds(draft, plan);
  if (bounds) {
    const count = readNumber('mishap.count', draft.count, bounds, problems);
    const isSigned = kind === 'corner-moved' || kind === 'join-offset';
    mishap.count = isSigned && !draft.late ? -count : count;
    if (kind === 'corner-chains' && count === cornerSize(draft, plan))
      problems.push({ at: 'mishap.count', code: 'as-planned', params: { count } });
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, mishap };
}

function readNumber(
  at: 'mishap.place' | 'mishap.count',
  text: string | null,
  { least, most, usual }: Bounds,
  problems: AppProblem[],
): number {
  if (text === null) return usual;
  const read = readWhole(text);
  if (read.ok && read.value >= least && read.value <= most) return read.value;
  if (read.ok) problems.push({ at, code: 'between', params: { min: least, max: most } });
  else if (read.code === 'empty') problems.push({ at, code: 'empty', params: {} });
  else problems.push({ at, code: 'not-whole', params: { like: usual } });
  return usual;
}
