/**
 * The one count that changes most in what to do.
 *
 * Rule: the question after which one cure is right for as much as can be of what is left, each explanation weighed by
 * its rank; of two that do as well the one that leaves fewer causes open, then the one with fewer stitches to go over.
 * Where one cure is right for all that are left, nothing is asked.
 */
import type { Plan } from '../types.ts';
import { lookOf, type Question } from './looks.ts';
import { cureForAll, rightCures, shareCured } from './right.ts';
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

/**
 * Undefined where one cure is right for all that are left, or nothing tells them apart. `explanations` with their
 * cures.
 */
export function nextCountOf(
  plan: Plan,
  explanations: readonly Explanation[],
  asked: readonly Asked[],
): NextCount | undefined {
  if (explanations.length < 2 || cureForAll(plan, simplest(explanations))) return undefined;
  const weights = weightsOf(explanations);
  const right = explanations.map((one) => rightCures(plan, one));
  const everyone = explanations.map((_, index) => index);
  const total = weights.reduce((all, one) => all + one, 0);
  let best: Judged | undefined;
  for (const { question, expects } of asked) {
    const answers = answersOf(expects);
    const cured = answers.reduce(
      (all, { leaves }) => all + (weightOfAll(leaves, weights) / total) * shareCured(leaves, right, weights),
      0,
    );
    const judged = { question, answers, cured, left: expectedLeft(answers, weights) };
    if (!best || isBetter(judged, best)) best = judged;
  }
  if (!best) return undefined;
  return {
    ...lookOf(best.question),
    answers: best.answers,
    cured: { now: rounded(shareCured(everyone, right, weights)), then: rounded(best.cured) },
  };
}

/** What fewer causes explain comes first: more of them are believed only once those are ruled out. */
export function simplest(explanations: readonly Explanation[]): Explanation[] {
  const fewest = Math.min(...explanations.map(({ causes }) => causes.length));
  return explanations.filter(({ causes }) => causes.length === fewest);
}

function weightsOf(explanations: readonly Explanation[]): number[] {
  const those = new Set(simplest(explanations));
  return explanations.map((one) => (those.has(one) ? weightOf(one) : 0));
}

type Judged = { question: Question; answers: NextCount['answers']; cured: number; left: number };

/** First what settles the cure; then what settles the cause; then what has fewer stitches to go over. */
function isBetter(one: Judged, other: Judged): boolean {
  if (Math.abs(one.cured - other.cured) > near) return one.cured > other.cured;
  if (Math.abs(one.left - other.left) > near) return one.left < other.left;
  return one.question.effort < other.question.effort;
}

const near = 1e-9;

const rounded = (share: number): number => Math.round(share * 1000) / 1000;

const weightOfAll = (those: readonly number[], weights: readonly number[]): number =>
  those.reduce((all, one) => all + (weights[one] as number), 0);

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
