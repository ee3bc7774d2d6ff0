/** Makings with what the simulation made of them, and the pages a reader is given. */
import {
  type Act,
  type Choices,
  countRound,
  type EdgeInput,
  pair,
  planBack,
  type Result,
  readEdge,
  steps,
  work,
} from '../../../core/index.ts';
import { sayStep } from '../../../src/words/walk/step.ts';
import type { Told } from '../../../src/words/walk/telling.ts';
import type { Speech } from '../../../src/words/words.ts';
import { type FrontPiece, type Made, type Page, readWalk, Stuck } from '../../reader/reader.ts';

type Terms = Speech['dialect'];

const must = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};

export type Case = { name: string; told: Told; front: FrontPiece; made: Made };

export function caseOf(
  name: string,
  input: EdgeInput,
  choices: Choices = {},
  acts: readonly Act[] = [],
): Case {
  const edge = must(readEdge(input));
  const plan = must(planBack(edge, choices));
  const worked = work(plan, acts);
  const counts = (round: (typeof worked)['foundation']) => {
    const { sides, corners } = countRound(round);
    return { sides, corners: corners.map(({ size }) => size) };
  };
  const together = (of: 'front' | 'back'): number =>
    acts.filter((act) => act.kind === 'two-with-one' && act.of === of).length;
  const pairing = pair(edge, worked.edgings.at(-1) ?? worked.foundation, {
    start: worked.join,
    manner: 'stitch-by-stitch',
  });
  return {
    name,
    told: { plan, steps: steps(plan, acts), acts },
    front: { sides: edge.sides, corners: edge.corners },
    made: {
      foundation: counts(worked.foundation),
      edgings: worked.edgings.map(counts),
      pairs: pairing.pairs,
      leftOver: {
        front: edge.total - pairing.pairs - together('front'),
        back: pairing.back - pairing.pairs - together('back'),
      },
    },
  };
}

export const pagesOf = ({ told }: Case, speech: Speech): Page[] =>
  Array.from({ length: told.steps.length }, (_, i) => sayStep(told.steps.at(i), told, speech));

export const SPEECHES: Speech[] = (['uk', 'us'] as const).flatMap((dialect) =>
  (['right', 'left'] as const).map((hand): Speech => ({ dialect, hand, units: 'cm' })),
);

export const UK: Speech = { dialect: 'uk', hand: 'right', units: 'cm' };
export const reading = ({ front }: Case, { dialect, hand }: Speech) => ({
  terms: dialect as Terms,
  hand,
  front,
});

/** Whether the reader is stopped, or ends with another piece. */
export function fails(pages: readonly Page[], one: Case, speech: Speech = UK): boolean {
  try {
    return JSON.stringify(readWalk(pages, reading(one, speech))) !== JSON.stringify(one.made);
  } catch (problem) {
    if (problem instanceof Stuck) return true;
    throw problem;
  }
}

/** The text with each of its numbers one higher, digits and words. */
export function otherNumbers(text: string): string[] {
  const words = ['first', 'second', 'third', 'fourth', 'fifth'];
  const digits = [...text.matchAll(/\d+/g)].map(
    (match) =>
      text.slice(0, match.index) + (Number(match[0]) + 1) + text.slice(match.index + match[0].length),
  );
  const spelt = [...text.matchAll(/\b(?:first|second|third|fourth)\b/g)].map(
    (match) =>
      text.slice(0, match.index) +
      words[words.indexOf(match[0]) + 1] +
      text.slice(match.index + match[0].length),
  );
  return [...digits, ...spelt];
}
