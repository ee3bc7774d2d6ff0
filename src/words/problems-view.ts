/** What each field is called, and how the list of problems is headed. One name a field, everywhere. */
import type { AppProblem } from '../state/problem.ts';
import type { Field, Snapshot } from '../state/snapshot.ts';
import { sayProblem } from './catalogue.ts';
import { many } from './numbers.ts';
import { speakerOf } from './speaker.ts';

/** Heading of the list, also where there is one problem only. */
export const PROBLEM_HEADING = 'There is a problem';

/** Before the page's title and before each message, for those who do not see the mark. */
export const PROBLEM_PREFIX = 'Error: ';

const ONE = (text: string | undefined): string => `${Number.parseInt(text ?? '0', 10) + 1}`;

/**
 * The visible name of a field: "side 3", "size of corner 2". Sides and corners are told from 1; the corners of the
 * join in its own order, from the front side where it begins.
 */
export function fieldName(field: Field, sideCount: number, joinSide = 0): string {
  const [kind, first, second] = field.split('.');
  const round = sideCount === 0;
  switch (kind) {
    case 'side':
      return round ? 'stitches in the round' : `side ${ONE(first)}`;
    case 'corner':
      return first === undefined ? 'size of each corner' : `size of corner ${ONE(first)}`;
    case 'lead':
      return 'stitches before the first corner';
    case 'start-side':
      return 'front side to start against';
    case 'join-side':
      return 'front side where the join begins';
    case 'marker-every':
      return 'stitches from marker to marker';
    case 'join-from-corner':
      return 'stitches in from the corner';
    case 'arm':
      return second === 'after'
        ? `stitches after corner, round ${ONE(first)}`
        : `stitches before corner, round ${ONE(first)}`;
    case 'increase':
      return `stitches added in round ${ONE(first)}`;
    case 'worked':
      return workedName(field, round);
    case 'sides':
      return 'number of sides';
    case 'choices':
      return field === 'choices.edgings' ? 'number of edging rounds' : field;
    case 'seen':
      if (second === undefined) return 'stitches left over';
      return first === 'drift'
        ? cornerInJoin(Number(second), sideCount, joinSide)
        : `front side ${ONE(second)}`;
    default:
      return field;
  }
}

const cornerInJoin = (n: number, sideCount: number, joinSide: number): string =>
  `front corner ${((joinSide + n) % Math.max(1, sideCount)) + 1}`;

function workedName(field: Field, round: boolean): string {
  const [, piece, first, second] = field.split('.');
  const index = second ?? first;
  if (piece?.endsWith('corner')) return `corner ${ONE(index)}`;
  return round ? 'stitches in the round' : `side ${ONE(index)}`;
}

/** Short list for the summary: one entry a field, the first message each. */
export function firstOfEach(problems: readonly AppProblem[]): AppProblem[] {
  const seen = new Set<string>();
  return problems.filter(({ at }) => !seen.has(at) && seen.add(at));
}

export const sayHowMany = (problems: readonly AppProblem[]): string =>
  many(firstOfEach(problems).length, 'problem');

/** The name as it stands in a list of many fields, with the piece it belongs to. */
function nameInFull(field: Field, { project, making }: Speaking): string {
  const name = fieldName(field, project.sideCount, making.plan.choices.joinStart.side);
  const [kind, piece, round] = field.split('.');
  if (kind === 'seen' && piece === 'front') return `${name}, counted again,`;
  if (kind === 'seen' && piece === 'drift') return `${name} in the join`;
  if (kind !== 'worked') return name;
  if (piece?.startsWith('foundation')) return `foundation ${name}`;
  return project.edgingCount > 1 ? `edging round ${ONE(round)} ${name}` : `edging ${name}`;
}

type Speaking = Pick<Snapshot, 'project' | 'making' | 'settings'>;

/** A problem of the app in one sentence without its full stop, by the name of its field. */
export const sayInApp = (problem: AppProblem, snapshot: Speaking): string =>
  sayProblem(problem, speakerOf(snapshot.settings), nameInFull(problem.at, snapshot));
