import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { settle } from '../../core/hand/acts/doing.ts';
import { tallyWith } from '../../core/hand/tally.ts';
import { anyMishap, countsOf, plans } from './explain-panels.ts';

const makings = fc
  .oneof(plans({ sides: [0, 6], stitches: [1, 9] }), plans({ sides: [0, 24], stitches: [3, 60] }))
  .chain((plan) => fc.tuple(fc.constant(plan), fc.array(anyMishap(plan), { maxLength: 5 })));

describe('counts without a graph', () => {
  it('are those read off the graph, whatever the hand does', () => {
    fc.assert(
      fc.property(makings, ([plan, mishaps]) => {
        expect(tallyWith(plan, settle(mishaps))).toEqual(countsOf(plan, mishaps));
      }),
      { numRuns: 1000 },
    );
  });
});
