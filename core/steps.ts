/**
 * The whole making as a sequence of steps: front edge, foundation, closing, edging rounds, cloth, join.
 *
 * Rule: a step is computed when it is asked for, from the plan alone (or from the worked rounds where a hand does
 * otherwise), so opening a panel costs the number of its sides and not of its stitches.
 */
import { joinSections } from './join-steps.ts';
import { type RoundsSeen, type RoundView, viewOfEdging, viewOfFoundation, viewOfRound } from './layout.ts';
import { readMishaps } from './mishap.ts';
import { pair } from './pair.ts';
import { done, fail, fieldsOf, own } from './problems.ts';
import { closingSections, clothSection, frontSection, roundSections } from './round-steps.ts';
import { actsSection, bareStep, type Section } from './sections.ts';
import type { Manner, PairRun, Plan, Result, RoundName, Step, Steps, Worked } from './types.ts';
import { lastNotAbove } from './whole.ts';
import { looksLikePlan, workWith } from './work.ts';

/**
 * The making of a plan, carrying out mishaps if any. `options.manner` says how the join pairs (default corner to
 * corner). `at(i)` gives the step at index i (the nearest end outside), `stepOf` the step that makes a node.
 * Problems are at `plan`, `mishaps[i]…`.
 */
export function steps(plan: unknown, mishaps?: unknown, options?: unknown): Result<Steps> {
  if (!looksLikePlan(plan)) return fail([{ at: 'plan', code: 'plan', says: 'Plan the back first' }]);
  const read = readMishaps(mishaps, plan);
  if (!read.ok) return read;
  const manner = (own(fieldsOf(options) ?? {}, 'manner') ?? 'corner-to-corner') as Manner;
  const worked = read.value.length > 0 ? workWith(plan, read.value) : null;
  const seen = worked ? seenWorked(worked) : seenPlanned(plan);
  const runs = worked ? runsOf(plan, worked, manner) : plannedRuns(plan, seen);
  if (!runs)
    return fail([{ at: 'manner', code: 'manner', says: 'Choose stitch by stitch, or corner to corner' }]);
  return done(stepsOf(sectionsOf(plan, seen, runs)));
}

function seenPlanned(plan: Plan): RoundsSeen {
  const foundation = viewOfFoundation(plan);
  const edgings: RoundView[] = [];
  plan.edgings.forEach((_, n) => {
    edgings.push(viewOfEdging(plan, n, edgings[n - 1] ?? foundation));
  });
  return { foundation, edgings, marks: new Map() };
}

function seenWorked(worked: Worked): RoundsSeen {
  const marks = new Map<string, number>();
  for (const round of [worked.foundation, ...worked.edgings])
    for (const { node, mishap } of round.marks) marks.set(`${round.name} ${round.edging} ${node}`, mishap);
  return { foundation: viewOfRound(worked.foundation), edgings: worked.edgings.map(viewOfRound), marks };
}

function runsOf(plan: Plan, worked: Worked, manner: Manner): PairRun[] | null {
  const paired = pair(plan.edge, worked.edgings.at(-1), { start: worked.join, manner });
  if (paired.ok) return paired.value.runs;
  // A back of which nothing is left has nothing to join; any other failure is the manner's.
  return paired.problems.some((problem) => problem.code === 'back-empty') ? [] : null;
}

/** Everything meets: one run from the join's start around. */
function plannedRuns(plan: Plan, seen: RoundsSeen): PairRun[] {
  const { side, fromCorner } = plan.choices.joinStart;
  const { edge } = plan;
  const k = edge.sides.length;
  const cornersBefore = edge.corners.length > 0;
  const startIndex = (list: number[], sizes: number[], upTo: number): number => {
    let at = 0;
    for (let i = 0; i < upTo; i++) at += (list[i] as number) + (sizes[i] ?? 0);
    return at;
  };
  const frontSizes = edge.corners.map((corner) => corner.size);
  const before = cornersBefore ? (frontSizes[(side + k - 1) % k] as number) : 0;
  const front = startIndex(edge.sides, frontSizes, side) + fromCorner - (before > 0 ? 2 : 1);
  const total = edge.total;
  const view = seen.edgings.at(-1) as RoundView;
  const backSide = plan.faces.indexOf(side);
  // Node that follows the whole back side which meets this front side.
  const end = cornersBefore ? (view.turns[backSide] as number) : view.length;
  const back = end - fromCorner + (before > 0 ? 1 : 0);
  return [
    {
      kind: 'joined',
      at: 0,
      front: ((front % total) + total) % total,
      back: ((back % total) + total) % total,
      count: total,
    },
  ];
}

function sectionsOf(plan: Plan, seen: RoundsSeen, runs: PairRun[]): Section[] {
  return [
    frontSection(plan),
    ...roundSections(plan, seen, 'foundation', 0),
    ...closingSections(seen, 'foundation', 0),
    ...plan.edgings.flatMap((_, n) => [
      ...roundSections(plan, seen, 'edging', n),
      ...closingSections(seen, 'edging', n),
    ]),
    clothSection(plan),
    ...joinSections(plan, runs, seen.edgings.at(-1)?.length ?? 1),
    actsSection('finished', 0, [bareStep('finished', 'finished', { loopsBefore: 0, loopsAfter: 0 })]),
  ].filter((section) => section.length > 0);
}

function stepsOf(sections: Section[]): Steps {
  const starts: number[] = [];
  let length = 0;
  for (const section of sections) {
    starts.push(length);
    length += section.length;
  }
  const at = (index: number): Step => {
    const inside = Number.isFinite(index) ? Math.min(Math.max(0, Math.trunc(index)), length - 1) : 0;
    const which = lastNotAbove(starts, inside);
    return { ...(sections[which] as Section).at(inside - (starts[which] as number)), index: inside };
  };
  const stretches = sections.flatMap((section, which) =>
    section.stretches.map(({ offset, side, corner }) => ({
      from: (starts[which] as number) + offset,
      stage: section.stage,
      edging: section.edging,
      side,
      corner,
    })),
  );
  return {
    length,
    at,
    stretches,
    stepOf: (round, node, edging = 0) => findStep(sections, starts, at, round, node, edging),
  };
}

/** Sections that make nodes have them ascending, but for the join, whose front nodes go around the ring. */
function findStep(
  sections: Section[],
  starts: number[],
  at: (index: number) => Step,
  round: RoundName | 'join',
  node: number,
  edging: number,
): number {
  for (let which = 0; which < sections.length; which++) {
    const section = sections[which] as Section;
    const from = starts[which] as number;
    const fits =
      round === 'join'
        ? section.stage === 'join'
        : section.stage.startsWith(round) && section.edging === edging;
    if (!fits) continue;
    const found = round === 'join' ? findInJoin(section, node) : findAscending(section, node);
    if (found >= 0) return at(from + found).index;
  }
  return -1;
}

function findAscending(section: Section, node: number): number {
  let low = 0;
  let high = section.length - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const here = section.at(middle).node;
    if (here === node) return middle;
    if (here < node) low = middle + 1;
    else high = middle - 1;
  }
  return -1;
}

function findInJoin(section: Section, node: number): number {
  // Within one run the front's nodes rise by one a step, so a run is entered by its first step only.
  for (let offset = 0; offset < section.length; ) {
    const step = section.at(offset);
    const left = step.node < 0 ? 1 : Math.max(1, runLeft(section, offset));
    const distance = node - step.node;
    if (step.node >= 0 && distance >= 0 && distance < left) return offset + distance;
    offset += left;
  }
  return -1;
}

/** Steps from `offset` on whose front nodes rise by one each. */
function runLeft(section: Section, offset: number): number {
  const from = section.at(offset).node;
  let low = 1;
  let high = section.length - offset;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (section.at(offset + middle - 1).node === from + middle - 1) low = middle;
    else high = middle - 1;
  }
  return low;
}
