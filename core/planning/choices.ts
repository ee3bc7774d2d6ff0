/** Settling the maker's choices: what is not chosen takes the trade's usual way (common practice, no source). */
import {
  fieldsOf,
  listOf,
  numberProblem,
  own,
  plainZero,
  readCorner,
  readCorners,
  readZeroOrOne,
} from '../checks.ts';
import { limits } from '../limits.ts';
import type { Problem } from '../problems.ts';
import type { Arm, Corner, Edge, JoinStart } from '../types.ts';
import { isWhole, mod } from '../whole.ts';

export type SettledEdging = { arm: Arm; increase: number; corners: Corner[] };

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
  markerEvery: number;
};

export function settleChoices(edge: Edge, choices: unknown, problems: Problem[]): EarlyChoices {
  const fields = fieldsOf(choices) ?? {};
  if (choices !== undefined && !fieldsOf(choices))
    problems.push({ at: 'choices', code: 'unreadable', params: {} });
  const start = readStart(edge, own(fields, 'start'), problems);
  const foundationCorner = own(fields, 'foundationCorner');
  return {
    ...start,
    edgings: readEdgings(edge, start.startSide, own(fields, 'edgings'), problems),
    foundationCorner:
      foundationCorner === undefined
        ? { made: 'chain', size: 2 }
        : (readCorner(foundationCorner, 'choices.foundationCorner', problems) ?? {
            made: 'chain',
            size: 2,
          }),
    startCounts: readZeroOrOne(
      own(fields, 'foundationStart'),
      'counts',
      0,
      'choices.foundationStart',
      problems,
    ),
    foundationAdds: readZeroOrOne(
      own(fields, 'foundationClosing'),
      'adds',
      1,
      'choices.foundationClosing',
      problems,
    ),
    edgingAdds: readZeroOrOne(own(fields, 'edgingClosing'), 'adds', 1, 'choices.edgingClosing', problems),
    joinStart: readJoinStart(edge, own(fields, 'joinStart'), problems),
    markerEvery: readMarker(own(fields, 'markerEvery'), problems),
  };
}

function readStart(
  edge: Edge,
  value: unknown,
  problems: Problem[],
): { startSide: number; lead: number | undefined } {
  if (value === undefined) return { startSide: 0, lead: undefined };
  const fields = fieldsOf(value) ?? {};
  if (!fieldsOf(value)) problems.push({ at: 'choices.start', code: 'unreadable', params: {} });
  const side = own(fields, 'side') ?? 0;
  const lead = own(fields, 'lead');
  if (!isWhole(side, 0, edge.sides.length - 1))
    problems.push({
      at: 'choices.start.side',
      code: 'between',
      params: { min: 1, max: edge.sides.length },
    });
  if (lead !== undefined) {
    const problem = numberProblem(lead, 'choices.start.lead', { min: 0, max: limits.stitches, like: 20 });
    if (problem) problems.push(problem);
  }
  return {
    startSide: isWhole(side, 0, edge.sides.length - 1) ? plainZero(side) : 0,
    lead: isWhole(lead, 0, limits.stitches) ? plainZero(lead) : undefined,
  };
}

/** The front's corners in the back's own working order. */
export const mirroredCorners = (edge: Edge, startSide: number): Corner[] =>
  edge.corners.map((_, j) => ({ ...(edge.corners[mod(startSide - j - 1, edge.corners.length)] as Corner) }));

function readEdgings(edge: Edge, startSide: number, value: unknown, problems: Problem[]): SettledEdging[] {
  const mirrored = mirroredCorners(edge, startSide);
  if (value === undefined) return [{ arm: [1, 1], increase: 0, corners: mirrored }];
  const list = listOf(value, limits.edgings);
  if (!list || list.length < 1) {
    problems.push({
      at: 'choices.edgings',
      code: 'between',
      params: { min: 1, max: limits.edgings },
    });
    return [];
  }
  return list.map((one, n) => {
    const at = `choices.edgings[${n}]`;
    const fields = fieldsOf(one) ?? {};
    if (!fieldsOf(one)) problems.push({ at, code: 'unreadable', params: {} });
    const given = own(fields, 'corner');
    const corners =
      given === undefined || edge.corners.length === 0
        ? mirrored
        : (readCorners(given, edge.corners.length, `${at}.corner`, problems) ?? mirrored);
    return {
      arm: readArm(own(fields, 'arm'), `${at}.arm`, problems),
      increase: readIncrease(edge, own(fields, 'increase'), `${at}.increase`, problems),
      corners,
    };
  });
}

function readArm(value: unknown, at: string, problems: Problem[]): Arm {
  if (value === undefined) return [1, 1];
  const given = listOf(value, 2);
  const pair: unknown[] = given?.length === 2 ? given : [value, value];
  const problem = pair
    .map((one) => numberProblem(one, at, { min: 0, max: limits.arm, like: 1 }))
    .find((one) => one !== null);
  if (problem) problems.push(problem);
  return problem ? [1, 1] : (pair.map((one) => plainZero(one as number)) as Arm);
}

function readIncrease(edge: Edge, value: unknown, at: string, problems: Problem[]): number {
  if (value === undefined) return 0;
  const problem = numberProblem(value, at, { min: 0, max: limits.stitches, like: 6 });
  if (problem) problems.push(problem);
  else if ((value as number) > 0 && edge.corners.length > 0)
    problems.push({
      at,
      code: 'increase-with-corners',
      params: {},
    });
  return problem ? 0 : plainZero(value as number);
}

function readJoinStart(edge: Edge, value: unknown, problems: Problem[]): JoinStart {
  const fields = fieldsOf(value) ?? {};
  if (value !== undefined && !fieldsOf(value))
    problems.push({
      at: 'choices.joinStart',
      code: 'unreadable',
      params: {},
    });
  const side = own(fields, 'side') ?? 0;
  if (!isWhole(side, 0, edge.sides.length - 1)) {
    problems.push({
      at: 'choices.joinStart.side',
      code: 'between',
      params: { min: 1, max: edge.sides.length },
    });
    return { side: 0, fromCorner: 1 };
  }
  const furthest = joinPlaces(edge, side);
  const fromCorner = own(fields, 'fromCorner');
  if (fromCorner === undefined) return { side: plainZero(side), fromCorner: Math.min(4, furthest) };
  const problem = numberProblem(fromCorner, 'choices.joinStart.fromCorner', {
    min: 1,
    max: furthest,
    like: 4,
  });
  if (problem) problems.push(problem);
  return { side: plainZero(side), fromCorner: problem ? 1 : (fromCorner as number) };
}

/** Positions of a front side at which a join can begin, its nearest corner position included. */
export const joinPlaces = (edge: Edge, side: number): number => {
  const corners = edge.corners;
  const before = corners.length > 0 ? (corners[mod(side - 1, corners.length)] as Corner).size : 0;
  return (edge.sides[side] as number) + (before > 0 ? 1 : 0);
};

function readMarker(value: unknown, problems: Problem[]): number {
  if (value === undefined) return 10;
  const problem = numberProblem(value, 'choices.markerEvery', { min: 1, max: limits.markerEvery, like: 10 });
  if (problem) problems.push(problem);
  return problem ? 10 : (value as number);
}
