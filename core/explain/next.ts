/**
 * The one count that splits the rivals best.
 *
 * Rule: the question after which least is left open on average, each explanation weighed by its rank; of two that
 * do as well, the one with fewer stitches to go over.
 */
import { lookOf, type Question } from './looks.ts';
import type { Explanation, Found, NextCount, Tell } from './types.ts';

/** Bits still open among weighted rivals. */
function openBits(weights: readonly number[]): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.reduce((bits, weight) => {
    const share = total > 0 ? weight / total : 0;
    return share > 0 ? bits - share * Math.log2(share) : bits;
  }, 0);
}

/** A step of 1 in rank makes an explanation about half as likely: our own judgement, as the ranks are. */
export const weightOf = ({ rank }: Pick<Explanation, 'rank'>): number => 2 ** -rank;

/** A question with what each explanation expects, in their order. */
export type Asked = { question: Question; expects: Found[] };

/** Only questions that tell at least two of the explanations apart are worth asking. */
export const askAll = (questions: readonly Question[], explanations: readonly Explanation[]): Asked[] =>
  questions
    .map((question) => ({ question, expects: explanations.map(question.expects) }))
    .filter(({ expects }) => expects.some((found) => found !== expects[0]));

export function nextCountOf(
  explanations: readonly Explanation[],
  asked: readonly Asked[],
): NextCount | undefined {
  if (explanations.length < 2) return undefined;
  const weights = explanations.map(weightOf);
  const open = openBits(weights);
  let best: { question: Question; answers: NextCount['answers']; left: number } | undefined;
  for (const { question, expects } of asked) {
    const answers = answersOf(expects);
    const left = expectedLeft(answers, weights);
    const isBetter =
      !best || left < best.left - 1e-9 || (left < best.left + 1e-9 && question.effort < best.question.effort);
    if (isBetter) best = { question, answers, left };
  }
  if (!best) return undefined;
  const round = (bits: number): number => Math.round(bits * 100) / 100;
  return {
    ...lookOf(best.question),
    answers: best.answers,
    bits: round(open - best.left),
    open: round(open),
  };
}

function answersOf(expects: readonly Found[]): NextCount['answers'] {
  const leaves = new Map<Found, number[]>();
  expects.forEach((found, index) => {
    leaves.set(found, [...(leaves.get(found) ?? []), index]);
  });
  return [...leaves].map(([found, those]) => ({ found, leaves: those }));
}

function expectedLeft(answers: NextCount['answers'], weights: readonly number[]): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return answers.reduce((left, { leaves }) => {
    const those = leaves.map((index) => weights[index] as number);
    const share = those.reduce((sum, weight) => sum + weight, 0) / total;
    return left + share * openBits(those);
  }, 0);
}

/** Rivals looked at when an explanation says how it is told from them. */
const rivalsAsked = 12;
const tellsGiven = 3;

/** The fewest looks, up to three, that tell the explanation at `index` from most of its rivals. */
export function tellsOf(
  index: number,
  count: number,
  asked: readonly Asked[],
  asRecipe: Explanation,
): Tell[] {
  let rivals = Array.from({ length: count }, (_, one) => one)
    .filter((one) => one !== index)
    .slice(0, rivalsAsked);
  const tells: Tell[] = [];
  while (tells.length < tellsGiven && rivals.length > 0) {
    let best: { one: Asked; left: number[] } | undefined;
    for (const one of asked) {
      const left = rivals.filter((rival) => one.expects[rival] === one.expects[index]);
      const isBetter =
        !best ||
        left.length < best.left.length ||
        (left.length === best.left.length && one.question.effort < best.one.question.effort);
      if (left.length < rivals.length && isBetter) best = { one, left };
    }
    if (!best) break;
    const { question, expects } = best.one;
    tells.push({
      ...lookOf(question),
      expect: expects[index] as Found,
      asRecipe: question.expects(asRecipe),
    });
    rivals = best.left;
  }
  return tells;
}
