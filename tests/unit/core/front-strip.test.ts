/** Two strips for a piece whose front is cloth too: worked as told, they meet. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countRound, pair, planBack, planFrontStrip, readEdge, work } from '../../../core/index.ts';
import { toText } from '../../../src/words/pattern/formats.ts';
import { writeOut } from '../../../src/words/pattern/write-out.ts';
import { sayFrontStrip } from '../../../src/words/recipe.ts';
import { expectSame, given, panels, planOf } from '../../property/core/panels.ts';
import { planOf as planOfSides } from './making.ts';

const speech = { dialect: 'uk', hand: 'right', units: 'cm' } as const;

describe('the strip of a front of cloth', () => {
  it('comes out as a front whose back is the strip of the back, and the two meet', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        const back = planOf(panel);
        const made = work(given(planFrontStrip(back)));
        // Counted on the piece itself, as a maker counts a panel.
        const { sides, corners } = countRound(made.edgings.at(-1)!);
        const from = back.choices.start.side;
        expectSame(
          sides,
          sides.map((_, j) => back.edge.sides[(from + j) % sides.length]),
        );
        const front = given(readEdge({ sides, corner: corners, counted: 'stitches-only' }));
        const { joinStart: _, open: _open, ...choices } = back.choices;
        const own = given(
          planBack(front, {
            ...choices,
            start: { ...choices.start, side: 0 },
            edgings: back.edgings.map(({ arm, increase, corners: own }) => ({
              arm,
              increase,
              ...(own.length > 0 && { corner: own }),
            })),
          }),
        );
        expectSame([own.foundation, own.edgings], [back.foundation, back.edgings]);
        const sewn = work(own);
        const joined = pair(front, sewn.edgings.at(-1)!, { start: sewn.join, manner: 'stitch-by-stitch' });
        expect(joined.verdict.kind).toBe('meets');
      }),
      { numRuns: 120 },
    );
  });

  it('is the back’s own once more where that is its own mirror image', () => {
    for (const sides of [[50, 50, 50, 50], [62, 38, 62, 38], [40]]) {
      const plan = planOfSides(sides, sides.length === 1 ? { corner: [] } : {});
      expect(sayFrontStrip({ plan }, speech)).toMatchObject({ legs: [], edgings: [] });
    }
  });

  it('is told by its own numbers where it is not', () => {
    const plan = planOfSides([60, 40, 50, 30]);
    const { legs, edgings, how } = sayFrontStrip({ plan }, speech);
    // Each side less its 2 arms; the start side in 2 legs, with the closing's stitch.
    const [lead = 0, second, third, fourth, tail = 0] = legs.map(({ count }) => count);
    expect([lead + tail + 1, second, third, fourth]).toEqual([58, 38, 48, 28]);
    expect(edgings.map(({ legs: own }) => own.map(({ count }) => count))).toEqual([[60, 40, 50, 30]]);
    expect(how.join(' ')).toContain('front side 1');
    // The back's are in the other order.
    expect(plan.foundation.sides).toEqual([58, 28, 48, 38]);
  });

  it('is in the written pattern, and only where the front is cloth', () => {
    const plan = planOfSides([60, 40, 50, 30]);
    const told = { terms: 'uk', hand: 'right', units: 'cm' } as const;
    const text = toText(writeOut(plan, { ...told, isOfCloth: true }));
    const own = text.slice(text.indexOf('STRIP FOR THE FRONT'), text.indexOf('CLOTH AND SEWING'));
    expect(own).toContain('Sides 58, 38, 48, 28;');
    expect(own).toContain('60, 40, 50, 30;');
    expect(text).toContain('Cut 2 pieces, mirror images');
    expect(toText(writeOut(plan, told))).not.toMatch(/STRIP FOR THE FRONT|2 pieces/);
    const square = toText(writeOut(planOfSides([50, 50, 50, 50]), { ...told, isOfCloth: true }));
    expect(square).toContain('once more for it, stitch for stitch');
  });
});
