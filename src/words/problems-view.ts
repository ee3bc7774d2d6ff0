/** What each field is called, and how the list of problems is headed. One name a field, everywhere. */
import { type BackRound, type FieldRow, rowOf } from '../state/fields.ts';
import type { AppProblem } from '../state/problem.ts';
import type { Field, Snapshot } from '../state/snapshot.ts';
import { sayProblem } from './catalogue.ts';
import { speakerOf } from './speaker.ts';

/** Heading of the list, also where there is one problem only. */
export const PROBLEM_HEADING = 'There is a problem';

/** Before the page's title and before each message, for those who do not see the mark. */
export const PROBLEM_PREFIX = 'Error: ';

const one = (index: number): string => `${index + 1}`;

/**
 * The visible name of a field: "side 3", "size of corner 2". Sides and corners are told from 1; the corners of the
 * join in its own order, from the front side where it begins.
 */
export function fieldName(field: Field, sideCount: number, joinSide = 0): string {
  const row = rowOf(field);
  return row ? nameOf(row, sideCount, joinSide) : field;
}

function nameOf({ kind, index, round }: FieldRow, sideCount: number, joinSide: number): string {
  switch (kind) {
    case 'side':
    case 'worked-side':
      return sideCount === 0 ? 'stitches in the round' : `side ${one(index)}`;
    case 'each-corner':
      return 'size of each corner';
    case 'corner':
      return `size of corner ${one(index)}`;
    case 'start-side':
      return 'front side to start against';
    case 'lead':
      return 'stitches before the first corner';
    case 'join-side':
      return 'front side where the join begins';
    case 'join-from-corner':
      return 'stitches in from the corner';
    case 'marker-every':
      return 'stitches from marker to marker';
    case 'arm-before':
      return `stitches before corner, round ${roundName(round)}`;
    case 'arm-after':
      return `stitches after corner, round ${roundName(round)}`;
    case 'increase':
      return `stitches added in round ${roundName(round)}`;
    case 'worked-corner':
      return `corner ${one(index)}`;
    case 'worked-total':
      return 'all of it, corners too';
    case 'corners-short':
      return 'corners too few';
    case 'front-again':
      return `front side ${one(index)}`;
    case 'drift':
      return `front corner ${one((joinSide + index) % Math.max(1, sideCount))}`;
    case 'left-over':
      return 'stitches left over';
  }
}

const roundName = (round: BackRound): string => (round === 'foundation' ? 'foundation' : one(round));

/** Short list for the summary: one entry a field, the first message each. */
export function firstOfEach(problems: readonly AppProblem[]): AppProblem[] {
  const seen = new Set<string>();
  return problems.filter(({ at }) => !seen.has(at) && seen.add(at));
}

/** The name as it stands in a list of many fields, with the piece it belongs to. */
function nameInFull(field: Field, { project, making }: Speaking): string {
  const name = fieldName(field, project.sideCount, making.plan.choices.joinStart.side);
  const row = rowOf(field);
  switch (row?.kind) {
    case 'front-again':
      return `${name}, counted again,`;
    case 'drift':
      return `${name} in the join`;
    case 'worked-side':
    case 'worked-corner':
    case 'worked-total':
    case 'corners-short':
      if (row.round === 'foundation') return `foundation ${name}`;
      return project.edgingCount > 1 ? `edging round ${one(row.round)} ${name}` : `edging ${name}`;
    default:
      return name;
  }
}

type Speaking = Pick<Snapshot, 'project' | 'making' | 'settings'>;

/** A problem of the app in one sentence without its full stop, by the name of its field. */
export const sayInApp = (problem: AppProblem, snapshot: Speaking): string =>
  sayProblem(problem, speakerOf(snapshot.settings), nameInFull(problem.at, snapshot));
