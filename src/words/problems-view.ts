/** What each field is called, and how the list of problems is headed. One name a field, everywhere. */
import type { Problem } from '../../core/index.ts';
import type { Field } from '../state/snapshot.ts';
import { many } from './numbers.ts';

/** Heading of the list, also where there is one problem only. */
export const PROBLEM_HEADING = 'There is a problem';

/** Before the page's title and before each message, for those who do not see the mark. */
export const PROBLEM_PREFIX = 'Error: ';

const ONE = (text: string | undefined): string => `${Number.parseInt(text ?? '0', 10) + 1}`;

/** The visible name of a field: "side 3", "size of corner 2". Sides and corners are told from 1. */
export function fieldName(field: Field, sideCount: number): string {
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
    case 'seen':
      if (second === undefined) return 'stitches left over';
      return first === 'drift' ? `corner ${ONE(second)}` : `front side ${ONE(second)}`;
    default:
      return field;
  }
}

function workedName(field: Field, round: boolean): string {
  const [, piece, first, second] = field.split('.');
  const index = second ?? first;
  if (piece?.endsWith('corner')) return `corner ${ONE(index)}`;
  return round ? 'stitches in the round' : `side ${ONE(index)}`;
}

/** Short list for the summary: one entry a field, the first message each. */
export function firstOfEach(problems: readonly Problem[]): Problem[] {
  const seen = new Set<string>();
  return problems.filter(({ at }) => !seen.has(at) && seen.add(at));
}

export const sayHowMany = (problems: readonly Problem[]): string =>
  many(firstOfEach(problems).length, 'problem');
