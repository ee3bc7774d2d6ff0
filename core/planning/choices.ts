/** Settling the maker's choices: what is not chosen takes the trade's usual way (common practice, no source). */
import { checkCorner, checkCorners, checkNumber } from '../checks.ts';
import { limits } from '../limits.ts';
import type { Problem } from '../problems.ts';
import type { Arm, Choices, Corner, Edge, EdgingChoice, JoinStart } from '../types.ts';
import { isWhole, mod } from '../whole.ts';

type SettledEdging = { arm: Arm; increase: number; corners: Corner[] };

/** All that can be settled before the foundation's counts are known. */
export type EarlyChoices = {
  startSide: number;
  lead: number | undefined;
  edgings: SettledEdging[];
  foundationCorner: Corner;
  startCounts: 0 | 1;
  foundationAdds: 0 | 1;
  edgingAdds: 0 | 1;
  joinStart: JoinStart;
  open: number | undefined;
  markerEvery: number;
};

const usualCorner: Corner = { made: 'chain', size: 2 };

export function settleChoices(edge: Edge, choices: Choices, problems: Problem[]): EarlyChoices {
  const start = readStart(edge, choices.start, problems);
  const foundationCorner = choices.foundationCorner ?? usualCorner;
  checkCorner(foundationCorner, 'choices.foundationCorner', problems);
  return {
    ...start,
    edgings: readEdgings(edge, start.startSide, choices.edgings, problems),
    foundationCorner,
    startCounts: choices.foundationStart?.counts ?? 0,
    foundationAdds: choices.foundationClosing?.adds ?? 1,
    edgingAdds: choices.edgingClosing?.adds ?? 1,
    ...readJoin(edge, choices, problems),
    markerEvery: readMarker(choices.markerEvery, problems),
  };
}

function readStart(
  edge: Edge,
  { side, lead }: NonNullable<Choices['start']> = { side: 0 },
  problems: Problem[],
): { startSide: number; lead: number | undefined } {
  const isSide = checkSide(edge, side, 'choices.start.side', problems);
  const bounds = { min: 0, max: limits.stitches, like: 20 };
  const isLead = lead === undefined || checkNumber(lead, 'choices.start.lead', bounds, problems);
  return { startSide: isSide ? side : 0, lead: isLead ? lead : undefined };
}

/** Whether the front has that side; people count from 1. */
function checkSide(edge: Edge, side: number, at: string, problems: Problem[]): boolean {
  const isThere = isWhole(side, 0, edge.sides.length - 1);
  if (!isThere) problems.push({ at, code: 'between', params: { min: 1, max: edge.sides.length } });
  return isThere;
}

/** The front's corners in the back's own working order. */
const mirroredCorners = (edge: Edge, startSide: number): Corner[] =>
  edge.corners.map((_, j) => ({ ...(edge.corners[mod(startSide - j - 1, edge.corners.length)] as Corner) }));

function readEdgings(
  edge: Edge,
  startSide: number,
  edgings: readonly EdgingChoice[] = [{ arm: 1 }],
  problems: Problem[],
): SettledEdging[] {
  const mirrored = mirroredCorners(edge, startSide);
  if (!isWhole(edgings.length, 1, limits.edgings)) {
    problems.push({ at: 'choices.edgings', code: 'between', params: { min: 1, max: limits.edgings } });
    return [];
  }
  return edgings.map(({ arm, corner, increase = 0 }, n) => {
    const at = `choices.edgings[${n}]`;
    const isOwn = corner !== undefined && edge.corners.length > 0;
    const own = isOwn && checkCorners(corner, edge.corners.length, `${at}.corner`, problems);
    return {
      arm: readArm(arm, `${at}.arm`, problems),
      increase: readIncrease(edge, increase, `${at}.increase`, problems),
      corners: own || mirrored,
    };
  });
}

/** Stitches on each side of a corner: one number for both, or two. */
export function readArm(arm: number | Arm, at: string, problems: Problem[]): Arm {
  const [before, after] = typeof arm === 'number' ? [arm, arm] : arm;
  const bounds = { min: 0, max: limits.arm, like: 1 };
  const isGood = checkNumber(before, at, bounds, problems) && checkNumber(after, at, bounds, problems);
  return isGood ? [before, after] : [1, 1];
}

function readIncrease(edge: Edge, increase: number, at: string, problems: Problem[]): number {
  const isGood = checkNumber(increase, at, { min: 0, max: limits.stitches, like: 6 }, problems);
  if (isGood && increase > 0 && edge.corners.length > 0)
    problems.push({ at, code: 'increase-with-corners', params: {} });
  return isGood ? increase : 0;
}

/**
 * Where a side stays open the yarn is attached in its last stitch, which is never joined: the first pair is the
 * corner's, and the join goes round to the corner before.
 */
function readJoin(
  edge: Edge,
  { joinStart, open }: Choices,
  problems: Problem[],
): Pick<EarlyChoices, 'joinStart' | 'open'> {
  if (open === undefined || edge.corners.length < 2 || !checkSide(edge, open, 'choices.open', problems))
    return { joinStart: readJoinStart(edge, joinStart, problems), open: undefined };
  return { joinStart: { side: open, fromCorner: joinPlaces(edge, open) }, open };
}

function readJoinStart(
  edge: Edge,
  { side, fromCorner }: NonNullable<Choices['joinStart']> = { side: 0 },
  problems: Problem[],
): JoinStart {
  if (!checkSide(edge, side, 'choices.joinStart.side', problems)) return { side: 0, fromCorner: 1 };
  const furthest = joinPlaces(edge, side);
  if (fromCorner === undefined) return { side, fromCorner: Math.min(4, furthest) };
  const bounds = { min: 1, max: furthest, like: 4 };
  const isGood = checkNumber(fromCorner, 'choices.joinStart.fromCorner', bounds, problems);
  return { side, fromCorner: isGood ? fromCorner : 1 };
}

/** Positions of a front side at which a join can begin, its nearest corner position included. */
const joinPlaces = (edge: Edge, side: number): number => {
  const corners = edge.corners;
  const before = corners.length > 0 ? (corners[mod(side - 1, corners.length)] as Corner).size : 0;
  return (edge.sides[side] as number) + (before > 0 ? 1 : 0);
};

function readMarker(every = 10, problems: Problem[]): number {
  const isGood = checkNumber(
    every,
    'choices.markerEvery',
    { min: 1, max: limits.markerEvery, like: 10 },
    problems,
  );
  return isGood ? every : 10;
}
