/** A mishap being chosen: what was pressed and typed so far, the bounds of each number, and what it comes to. */
import {
  type ActKind,
  actOf,
  type Bounds,
  entryOf,
  type Mishap,
  needs,
  type Plan,
  placeBounds,
  type Spot,
  type When,
} from '../../../core/index.ts';
import { unreadable } from '../../input/typed.ts';
import { readWhole } from '../../input/whole-number.ts';
import type { AppProblem } from '../../state/problem.ts';

/** Numbers are kept as typed; null where nothing was typed and the usual one shows. */
export type Draft = {
  when: When;
  kind: ActKind | null;
  side: number;
  corner: number;
  place: string | null;
  count: string | null;
  late: boolean;
  end: 'before' | 'after';
  then: 'from-corner' | 'from-total';
  of: 'front' | 'back';
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
  of: 'back',
};

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

/** Where a draft's act is to happen. */
const spotOf = ({ when, side, corner, late }: Draft): Spot => ({ ...when, side, corner, late });

/** Which stitch of the side, from 1. */
export const placesFor = (draft: Draft, plan: Plan): Bounds => placeBounds(plan, spotOf(draft));

/** How many; what that means depends on the kind. Null where the kind has no number. */
export const countFor = (draft: Draft, plan: Plan): Bounds | null =>
  (draft.kind && entryOf(draft.kind).count?.(plan, spotOf(draft))) ?? null;

export type ReadDraft = { ok: true; mishap: Mishap } | { ok: false; problems: AppProblem[] };

/** The mishap a draft comes to, or what has to be changed first; problems are at `mishap.place` and `mishap.count`. */
export function readDraft(draft: Draft, plan: Plan): ReadDraft {
  const { kind, when } = draft;
  if (!kind) return { ok: false, problems: [{ at: 'kind', code: 'no-kind', params: {} }] };
  const problems: AppProblem[] = [];
  const { isSigned, asked } = entryOf(kind);
  const place = needs(kind, 'place')
    ? readNumber('mishap.place', draft.place, placesFor(draft, plan), problems) - 1
    : 0;
  const bounds = countFor(draft, plan);
  const count = bounds ? readNumber('mishap.count', draft.count, bounds, problems) : undefined;
  if (count !== undefined && count === asked?.(plan, spotOf(draft)))
    problems.push({ at: 'mishap.count', code: 'as-planned', params: { count } });
  const mishap = actOf(kind, {
    ...when,
    side: draft.side,
    corner: draft.corner,
    end: draft.end,
    then: draft.then,
    of: draft.of,
    place,
    ...(count === undefined ? {} : { count: isSigned && !draft.late ? -count : count }),
  });
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
  else problems.push(unreadable(read, at, usual));
  return usual;
}
