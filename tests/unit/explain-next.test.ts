/** What to count next, how causes are told apart, and taking the answer. */
import { describe, expect, it } from 'vitest';
import { questionsOf } from '../../core/explain/looks.ts';
import {
  type Cure,
  type Explained,
  type Explanation,
  explain,
  type Options,
  type Plan,
  type Seen,
} from '../../core/index.ts';
import { chainCorner, planOf } from '../property/explain-panels.ts';

const plan = planOf([60, 42, 60, 42], chainCorner(2));

function explained(seen: Seen, options: Options = {}, of: Plan = plan): Explained {
  const found = explain(of, seen, options);
  return found;
}

const seenSets: [name: string, seen: Seen][] = [
  ['an edging side 1 short', { edgings: [{ sides: [null, null, 59, null] }] }],
  ['the whole edging, start side 1 too many', { edgings: [{ sides: [61, 42, 60, 42] }] }],
  ['the foundation, a side 2 short', { foundation: { sides: [58, 38, 58, 40] } }],
  ['the drift of the join', { join: { drift: [0, 1, 1, 1], leftOver: 1 } }],
];

/** A cure by what is done; of what costs no more than a fifth above the least, or a dozen stitches. */
const rightFor = (of: Plan, { cures }: Explanation): string[] => {
  const cost = ({ cost: { stitches, slips, again, sewing } }: Cure): number =>
    stitches + slips + again + (sewing ? 2 * of.foundation.total : 0);
  const good = cures.filter(({ then }) => then !== 'does-not-meet');
  const most = Math.max(12, 1.2 * Math.min(...good.map(cost)));
  return good
    .filter((one) => cost(one) <= most)
    .map(({ kind, to, at, frontSides }) =>
      JSON.stringify([kind, to?.round, to?.edging, to?.node, to?.corner, at, frontSides]),
    );
};

/** The share of some causes that the best of their cures puts right, each weighed by its rank. */
function curedBy(of: Plan, explanations: readonly Explanation[]): number {
  const weightOf = ({ rank }: Explanation): number => 2 ** -rank;
  const cures = new Set(explanations.flatMap((one) => rightFor(of, one)));
  const all = explanations.reduce((sum, one) => sum + weightOf(one), 0);
  const shares = [...cures].map((cure) =>
    explanations.reduce((sum, one) => sum + (rightFor(of, one).includes(cure) ? weightOf(one) : 0), 0),
  );
  return Math.max(0, ...shares) / all;
}

/** Sides so short that 1 stitch shows, and the join nearly done: what to do depends on what it was. */
const small = planOf([14, 12, 14, 12], chainCorner(2));
const dear: [name: string, of: Plan, seen: Seen, options: Options][] = [
  [
    'a short edging side',
    small,
    { edgings: [{ sides: [null, null, 13, null] }] },
    { stands: { at: 'finished' }, causes: 1 },
  ],
  [
    'a whole edging',
    small,
    { edgings: [{ sides: [15, 12, 14, 12] }] },
    { stands: { at: 'finished' }, causes: 1 },
  ],
  ['every foundation side 2 more', small, { foundation: { sides: [14, 12, 14, 12] } }, { causes: 1 }],
];

describe('the next count', () => {
  it.each(dear)('makes one cure right for as much as can be: %s', (_, of, seen, options) => {
    const { explanations, nextCount } = explained(seen, options, of);
    if (!nextCount) throw new Error('rivals expected');
    const total = explanations.reduce((sum, { rank }) => sum + 2 ** -rank, 0);
    const cured = (groups: number[][]): number =>
      groups.reduce((sum, those) => {
        const some = those.map((index) => explanations[index] as Explanation);
        const share = some.reduce((all, { rank }) => all + 2 ** -rank, 0) / total;
        return sum + share * curedBy(of, some);
      }, 0);
    const groupsOf = (expects: (one: Explanation) => unknown): number[][] => {
      const groups = new Map<unknown, number[]>();
      explanations.forEach((one, index) => {
        const found = expects(one);
        groups.set(found, [...(groups.get(found) ?? []), index]);
      });
      return [...groups.values()];
    };
    const everyQuestion = questionsOf(of, !!seen.join).map(({ expects }) => cured(groupsOf(expects)));
    const chosen = cured(nextCount.answers.map(({ leaves }) => leaves));
    expect(chosen).toBeCloseTo(Math.max(...everyQuestion), 6);
    expect(nextCount.cured.now).toBeCloseTo(curedBy(of, explanations), 2);
    expect(nextCount.cured.then).toBeCloseTo(chosen, 2);
    expect(nextCount.answers.flatMap(({ leaves }) => leaves).sort((a, b) => a - b)).toEqual(
      explanations.map((_one, index) => index),
    );
  });

  it.each([
    ['a hidden stitch or another, on an edging', plan, { edgings: [{ sides: [60, 42, 59, 42] }] }],
    ['the beginning or the end of a round', plan, { edgings: [{ sides: [61, 42, 60, 42] }] }],
  ])('is none, where one cure puts right whatever it was: %s', (_, of, seen) => {
    const recounted: Seen = { front: { sides: [...of.edge.sides] }, ...seen };
    const { explanations, nextCount, cureForAll } = explained(recounted, { causes: 1 }, of);
    expect(explanations.length).toBeGreaterThan(2);
    expect(nextCount).toBeUndefined();
    expect(cureForAll?.then).not.toBe('does-not-meet');
    for (const one of explanations) {
      const name = JSON.stringify([cureForAll?.kind, cureForAll?.to?.node, cureForAll?.at]);
      expect(one.cures.map(({ kind, to, at }) => JSON.stringify([kind, to?.node, at]))).toContain(name);
    }
  });

  it.each(dear)('leaves just those that each answer says: %s', (_, of, seen, options) => {
    const { explanations, nextCount } = explained(seen, { ...options, most: 10_000 }, of);
    if (!nextCount) throw new Error('rivals expected');
    for (const { found, leaves } of nextCount.answers) {
      const looked = [{ key: nextCount.key, found }];
      const after = explained(seen, { ...options, looked, most: 10_000 }, of).explanations;
      expect(after.map(({ mishaps }) => mishaps)).toEqual(
        leaves.map((index) => explanations[index]?.mishaps),
      );
    }
  });
});

describe('how a cause is told from its rivals', () => {
  it.each(seenSets)('is by something that a rival does not have: %s', (_, seen) => {
    const { explanations } = explained(seen);
    const questions = questionsOf(plan, !!seen.join);
    for (const explanation of explanations)
      for (const { key, expect: expected } of explanation.tell) {
        const question = questions.find((one) => one.key === key);
        expect(question?.expects(explanation)).toBe(expected);
        expect(explanations.some((rival) => question?.expects(rival) !== expected)).toBe(true);
      }
  });

  it('needs no telling where there is no rival', () => {
    const seen: Seen = { foundation: { sides: [58, 98, 40] } };
    const { explanations, nextCount } = explained(seen);
    expect(explanations).toHaveLength(1);
    expect(explanations[0]?.tell).toEqual([]);
    expect(nextCount).toBeUndefined();
  });
});
