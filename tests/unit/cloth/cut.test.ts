/** Cut, seam and finished sizes, by the trade's figures and against another library's geometry. */
import { areaD, EndType, inflatePathsD, JoinType } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { cornersOnCircle, grow, sidesOf } from '../../../core/cloth/geometry.ts';
import {
  type ClothInput,
  type ClothPlan,
  type ClothShape,
  type CutRule,
  cutCloth,
  type Point,
  perimeter,
  pieceBox,
  pieceSides,
} from '../../../core/cloth/index.ts';

function planned(input: ClothInput): ClothPlan {
  const result = cutCloth(input);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

const square = (width: number, height = width): ClothShape => ({ shape: 'rectangle', width, height });

describe('the size of the cut', () => {
  type Row = [
    what: string,
    panel: number,
    depth: number,
    rule: CutRule,
    edges: [number, number],
    cut: number,
    source: string,
  ];
  const rows: Row[] = [
    ['snug', 410, 15, 'snug', [0, 0], 425, 'the check value of the trade: common practice, no source'],
    [
      'exact',
      410,
      15,
      'exact',
      [0, 0],
      440,
      'seam as large as the panel, cut larger by the depth: the model',
    ],
    ['own allowance', 410, 15, { allowance: 15 }, [0, 0], 440, 'home seam allowance 1.5 cm (read)'],
    ['own allowance in inches', 406.4, 12.7, { allowance: 12.7 }, [0, 0], 431.8, 'cushions 1/2 in (read)'],
    [
      'a deeper front edge',
      410,
      15,
      'exact',
      [12, 6],
      452,
      'grown by the difference of the two edges: the model',
    ],
    ['a deeper edging', 410, 15, 'snug', [6, 12], 413, 'grown by the difference of the two edges: the model'],
  ];
  it.each(rows)('%s', (_what, panel, depth, rule, [frontEdge, edging], cut, source) => {
    const { cut: piece } = planned({ panel: square(panel), depth, rule, frontEdge, edging });
    expect(pieceBox(piece), source).toEqual({
      width: expect.closeTo(cut, 9),
      height: expect.closeTo(cut, 9),
    });
  });

  it('lets exact backs come out as large as their fronts', () => {
    const plan = planned({ panel: square(380, 300), depth: 14, rule: 'exact', frontEdge: 9, edging: 5 });
    expect(plan.finishedBack).toEqual(plan.finishedFront);
    expect(plan.finishedFront).toEqual({ shape: 'rectangle', width: 398, height: 318 });
  });

  it('makes a snug back half the depth smaller on every edge', () => {
    const plan = planned({ panel: square(410), depth: 15, rule: 'snug', edging: 6 });
    expect(plan.seam).toEqual({ shape: 'rectangle', width: 395, height: 395 });
    expect(plan.finishedBack).toEqual({ shape: 'rectangle', width: 407, height: 407 });
    expect(plan.finishedFront).toEqual({ shape: 'rectangle', width: 422, height: 422 });
  });

  it('takes one edge given for both', () => {
    const one = planned({ panel: square(410), depth: 15, rule: 'exact', edging: 6 });
    const both = planned({ panel: square(410), depth: 15, rule: 'exact', edging: 6, frontEdge: 6 });
    expect(one).toEqual(both);
  });

  it.each([
    [360, 16, 6, 'snug'],
    [360, 16, 6, 'exact'],
    [95, 12, 0, { allowance: 4 }],
    [1200, 21, 14, { allowance: -3 }],
  ] as const)(
    'of a round panel %d mm across is what another library makes of its outline',
    (diameter, depth, edging, rule) => {
      const plan = planned({ panel: { shape: 'round', diameter }, depth, edging, frontEdge: 5, rule });
      // The outline as 10,000 points; moved by another library, and measured by its area and its length.
      const outline = Array.from({ length: 10_000 }, (_, i) => {
        const angle = (i / 10_000) * 2 * Math.PI;
        return { x: (diameter / 2) * Math.cos(angle), y: (diameter / 2) * Math.sin(angle) };
      });
      const moved = (by: number): { across: number; along: number } => {
        const [path] =
          by === 0 ? [outline] : inflatePathsD([outline], by, JoinType.Miter, EndType.Polygon, 2, 6);
        if (!path) throw new Error('nothing left');
        const along = sidesOf(path as Point[]).reduce((sum, side) => sum + side, 0);
        return { across: 2 * Math.sqrt(Math.abs(areaD(path)) / Math.PI), along };
      };
      const { allowance } = plan;
      const pieces = [
        [plan.cut, moved(allowance)],
        [plan.seam, moved(allowance - depth)],
        [plan.finishedBack, moved(allowance - depth + edging)],
        [plan.finishedFront, moved(5)],
      ] as const;
      for (const [piece, { across, along }] of pieces) {
        expect(pieceBox(piece).width).toBeCloseTo(across, 2);
        expect(perimeter(piece)).toBeCloseTo(along, 2);
      }
    },
  );

  it('grows a round panel by twice the distance across', () => {
    const plan = planned({ panel: { shape: 'round', diameter: 360 }, depth: 16, rule: 'snug' });
    expect(plan.cut).toEqual({ shape: 'round', diameter: 376 });
    expect(plan.seam).toEqual({ shape: 'round', diameter: 344 });
    expect(pieceSides(plan.seam)).toEqual([expect.closeTo(1080.7, 1)]);
  });

  it.each([3, 5, 6, 8, 12])('grows a regular piece of %i sides by 2 tan(π/k) a side', (k) => {
    const plan = planned({
      panel: { shape: 'polygon', sides: Array(k).fill(200) },
      depth: 15,
      rule: { allowance: 10 },
    });
    const wanted = 200 + 2 * 10 * Math.tan(Math.PI / k);
    for (const side of pieceSides(plan.cut)) expect(side).toBeCloseTo(wanted, 6);
  });
});

describe('corners', () => {
  it('of unequal sides lie on one circle, on both sides of its middle', () => {
    for (const sides of [
      [200, 150, 250, 180],
      [100, 110, 120, 300],
      [300, 90, 120, 110, 40],
    ]) {
      const corners = cornersOnCircle(sides) as Point[];
      for (const [i, side] of sidesOf(corners).entries()) expect(side).toBeCloseTo(sides[i] as number, 6);
      const radius = corners.map(({ x, y }) => Math.hypot(x, y));
      for (const each of radius) expect(each).toBeCloseTo(radius[0] as number, 6);
    }
  });

  it('are made certain by diagonals from the first corner', () => {
    // A trapezium with parallel sides 400 and 200, 150 high: its diagonal is √(300² + 150²).
    const leg = Math.hypot(100, 150);
    const plan = planned({
      panel: { shape: 'polygon', sides: [400, leg, 200, leg], diagonals: [Math.hypot(300, 150)] },
      depth: 15,
      rule: 'exact',
    });
    expect(plan.notes).toEqual([]);
    expect(pieceBox(plan.panel)).toEqual({ width: expect.closeTo(400, 6), height: expect.closeTo(150, 6) });
    expect(plan.panel.shape === 'polygon' && plan.panel.corners[0]?.x).toBeLessThan(1);
  });

  it('taken to lie on a circle are said to be', () => {
    const plan = planned({
      panel: { shape: 'polygon', sides: [200, 150, 250, 180] },
      depth: 15,
      rule: 'exact',
    });
    expect(plan.notes).toEqual([{ at: 'panel.sides', code: 'corners-on-circle', params: { diagonals: 1 } }]);
  });

  it('of a triangle are certain without', () => {
    const plan = planned({ panel: { shape: 'polygon', sides: [300, 400, 500] }, depth: 15, rule: 'exact' });
    expect(plan.notes).toEqual([]);
    expect(pieceBox(plan.panel).height * pieceBox(plan.panel).width).toBeGreaterThan(0);
  });
});

describe('moving every edge, held against another library', () => {
  const pieces: [string, number[], number[]?][] = [
    ['triangle', [300, 400, 500]],
    ['unequal four', [200, 150, 250, 180]],
    ['four by a diagonal', [400, 180.28, 200, 180.28], [335.41]],
    ['unequal six', [120, 200, 140, 90, 230, 160]],
    ['unequal nine', [90, 80, 70, 120, 60, 110, 100, 50, 75]],
  ];
  it.each(pieces)('%s', (_name, sides, diagonals) => {
    const panel: ClothShape = { shape: 'polygon', sides, ...(diagonals && { diagonals }) };
    const plan = planned({ panel, depth: 15, rule: 'exact' });
    const corners = plan.panel.shape === 'polygon' ? plan.panel.corners : [];
    for (const by of [-20, -7.5, 4, 15]) {
      const ours = grow(corners, by) as Point[];
      const theirs = inflatePathsD([corners], by, JoinType.Miter, EndType.Polygon, 20, 6)[0] as Point[];
      expect(theirs).toHaveLength(ours.length);
      expect(Math.abs(areaD(ours))).toBeCloseTo(Math.abs(areaD(theirs)), 1);
      for (const corner of ours) {
        const nearest = Math.min(...theirs.map(({ x, y }) => Math.hypot(x - corner.x, y - corner.y)));
        expect(nearest).toBeLessThan(0.01);
      }
    }
  });

  it('leaves nothing where a side would be turned round', () => {
    expect(grow(cornersOnCircle([100, 100, 100]) as Point[], -30)).toBeNull();
    expect(
      inflatePathsD([cornersOnCircle([100, 100, 100]) as Point[]], -30, JoinType.Miter, EndType.Polygon),
    ).toEqual([]);
  });
});

describe('measures that cannot be', () => {
  const problemsOf = (input: ClothInput): [string, string][] => {
    const result = cutCloth(input);
    return result.ok ? [] : result.problems.map(({ at, code }) => [at, code]);
  };

  it('are told all at once', () => {
    const input: ClothInput = {
      panel: { shape: 'rectangle', width: -5, height: 4e7 },
      depth: Number.NaN,
      rule: { allowance: 9e9 },
      edging: -1,
      pitch: { front: 0, top: Number.POSITIVE_INFINITY },
      counts: { front: [1], strip: [1, 2, 3, 4], edging: [1, 2, 3] },
    };
    expect(problemsOf(input)).toEqual([
      ['panel.width', 'length-too-small'],
      ['panel.height', 'length-too-large'],
      ['depth', 'length-too-small'],
      ['rule.allowance', 'length-too-large'],
      ['edging', 'length-too-small'],
      ['pitch.front', 'length-too-small'],
      ['pitch.top', 'length-too-large'],
      ['counts.front', 'sides-differ'],
      ['counts.edging', 'sides-differ'],
    ]);
  });

  type Row = [what: string, panel: ClothShape, at: string, code: string];
  const rows: Row[] = [
    [
      'a rectangle whose diagonals differ',
      { ...square(410), diagonals: [570, 600] } as ClothShape,
      'panel.diagonals',
      'diagonals-differ',
    ],
    [
      'diagonals of another rectangle',
      { ...square(410), diagonals: [700, 700] } as ClothShape,
      'panel.diagonals',
      'diagonals-unlikely',
    ],
    ['one corner', { shape: 'polygon', sides: [900] }, 'panel.sides', 'paper-pattern'],
    ['two corners', { shape: 'polygon', sides: [400, 400] }, 'panel.sides', 'paper-pattern'],
    [
      'a side as long as the rest',
      { shape: 'polygon', sides: [100, 500, 200, 100] },
      'panel.sides[1]',
      'side-too-long',
    ],
    [
      'too few diagonals',
      { shape: 'polygon', sides: [9, 9, 9, 9, 9], diagonals: [14] },
      'panel.diagonals',
      'diagonal-count',
    ],
    [
      'a diagonal that reaches nothing',
      { shape: 'polygon', sides: [100, 100, 100, 100], diagonals: [250] },
      'panel.diagonals',
      'diagonals-do-not-close',
    ],
    [
      'a dent',
      { shape: 'polygon', sides: [100, 100, 200, 200], diagonals: [110] },
      'panel.diagonals',
      'bends-inwards',
    ],
  ];
  it.each(rows)('%s', (_what, panel, at, code) => {
    expect(problemsOf({ panel, depth: 15, rule: 'exact' })).toEqual([[at, code]]);
  });

  it('include a panel smaller than its foundation is deep', () => {
    expect(problemsOf({ panel: square(20), depth: 30, rule: { allowance: 0 } })).toEqual([
      ['depth', 'nothing-left'],
    ]);
  });

  it('allow diagonals that differ by what measuring crochet does', () => {
    expect(
      problemsOf({ panel: { ...square(410), diagonals: [580, 584] } as ClothShape, depth: 15, rule: 'snug' }),
    ).toEqual([]);
  });
});
