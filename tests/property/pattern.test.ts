/** A written pattern holds the plan: a reader that knows only its words gets every number back. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan, Shape } from '../../core/index.ts';
import { toHtml, toMarkdown, toText } from '../../src/words/pattern/formats.ts';
import { writeOut } from '../../src/words/pattern/write-out.ts';
import { readPattern } from '../unit/pattern/reader.ts';
import { panels, planOf, runs } from './core/panels.ts';

const terms = fc.constantFrom('uk', 'us', 'both' as const);
const hand = fc.constantFrom('right', 'left' as const);

const shape = ({ sides, corners, total }: Shape & { total: number }) => ({ sides, corners, total });
const legsOf = ({ foundation }: Plan): number[] =>
  foundation.corners.length === 0
    ? [foundation.lead]
    : [foundation.lead, ...foundation.sides.slice(1), foundation.tail];

/** Corners without places are told as turns: of what they are not made shows nowhere. */
const asTold = (value: unknown): unknown => {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(asTold);
  if ('size' in value && value.size === 0) return { made: 'chain', size: 0 };
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, asTold(inner)]));
};

describe('a written pattern', () => {
  it('gives every number of the plan to a reader', () => {
    fc.assert(
      fc.property(panels, terms, hand, (panel, inTerms, by) => {
        const plan = planOf(panel);
        const written = writeOut(plan, { terms: inTerms, hand: by, units: 'cm' });
        const read = readPattern(toText(written));
        const { choices } = plan;
        const cornered = plan.edge.corners.length > 0;
        expect(asTold(read)).toEqual(
          asTold({
            panel: shape(plan.edge),
            faces: cornered ? plan.faces : [],
            startCounts: choices.foundationStart.counts,
            closings: { foundation: choices.foundationClosing.adds, edging: choices.edgingClosing.adds },
            legs: legsOf(plan),
            turns: plan.foundation.corners,
            foundation: shape(plan.foundation),
            edgings: plan.edgings.map(({ arm, increase, ...counts }) => ({
              arms: counts.corners.map(() => arm),
              corners: counts.corners,
              increase,
              counts: shape(counts),
            })),
            markerEvery: choices.markerEvery,
            join: cornered ? choices.joinStart : null,
            pairs: plan.pairs,
          }),
        );
      }),
      runs,
    );
  });

  it('says the same in every format', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        const written = writeOut(planOf(panel), { terms: 'uk', hand: 'right', units: 'cm' });
        const words = (text: string): string[] => text.match(/[\p{L}\p{N}]+/gu) ?? [];
        const html = toHtml(written)
          .replace(/^[\s\S]*<body>/, '')
          .replace(/<[^>]*>/g, ' ');
        const listed = (text: string): string[] => words(text.replace(/^\d+\. /gm, ''));
        const plain = listed(toText(written)).map((word) => word.toLowerCase());
        expect(words(html.replace(/&amp;/g, '&')).map((word) => word.toLowerCase())).toEqual(plain);
        expect(listed(toMarkdown(written).replaceAll('\\', '')).map((word) => word.toLowerCase())).toEqual(
          plain,
        );
      }),
      { numRuns: 50 },
    );
  });
});
