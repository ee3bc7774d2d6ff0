import { describe, expect, it } from 'vitest';
import { positionToSpot, spotToPosition } from '../../src/drawing/scene.ts';
import type { Label, Part } from '../../src/table/draw-list.ts';
import {
  CHAINS,
  closeOf,
  makingOf,
  ONE_SHORT,
  partnerMark,
  partOf,
  RECTANGLE,
  sceneOf,
  wholeOf,
} from './drawing-making.ts';

describe('the close-up', () => {
  const making = makingOf(RECTANGLE, { mishaps: [ONE_SHORT] });

  it('frames the pair being joined, both marks in it', () => {
    for (const node of [3, 59, 61, 120]) {
      const view = closeOf(sceneOf(making, making.steps.stepOf('join', node)));
      const frame = view.signs.find((sign) => sign.kind === 'frame' && sign.key === 'place')!;
      if (frame.kind !== 'frame') throw new Error('no frame');
      expect(frame.x).toBe(view.centre!.x);
      const inside = view.parts.filter(
        ({ key, marks }) =>
          key.startsWith('close.') && !key.includes('bars') && [...marks.x].includes(frame.x),
      );
      const names = inside.map(({ key }) => key.split('.')[1]);
      expect(names).toContain('front');
      expect(names).toContain('edging0');
    }
  });

  it('has joined the bars up to the frame and none beyond', () => {
    for (const node of [60, 100, 150]) {
      const view = closeOf(sceneOf(making, making.steps.stepOf('join', node)));
      const x = view.centre!.x;
      for (const { key, marks, made } of view.parts) {
        if (!key.startsWith('close.bars.0')) continue;
        // Right-handed, the join goes to the left.
        const near = (bar: number) => Math.abs(bar - x) < 30;
        const done = [...marks.x.subarray(0, made)].filter(near);
        const ahead = [...marks.x.subarray(made)].filter(near);
        expect(done.every((bar) => bar >= x)).toBe(true);
        expect(ahead.every((bar) => bar < x)).toBe(true);
      }
    }
  });

  it('has the yarn still to be joined where it was attached, until the very end', () => {
    const attach = making.pairing.runs[0]!.front;
    const bar = (place: number) => {
      const scene = sceneOf(making, place);
      for (const part of closeOf(scene).parts) {
        if (!part.key.startsWith('close.bars.0')) continue;
        for (let index = 0; index < part.marks.count; index++) {
          const at = spotToPosition(scene, { view: 'close', part: part.key, index });
          if (at?.node === attach) return index < part.made;
        }
      }
      return null;
    };
    expect(bar(making.steps.stepOf('join', attach + 3))).toBe(false);
    expect(bar(making.steps.length - 1)).toBe(true);
  });

  it('stands posts under the stitches worked into them', () => {
    const { into, kinds } = making.worked.edgings[0]!;
    const scene = sceneOf(making, making.steps.stepOf('edging', 100, 0));
    let seen = 0;
    for (let node = 90; node < 110; node++) {
      const below = into[node]!;
      if (below < 0 || kinds[node] !== 0) continue;
      const stitch = positionToSpot(scene, { round: 'edging', edging: 0, node }, 'close')!;
      const post = positionToSpot(scene, { round: 'foundation', edging: 0, node: below }, 'close')!;
      const xAt = ({ part, index }: typeof stitch) =>
        closeOf(scene).parts.find(({ key }) => key === part)!.marks.x[index];
      expect(xAt(post)).toBe(xAt(stitch));
      seen++;
    }
    expect(seen).toBeGreaterThan(10);
  });

  it('runs as the hand does: the round in work goes to the left for the right hand', () => {
    for (const [stage, name] of [
      ['join', 'front'],
      ['edging', 'edging0'],
      ['foundation', 'foundation'],
    ] as const) {
      for (const [hand, sign] of [
        ['right', -1],
        ['left', 1],
      ] as const) {
        const place = making.steps.stretches.find((stretch) => stretch.stage === stage)!.from + 40;
        const part = closeOf(sceneOf(making, place, { hand })).parts.find(({ key }) =>
          key.startsWith(`close.${name}.0`),
        )!;
        expect(Math.sign(part.marks.x[1]! - part.marks.x[0]!)).toBe(sign);
      }
    }
  });

  it('builds a window only, and the same one for a panel of a million', () => {
    const large = makingOf({
      sides: [99_000, 99_000, 99_000, 99_000],
      corner: CHAINS,
      counted: 'stitches-only',
    });
    const close = closeOf(sceneOf(large, large.steps.stepOf('edging', 200_000)));
    const marks = close.parts.reduce((sum, part) => sum + part.marks.count, 0);
    expect(marks).toBeGreaterThan(300);
    expect(marks).toBeLessThan(2000);
    const whole = wholeOf(sceneOf(large));
    expect(whole.parts.reduce((sum, part) => sum + part.marks.count, 0)).toBeLessThan(1000);
    expect(whole.parts.some((part) => part.ribbons.length > 0)).toBe(true);
  });
});

describe('the pieces apart', () => {
  it('lay the back turned over: every side bears its own number, and those of the back tell what they meet, mirrored', () => {
    const view = wholeOf(sceneOf(makingOf(RECTANGLE), 0, { arrangement: 'apart' }));
    const sides = (piece: string) =>
      [0, 1, 2, 3].map((side) => view.labels.find(({ key }) => key === `${piece}.${side}`)!);
    const [front, back, meets] = [sides('front'), sides('back'), sides('meets')];
    const texts = (labels: Label[]) => labels.map(({ text }) => text);
    expect(texts(front)).toEqual(['1 \u00b7 58', '2 \u00b7 36', '3 \u00b7 58', '4 \u00b7 36']);
    // The back runs the other way: front side 2 meets back side 4.
    expect(texts(back)).toEqual(['1 \u00b7 58', '4 \u00b7 36', '3 \u00b7 58', '2 \u00b7 36']);
    expect(texts(meets)).toEqual(['meets front 1', 'meets front 2', 'meets front 3', 'meets front 4']);
    expect(front[1]!.x).toBeLessThan(front[3]!.x);
    expect(back[1]!.x).toBeGreaterThan(back[3]!.x);
  });

  it('run both anticlockwise for the right hand: each is seen from its right side', () => {
    const scene = sceneOf(makingOf(RECTANGLE), 0, { arrangement: 'apart' });
    const top = partOf(scene, 'front.0').marks;
    const back = partOf(scene, 'edging0.0').marks;
    expect(top.x[5]!).toBeLessThan(top.x[0]!);
    expect(back.x[5]!).toBeLessThan(back.x[0]!);
  });
});

/** The way a mark's far loop lies from its middle. */
function farWay(part: Part, index: number): { x: number; y: number } {
  const angle = part.marks.angle[index]!;
  const side = part.mirrored ? -1 : 1;
  return { x: Math.sin(angle) * side, y: -Math.cos(angle) * side };
}

describe('loops and posts', () => {
  const inputs = [RECTANGLE, { sides: [90], corner: [], counted: 'stitches-only' as const }];

  it('turn the far loops of both rounds to the seam, for either hand', () => {
    for (const input of inputs) {
      for (const hand of ['right', 'left'] as const) {
        const making = makingOf(input);
        const scene = sceneOf(making, 0, { hand });
        const front = partOf(scene, 'front.0');
        for (let i = 3; i < 30; i += 5) {
          const back = partnerMark(making, scene, 0, i);
          const [dx, dy] = [back.x - front.marks.x[i]!, back.y - front.marks.y[i]!];
          const away = farWay(front, i);
          expect(away.x * dx + away.y * dy).toBeGreaterThan(0);
          const toFront = farWay(partOf(scene, back.part), back.index);
          expect(toFront.x * dx + toFront.y * dy).toBeLessThan(0);
        }
      }
    }
  });

  it('turn the far loops down on the front and up on the edging in the close-up', () => {
    const making = makingOf(RECTANGLE);
    for (const hand of ['right', 'left'] as const) {
      for (const stage of ['front', 'edging', 'join'] as const) {
        const from = making.steps.stretches.find((stretch) => stretch.stage === stage)!.from;
        for (const part of closeOf(sceneOf(making, from + 20, { hand })).parts) {
          if (part.key.startsWith('close.front')) expect(farWay(part, 0).y).toBeGreaterThan(0);
          if (part.key.startsWith('close.edging0')) expect(farWay(part, 0).y).toBeLessThan(0);
        }
      }
    }
  });

  it('let posts grow inwards', () => {
    for (const input of inputs) {
      for (const hand of ['right', 'left'] as const) {
        const { marks } = partOf(sceneOf(makingOf(input), 0, { hand }), 'foundation.0');
        for (let i = 0; i < 20; i++) {
          const [x, y, angle] = [marks.x[i]!, marks.y[i]!, marks.angle[i]!];
          // Towards the middle of the panel, which is the origin.
          expect(-Math.sin(angle) * -x + Math.cos(angle) * -y).toBeGreaterThan(0);
        }
      }
    }
  });
});
