/** A mishap being chosen: what was pressed and typed so far, the bounds of each number, and what it comes to. */
import { type Mishap, type MishapKind, mishapKinds, type Plan, type Problem } from '../../../core/index.ts';
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
      return { least: 0, most: 9, usual: size < 9 ? size + 1 : size - 1 };
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

export type ReadDraft = { ok: true; mishap: Mishap } | { ok: false; problems: Problem[] };

/** The mishap a draft comes to, or what has to be changed first; problems are at `place` and `count`. */
export function readDraft(draft: Draft, plan: Plan): ReadDraft {
  const { kind, when } = draft;
  if (!kind) return { ok: false, problems: [{ at: 'kind', code: 'kind', says: 'Choose a mishap' }] };
  const problems: Problem[] = [];
  const mishap: Mishap = { kind, round: when.round };
  if (when.round === 'edging') mishap.edging = when.edging;
  if (needs(kind, 'side')) mishap.side = draft.side;
  if (needs(kind, 'corner')) mishap.corner = draft.corner;
  if (needs(kind, 'end')) mishap.end = draft.end;
  if (needs(kind, 'then')) mishap.then = draft.then;
  if (needs(kind, 'place')) {
    const place = readNumber('place', 'The stitch', draft.place, placeBounds(draft, plan), problems);
    mishap.place = place - 1;
  }
  const bounds = countBounds(draft, plan);
  if (bounds) {
    const count = readNumber('count', 'The number', draft.count, bounds, problems);
    const isSigned = kind === 'corner-moved' || kind === 'join-offset';
    mishap.count = isSigned && !draft.late ? -count : count;
    if (kind === 'corner-chains' && count === cornerSize(draft, plan))
      problems.push({ at: 'count', code: 'as-planned', says: `${count} is what the recipe asks for` });
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, mishap };
}

function readNumber(
  at: 'place' | 'count',
  label: string,
  text: string | null,
  { least, most, usual }: Bounds,
  problems: Problem[],
): number {
  if (text === null) return usual;
  const read = readWhole(text);
  const say = (code: string, says: string): number => {
    problems.push({ at, code, says });
    return usual;
  };
  if (!read.ok)
    return read.code === 'empty'
      ? say('empty', `Enter ${label.toLowerCase()}`)
      : say('not-whole', `${label} must be a whole number, like ${usual}`);
  if (read.value < least || read.value > most)
    return say('out-of-range', `${label} must be between ${least} and ${most}`);
  return read.value;
}
