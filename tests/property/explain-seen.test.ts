import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mishapsOf, type Plan, type Seen } from '../../core/index.ts';
import { readProject } from '../../src/input/project.ts';
import { derive } from '../../src/state/derive.ts';
import { fieldRows } from '../../src/state/fields.ts';
import { example, standardSettings } from '../../src/state/project.ts';
import { anyMishap, countsOf, plans, seenOf } from './explain-panels.ts';

const numbers = (least: number, most: number, length: number) =>
  fc.array(fc.option(fc.integer({ min: least, max: most })), { minLength: length, maxLength: length });

/** Those that the panels drawn here show. */
const countFields = fieldRows
  .filter(
    ({ bears, round, index }) => bears === 'counts' && (round === 'foundation' || round === 0) && index < 6,
  )
  .map(({ field }) => field);

/** Numbers that any hand can make: no side below what its arms and closings leave. */
const typed = (plan: Plan): fc.Arbitrary<Seen> =>
  fc.record({
    foundation: fc.record({
      sides: numbers(3, 40, plan.foundation.sides.length),
      corners: numbers(0, 6, plan.foundation.corners.length),
    }),
    edgings: fc.tuple(
      ...plan.edgings.map((edging) =>
        fc.record({
          sides: numbers(6, 60, edging.sides.length),
          corners: numbers(0, 6, edging.corners.length),
        }),
      ),
    ),
  });

const roomy = plans({ sides: [0, 8], stitches: [16, 60] });

describe('the numbers really worked', () => {
  it('are made exactly by the mishaps they are turned into', () => {
    fc.assert(
      fc.property(
        roomy.chain((plan) => fc.tuple(fc.constant(plan), typed(plan))),
        ([plan, seen]) => {
          const made = countsOf(plan, mishapsOf(plan, seen));
          const rounds = [
            [made.foundation, seen.foundation],
            ...made.edgings.map((one, n) => [one, seen.edgings?.[n]]),
          ];
          for (const [of, given] of rounds as [typeof made.foundation, Seen['foundation']][])
            for (const key of ['sides', 'corners'] as const)
              given?.[key]?.forEach((count, i) => {
                if (count !== null) expect(of[key][i], `${key} ${i}`).toBe(count);
              });
        },
      ),
      { numRuns: 300 },
    );
  });

  it('that a hand made by mistake are made again, forgotten corners too', () => {
    fc.assert(
      fc.property(
        plans({ sides: [0, 8], stitches: [10, 60] }).chain((plan) =>
          fc.tuple(fc.constant(plan), fc.array(anyMishap(plan), { maxLength: 2 })),
        ),
        ([plan, mishaps]) => {
          const made = countsOf(plan, mishaps);
          expect(countsOf(plan, mishapsOf(plan, seenOf(made)))).toEqual(made);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('are reached from mishaps known already, which stay', () => {
    fc.assert(
      fc.property(
        plans({ sides: [0, 8], stitches: [10, 60] }).chain((plan) =>
          fc.tuple(fc.constant(plan), fc.array(anyMishap(plan), { maxLength: 2 })),
        ),
        ([plan, mishaps]) => {
          const seen = seenOf(countsOf(plan, mishaps));
          expect(mishapsOf(plan, seen, mishaps)).toEqual(mishaps);
        },
      ),
      { numRuns: 200 },
    );
  });

  it("that are the recipe's own need no mishap", () => {
    fc.assert(
      fc.property(plans({ sides: [0, 24], stitches: [1, 60] }), (plan) => {
        expect(mishapsOf(plan, seenOf(countsOf(plan, [])))).toEqual([]);
      }),
    );
  });

  it('come as near as a hand can, whatever is typed in the fields of the counts', () => {
    const numberTyped = fc.integer({ min: -5, max: 200 }).map(String);
    const texts = fc.dictionary(
      fc.constantFrom(...countFields),
      fc.oneof(
        numberTyped,
        numberTyped,
        fc.string({ unit: 'binary' }),
        fc.constantFrom('62-63', '1e9', '٦٢'),
      ),
    );
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 6 }), texts, (sideCount, counted) => {
        const sides = Object.fromEntries(Array.from({ length: sideCount }, (_, i) => [`side.${i}`, '40']));
        const project = readProject({
          ...example,
          sideCount,
          texts: { ...example.texts, ...sides, ...counted },
        });
        const { making, problems } = derive(project, standardSettings);
        // Only a back of no stitch at all leaves nothing to draw, and says so.
        if (making === null) {
          expect(problems).toMatchObject([{ code: 'back-empty' }]);
          return;
        }
        const unread = problems.map(({ at }) => at);
        for (const field of unread) expect(counted).toHaveProperty([field]);
        const { plan, seen } = making;
        const made = countsOf(plan, mishapsOf(plan, seen));
        expect(made.edgings).toHaveLength(plan.edgings.length);
      }),
    );
  });
});
