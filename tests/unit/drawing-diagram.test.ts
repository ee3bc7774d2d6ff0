/** The ring diagram: a number for each leg and corner of the foundation, as its maker works it. */
import { describe, expect, it } from 'vitest';
import { makingOf, RECTANGLE, sceneOf, wholeOf } from './drawing-making.ts';

const diagramOf = (hand: 'right' | 'left' = 'right', making = makingOf(RECTANGLE)) =>
  wholeOf(sceneOf(making, 0, { arrangement: 'diagram', hand }));

describe('the ring diagram', () => {
  it('tells every leg in working order, the start side in its two parts', () => {
    const { plan } = makingOf(RECTANGLE);
    const { lead, tail, sides } = plan.foundation;
    const start = (sides[0] ?? 0) - lead;
    expect(start).toBeGreaterThanOrEqual(tail);
    // The same words may stand at several places, each for a range of zooms: at one zoom there is one of each.
    const seen = diagramOf().labels.filter(({ minPx = 0, maxPx = Infinity }) => minPx <= 8 && 8 <= maxPx);
    const numbers = seen.flatMap(({ text }) => (/^\d+$/.test(text) ? [Number(text)] : []));
    expect(numbers.sort((a, b) => a - b)).toEqual([lead, ...sides.slice(1), start].sort((a, b) => a - b));
  });

  it('calls the two parts of the start side parts of one side', () => {
    const legs = diagramOf().labels.flatMap(({ key, text }) => (key.includes('.side') ? [text] : []));
    expect([...new Set(legs)].sort()).toEqual(
      ['side 1, its start', 'side 1, its rest', 'side 2', 'side 3', 'side 4'].sort(),
    );
  });

  it('tells all of the foundation and every corner', () => {
    const { plan, worked } = makingOf(RECTANGLE);
    const { labels } = diagramOf();
    expect(labels.find(({ key }) => key === 'total')?.text).toBe(
      `${worked.foundation.length} in all, corners too`,
    );
    const corners = new Set(labels.flatMap(({ key }) => (key.endsWith('.corner') ? [key] : [])));
    expect(corners.size).toBe(plan.foundation.corners.length);
  });

  it('is marked where it begins, and runs the other way for the other hand', () => {
    const signs = (hand: 'right' | 'left') => diagramOf(hand).signs;
    const arrow = (hand: 'right' | 'left') =>
      signs(hand).find(({ kind }) => kind === 'arrow') as { angle: number };
    expect(signs('right').filter(({ key }) => key === 'start')).toHaveLength(1);
    expect(Math.cos(arrow('right').angle)).toBeCloseTo(-Math.cos(arrow('left').angle), 5);
  });
});
