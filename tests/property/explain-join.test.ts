import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinOf } from '../../core/explain/join.ts';
import { settle } from '../../core/hand/acts/doing.ts';
import { type Tally, tallyWith } from '../../core/hand/tally.ts';
import { pair, work } from '../../core/index.ts';
import { anyMishap, plans } from './explain-panels.ts';

const makings = fc
  .oneof(plans({ sides: [0, 6], stitches: [1, 9] }), plans({ sides: [0, 12], stitches: [3, 60] }))
  .chain((plan) => fc.tuple(fc.constant(plan), fc.array(anyMishap(plan), { maxLength: 4 })));

describe('what the join shows, from counts alone', () => {
  it('is what `pair` shows of the worked rounds', () => {
    fc.assert(
      fc.property(makings, ([plan, mishaps]) => {
        const worked = work(plan, mishaps);
        const paired = pair(plan.edge, worked.edgings.at(-1)!, {
          start: worked.join,
          manner: 'stitch-by-stitch',
        });
        const settled = settle(mishaps);
        const last = tallyWith(plan, settled).edgings.at(-1) as Tally;
        const shown = joinOf(plan, last, settled, plan.edge.sides);
        const expected = worked.edgings.at(-1)?.length
          ? { drift: paired.sides.map(({ drift }) => drift), leftOver: paired.leftOver }
          : null;
        expect(shown).toEqual(expected);
      }),
      { numRuns: 500 },
    );
  });
});
