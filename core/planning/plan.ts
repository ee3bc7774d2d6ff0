/**
 * The algebra: from the front's edge to the back's counts.
 *
 * Rule: the last edging must equal the front, mirrored; every edging grows each side by its two arms, so the
 * foundation is the front less all arms. `work` reaches the same counts by making stitches; each checks the other.
 */

import { done, fail, type Problem, type Result } from '../problems.ts';
import type { Choices, Corner, Edge, EdgingPlan, FoundationPlan, Plan, SettledChoices } from '../types.ts';
import { mod, sum } from '../whole.ts';
import { type EarlyChoices, settleChoices } from './choices.ts';

const sizes = (corners: readonly Corner[]): number => sum(corners.map((corner) => corner.size));

/** Stitches that the edgings add to every side. */
export const growthOf = (
  edgings: readonly { arm: readonly number[]; increase: number }[],
  cornered: boolean,
): number => sum(edgings.map((edging) => (cornered ? sum(edging.arm) : edging.increase)));

/** Back side j faces front side (s - j): wrong sides together, the rounds run in opposite directions. */
export const facesOf = (sideCount: number, startSide: number): number[] =>
  Array.from({ length: sideCount }, (_, j) => mod(startSide - j, sideCount));

/**
 * The plan of the back. Problems are at `edge.sides[i]` and `choices…`; a panel too small for its edging rounds is told the nearest change.
 */
export function planBack(edge: Edge, choices: Choices = {}): Result<Plan> {
  const problems: Problem[] = [];
  const early = settleChoices(edge, choices, problems);
  // What the counts follow from must be readable before the counts can be judged.
  if (problems.some(({ at }) => bearsOnCounts.test(at))) return fail(problems);
  return planWith(edge, early, problems);
}

const bearsOnCounts = /^choices(\.edgings|\.start|\.foundationStart|\.foundationClosing)/;

function planWith(edge: Edge, early: EarlyChoices, problems: Problem[]): Result<Plan> {
  const faces = facesOf(edge.sides.length, early.startSide);
  const cornerFaces = edge.corners.map((_, j) => mod(early.startSide - j - 1, edge.corners.length));
  checkLastCorners(edge, early, cornerFaces, problems);
  const growth = growthOf(early.edgings, edge.corners.length > 0);
  const facing = faces.map((side) => edge.sides[side] as number);
  const sides = facing.map((count) => count - growth);
  checkRoom(edge, early, growth, problems);
  const startSide = sides[0] as number;
  const worked = startSide - early.foundationAdds - early.startCounts;
  const lead = edge.corners.length === 0 ? worked : (early.lead ?? Math.ceil(Math.max(0, worked) / 2));
  if (startSide >= 1) checkLead(worked, lead, edge, problems);
  if (problems.length > 0) return fail(problems);
  const foundationCorners = edge.corners.map(() => early.foundationCorner);
  const plan = {
    edge,
    choices: settled(early, lead),
    faces,
    cornerFaces,
    foundation: planFoundation(sides, foundationCorners, { lead, tail: worked - lead }),
    edgings: planEdgings(sides, early),
    pairs: edge.total - (early.open === undefined ? 0 : (edge.sides[early.open] ?? 0)),
  };
  // The only place where a plan is made.
  return done(plan as Plan);
}

function checkLastCorners(edge: Edge, early: EarlyChoices, cornerFaces: number[], problems: Problem[]): void {
  const last = early.edgings.length - 1;
  const wrong = cornerFaces.filter(
    (front, j) => early.edgings[last]?.corners[j]?.size !== (edge.corners[front] as Corner).size,
  );
  if (wrong.length === 0) return;
  const front = wrong[0] as number;
  problems.push({
    at: `choices.edgings[${last}].corner`,
    code: 'corner-must-match',
    params: { corner: front, size: (edge.corners[front] as Corner).size },
  });
}

function checkRoom(edge: Edge, early: EarlyChoices, growth: number, problems: Problem[]): void {
  const rounds = early.edgings.length;
  edge.sides.forEach((count, i) => {
    if (count - growth >= 1) return;
    problems.push({
      at: `edge.sides[${i}]`,
      code: 'no-foundation-stitch',
      params: {
        stitches: count,
        growth,
        rounds,
        fitting: roundsThatFit(edge, early, count),
        cornered: edge.corners.length > 0,
      },
    });
  });
  if (edge.corners.length === 0) checkIncreases(edge.sides[0] as number, early, problems);
}

function roundsThatFit(edge: Edge, early: EarlyChoices, count: number): number {
  let fitting = early.edgings.length;
  while (fitting > 0 && count - growthOf(early.edgings.slice(0, fitting), edge.corners.length > 0) < 1)
    fitting--;
  return fitting;
}

/** A round can at most have every stitch doubled but the one where the yarn is attached. */
function checkIncreases(front: number, early: EarlyChoices, problems: Problem[]): void {
  let count = front;
  for (let n = early.edgings.length - 1; n >= 0; n--) {
    const increase = (early.edgings[n] as { increase: number }).increase;
    count -= increase;
    if (count >= 1 && increase > count - 1)
      problems.push({
        at: `choices.edgings[${n}].increase`,
        code: 'increase-too-big',
        params: { adds: increase, to: count, max: Math.floor((count + increase - 1) / 2) },
      });
  }
}

function checkLead(worked: number, lead: number, edge: Edge, problems: Problem[]): void {
  if (worked < 0)
    problems.push({
      at: 'choices.foundationStart.counts',
      code: 'start-side-too-short',
      params: {},
    });
  else if (edge.corners.length > 0 && lead > worked)
    problems.push({
      at: 'choices.start.lead',
      code: 'lead-too-long',
      params: { max: worked },
    });
}

function planFoundation(
  sides: number[],
  corners: Corner[],
  leg: { lead: number; tail: number },
): FoundationPlan {
  return { sides, corners, ...leg, total: sum(sides) + sizes(corners) };
}

function planEdgings(foundation: number[], early: EarlyChoices): EdgingPlan[] {
  let sides = foundation;
  return early.edgings.map(({ arm, increase, corners }) => {
    const grow = corners.length > 0 ? sum(arm) : increase;
    sides = sides.map((count) => count + grow);
    return { sides, corners, arm, increase, total: sum(sides) + sizes(corners) };
  });
}

const settled = (early: EarlyChoices, lead: number): SettledChoices => ({
  edgings: early.edgings.map(({ arm, increase }) => ({ arm, increase })),
  foundationCorner: early.foundationCorner,
  start: { side: early.startSide, lead },
  foundationStart: { counts: early.startCounts },
  foundationClosing: { adds: early.foundationAdds },
  edgingClosing: { adds: early.edgingAdds },
  joinStart: early.joinStart,
  ...(early.open !== undefined && { open: early.open }),
  markerEvery: early.markerEvery,
});
