/**
 * The whole making as a sequence of steps: front edge, foundation, closing, edging rounds, cloth, join.
 *
 * Rule: a step is computed when it is asked for, from the plan alone (or from the worked rounds where a hand does
 * otherwise), so opening a panel costs the number of its sides and not of its stitches.
 */

import type { Act } from '../hand/acts/acts.ts';
import { work } from '../hand/work.ts';
import { pair } from '../join/pair.ts';
import type { Manner, PairRun, Plan, Round, RoundName, Stage, Step, Steps, Worked } from '../types.ts';
import { lastNotAbove } from '../whole.ts';
import { joinSections } from './join-steps.ts';
import {
  carriedOut,
  type RoundsSeen,
  type RoundView,
  viewOfEdging,
  viewOfFoundation,
  viewOfRound,
} from './layout.ts';
import { clothSection, edgingSections, foundationSections, frontSection } from './round-steps.ts';
import { actsSection, bareStep, type Section } from './sections.ts';

/**
 * The making of a plan, carrying out mishaps if any. `manner` says how the join pairs; `made` is the back as worked
 * and paired with these mishaps, where that was done already.
 * `at(i)` gives the step at index i (the nearest end outside), `stepOf` the step that makes a node.
 */
export function steps(
  plan: Plan,
  mishaps: readonly Act[] = [],
  { manner = 'corner-to-corner', made }: StepOptions = {},
): Steps {
  if (mishaps.length === 0) {
    const planned = seenPlanned(plan);
    return stepsOf(sectionsOf(plan, planned, plannedRuns(plan, planned)));
  }
  const { worked, runs } = made ?? makeBack(plan, mishaps, manner);
  return stepsOf(sectionsOf(plan, seenWorked(worked), runs));
}

export type StepOptions = { manner?: Manner; made?: Made };
type Made = { worked: Worked; runs: PairRun[] };

function makeBack(plan: Plan, mishaps: readonly Act[], manner: Manner): Made {
  const worked = work(plan, mishaps);
  const back = worked.edgings.at(-1) as Round;
  return { worked, runs: pair(plan.edge, back, { start: worked.join, manner }).runs };
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
  const marks: RoundsSeen['marks'] = new Map();
  for (const round of [worked.foundation, ...worked.edgings])
    for (const { node, mishap, asked } of round.marks) {
      const at = `${round.name} ${round.edging} ${node}`;
      marks.set(at, carriedOut(mishap, asked, marks.get(at)));
    }
  return { foundation: viewOfRound(worked.foundation), edgings: worked.edgings.map(viewOfRound), marks };
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
    ...foundationSections(plan, seen),
    ...plan.edgings.flatMap((_, n) => edgingSections(plan, seen, n)),
    clothSection(plan),
    ...joinSections(plan, runs, seen.edgings.at(-1)?.length ?? 1),
    actsSection('finished', 0, [
      bareStep('finished', 'finished', { loopsBefore: 0, loopsAfter: 0, ...doneAtLast(plan) }),
    ]),
  ].filter((section) => section.length > 0);
}

/** With an open side fewer pairs are joined than there are. */
const doneAtLast = ({ edge, choices: { open } }: Plan): Partial<Step> =>
  open === undefined ? {} : { done: edge.total - (edge.sides[open] as number) };

function stepsOf(sections: Section[]): Steps {
  const starts: number[] = [];
  let length = 0;
  for (const section of sections) {
    starts.push(length);
    length += section.length;
  }
  const at = (index: number): Step => {
    const inside = Math.min(Math.max(0, Math.trunc(index) || 0), length - 1);
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
    stepOf: (round, node, edging = 0) => {
      const stages = stagesOf.get(round) ?? [];
      for (const [which, section] of sections.entries()) {
        const isRound = stages.includes(section.stage) && (round !== 'edging' || section.edging === edging);
        const found = isRound ? section.find(node) : -1;
        if (found >= 0) return (starts[which] as number) + found;
      }
      return -1;
    },
  };
}

/** The stages in which nodes of a round are made. */
const stagesOf: ReadonlyMap<RoundName | 'join', readonly Stage[]> = new Map([
  ['front', ['front']],
  ['foundation', ['foundation', 'foundation-closing']],
  ['edging', ['edging', 'edging-closing']],
  ['join', ['join']],
]);
