/** What to count next, how causes are told apart, and taking the answer. */
import { describe, expect, it } from 'vitest';
import { questionsOf } from '../../core/explain/looks.ts';
import { type Explained, explain, type Plan, type Seen } from '../../core/index.ts';
import { chainCorner, planOf } from '../property/explain-panels.ts';

const plan = planOf([60, 42, 60, 42], chainCorner(2));

function explained(seen: Seen, options: object = {}, of: Plan = plan): Explained {
  const found = explain(of, seen, options);
  return found;
}

const seenSets: [name: string, seen: Seen][] = [
  ['an edging side 1 short', { edgings: [{ sides: [null, null, 59, null] }] }],
  ['the whole edging, start side 1 too many', { edgings: [{ sides: [61, 42, 60, 42] }] }],
  ['the foundation, a side 2 short', { foundation: { sides: [58, 38, 58, 40] } }],
  ['the drift of the join', { join: { drift: [0, 1, 1, 1], leftOver: 1 } }],
];

describe('the next count', () => {
  it.each(seenSets)('leaves least open on average: %s', (_, seen) => {
    const { explanations, nextCount } = explained(seen);
    const weights = explanations.map(({ rank }) => 2 ** -rank);
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    const bits = (those: number[]): number => {
      const all = those.reduce((sum, one) => sum + (weights[one] as number), 0);
      return those.reduce((sum, one) => {
        const share = (weights[one] as number) / all;
        return sum - share * Math.log2(share);
      }, 0);
    };
    const left = (groups: number[][]): number =>
      groups.reduce(
        (sum, those) =>
          sum + (those.reduce((all, one) => all + (weights[one] as number), 0) / total) * bits(those),
        0,
      );
    const groupsOf = (expects: (index: number) => unknown): number[][] => {
      const groups = new Map<unknown, number[]>();
      explanations.forEach((_one, index) => {
        const found = expects(index);
        groups.set(found, [...(groups.get(found) ?? []), index]);
      });
      return [...groups.values()];
    };
    const everyQuestion = questionsOf(plan, !!seen.join).map(({ expects }) =>
      left(groupsOf((index) => expects(explanations[index] as (typeof explanations)[number]))),
    );
    const chosen = left(nextCount?.answers.map(({ leaves }) => leaves) ?? []);
    expect(nextCount?.answers.flatMap(({ leaves }) => leaves).sort((a, b) => a - b)).toEqual(
      explanations.map((_one, index) => index),
    );
    expect(chosen).toBeCloseTo(Math.min(...everyQuestion), 6);
    expect(nextCount?.bits).toBeCloseTo((nextCount?.open ?? 0) - chosen, 1);
  });

  it.each(seenSets)('leaves just those that each answer says: %s', (_, seen) => {
    const { explanations, nextCount } = explained(seen, { most: 10_000 });
    if (!nextCount) throw new Error('rivals expected');
    for (const { found, leaves } of nextCount.answers) {
      const looked = [{ key: nextCount.key, found }];
      const after = explained(seen, { looked, most: 10_000 }).explanations;
      expect(after.map(({ mishaps }) => mishaps)).toEqual(
        leaves.map((index) => explanations[index]?.mishaps),
      );
    }
  });

  it('asks to look at the closing where a stitch too many may lie in the beginning or the end', () => {
    const { nextCount } = explained({
      foundation: { sides: [58, 40, 58, 40] },
      edgings: [{ sides: [61, 42, 60, 42] }],
    });
    expect(nextCount).toMatchObject({ look: 'closing', round: 'edging', edging: 0 });
    expect(nextCount?.answers.map(({ found }) => found)).toContain('attach-doubled');
  });

  it('asks to look right after the corner where its hidden stitch may have been missed', () => {
    const { nextCount } = explained({
      foundation: { sides: [58, 40, 58, 40] },
      edgings: [{ sides: [60, 42, 59, 42] }],
    });
    expect(nextCount).toMatchObject({ look: 'after-corner', corner: 1 });
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
