/** Any number of mishaps of any kind that can happen on a panel, and a few at once. */
import fc from 'fast-check';
import { type Mishap, type MishapKind, mishapKinds, type Plan } from '../../../core/index.ts';

const kinds = Object.keys(mishapKinds) as MishapKind[];

function oneMishap(plan: Plan): fc.Arbitrary<Mishap> {
  const k = plan.foundation.sides.length;
  const isCornered = plan.foundation.corners.length > 0;
  const possible = kinds.filter((kind) => isCornered || !mishapKinds[kind].needs.includes('corner'));
  return fc.constantFrom(...possible).chain((kind) =>
    fc.record<Mishap>({
      kind: fc.constant(kind),
      round: fc.constantFrom(...mishapKinds[kind].rounds),
      edging: fc.integer({ min: 0, max: plan.edgings.length - 1 }),
      side: fc.integer({ min: 0, max: k - 1 }),
      ...(isCornered ? { corner: fc.integer({ min: 0, max: k - 1 }) } : {}),
      place: fc.integer({ min: 0, max: 20 }),
      count:
        kind.startsWith('corner-m') || kind.startsWith('join')
          ? fc.integer({ min: -5, max: 5 })
          : fc.integer({ min: 1, max: 5 }),
      end: fc.constantFrom('before', 'after'),
      then: fc.constantFrom('from-corner', 'from-total'),
    }),
  );
}

export const mishapsOn = (plan: Plan): fc.Arbitrary<Mishap[]> =>
  fc.oneof(
    { weight: 1, arbitrary: fc.constant<Mishap[]>([]) },
    { weight: 3, arbitrary: fc.array(oneMishap(plan), { minLength: 1, maxLength: 4 }) },
  );
