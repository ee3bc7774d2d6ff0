/** Running stitch out and back, and the thread for it. */
import { describe, expect, it } from 'vitest';
import { machineThread, sewByHand } from '../../../core/cloth/index.ts';

const square = (stitches: number, seam: number) => ({
  sides: Array.from({ length: 4 }, () => ({ stitches, seam })),
  hasCorners: true,
  thickness: 5,
  working: 500,
  tail: 80,
});

describe('thread', () => {
  it('is four times the seam for both passes where a stitch is as long as the layers are thick (printed rule, read)', () => {
    expect(sewByHand(square(80, 400)).both).toBeCloseTo(4 * 1600, 6);
  });

  it('lies within the printed cut lengths, a little over 3 to 4 times the seam, for thin layers (read, four guides)', () => {
    const { both } = sewByHand({ ...square(80, 400), thickness: 3 });
    expect(both / 1600).toBeGreaterThan(3);
    expect(both / 1600).toBeLessThan(4);
  });

  it('is cut into working lengths, each with two ends', () => {
    const plan = sewByHand(square(80, 400));
    // 3200 mm a pass, of which a 500 mm length sews 340 less what is drawn back from corners.
    expect(plan.lengths).toBeGreaterThanOrEqual(Math.ceil(3200 / 340));
    expect(plan.cut).toBeCloseTo(plan.both + plan.lengths * 2 * 2 * 80, 6);
    expect(plan.changes).toHaveLength(plan.lengths - 1);
  });

  it('changes away from corners', () => {
    const plan = sewByHand(square(80, 400));
    for (const { stitch } of plan.changes) {
      expect(stitch * 5).toBeGreaterThanOrEqual(30);
      expect((80 - stitch) * 5).toBeGreaterThanOrEqual(30);
    }
  });

  it('for a machine is 2.5 times the seam and 10 to 15 % (lockstitch 301, read)', () => {
    expect(machineThread(1600)).toEqual([expect.closeTo(4400, 6), expect.closeTo(4600, 6)]);
  });
});

describe('the two passes', () => {
  it.each([
    ['even sides', [80, 60, 80, 60]],
    ['odd sides', [81, 59, 81, 59]],
    ['one odd', [80, 60, 79, 60]],
  ])('fill each other’s gaps: %s', (_what, counts) => {
    const sides = counts.map((stitches) => ({ stitches, seam: stitches * 5 }));
    const { over } = sewByHand({ ...square(0, 0), sides });
    expect(counts.map((_, i) => (over.out[i] as number) + (over.back[i] as number))).toEqual(counts);
    for (const [i, out] of over.out.entries())
      expect(Math.abs(out - (over.back[i] as number))).toBeLessThanOrEqual(1);
  });

  // From the middle of the first side; a corner is one place, and places 1, 3, 5 … are gone over on the way out.
  it.each([
    ['the corners are places 41, 122, 203 and 284', [80, 80, 80, 80], ['before', 'after', 'before', 'after']],
    ['the corners are places 42, 102, 184 and 244', [81, 59, 81, 59], ['after', 'after', 'after', 'after']],
  ])('come out before a corner they go over, and after one they go under: %s', (_what, counts, corners) => {
    const sides = counts.map((stitches) => ({ stitches, seam: stitches * 5 }));
    expect(sewByHand({ ...square(0, 0), sides }).corners).toEqual(corners);
  });

  it('have no corners on a round piece', () => {
    const plan = sewByHand({ ...square(0, 0), hasCorners: false, sides: [{ stitches: 241, seam: 1200 }] });
    expect(plan.corners).toEqual([]);
    expect(plan.over).toEqual({ out: [121], back: [120] });
  });
});
