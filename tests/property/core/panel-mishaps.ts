/** Any number of mishaps of any kind that can happen on a panel, and a few at once. */
import fc from 'fast-check';
import { actKinds, actOf, type Mishap, needs, type Plan, roundsOf } from '../../../core/index.ts';

function oneMishap(plan: Plan): fc.Arbitrary<Mishap> {
  const k = plan.foundation.sides.length;
  const isCornered = plan.foundation.corners.length > 0;
  const possible = actKinds.filter((kind) => isCornered || !needs(kind, 'corner'));
  return fc.constantFrom(...possible).chain((kind) =>
    fc
      .record({
        round: fc.constantFrom(...roundsOf(kind)),
        edging: fc.integer({ min: 0, max: plan.edgings.length - 1 }),
        side: fc.integer({ min: 0, max: k - 1 }),
        corner: fc.integer({ min: 0, max: k - 1 }),
        place: fc.integer({ min: 0, max: 20 }),
        count:
          kind.startsWith('corner-m') || kind.startsWith('join')
            ? fc.integer({ min: -5, max: 5 })
            : fc.integer({ min: 1, max: 5 }),
        end: fc.constantFrom('before' as const, 'after' as const),
        then: fc.constantFrom('from-corner' as const, 'from-total' as const),
      })
      .map((parts) => actOf(kind, parts)),
  );
}

export const mishapsOn = (plan: Plan): fc.Arbitrary<Mishap[]> =>
  fc.oneof(
    { weight: 1, arbitrary: fc.constant<Mishap[]>([]) },
    { weight: 3, arbitrary: fc.array(oneMishap(plan), { minLength: 1, maxLength: 4 }) },
  );
