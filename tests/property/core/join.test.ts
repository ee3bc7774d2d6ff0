import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  countRound,
  type Gap,
  type JoinMade,
  type Manner,
  type Mishap,
  type Pairing,
  type PairRun,
  type Plan,
  pair,
  planBack,
  type Round,
  readEdge,
  type Worked,
} from '../../../core/index.ts';
import {
  type Begin,
  cornerToCorner,
  inJoinOrder,
  leastDifference,
  skippedNames,
  stitchByStitch,
} from '../../oracle/join.ts';
import { pieceOfEdge, pieceOfRound, placesOf } from '../../oracle/lanes.ts';
import { corneredPanels, given, panels, planOf, runs, smallPanels, total, workOf } from './panels.ts';

const manners: Manner[] = ['stitch-by-stitch', 'corner-to-corner'];
const many = { numRuns: 6 * runs.numRuns };

const beginOf = (start: JoinMade): Begin => ({
  side: start.side,
  fromCorner: start.fromCorner,
  offset: start.offset ?? 0,
  turned: start.turned ?? 0,
  skipped: start.skipped ?? [],
  lastHoleOpen: start.lastHoleOpen ?? false,
});

type Drawn = { plan: Plan; worked: Worked; pairing: Pairing; begin: Begin };

function joined(plan: Plan, mishaps: Mishap[], manner: Manner): Drawn {
  const worked = workOf(plan, mishaps);
  const pairing = pair(plan.edge, worked.edgings.at(-1)!, { start: worked.join, manner });
  return { plan, worked, pairing, begin: beginOf(worked.join) };
}

function expectOracle({ plan, worked, pairing, begin }: Drawn): void {
  const back = worked.edgings.at(-1) as Round;
  const read = pairing.manner === 'stitch-by-stitch' ? stitchByStitch : cornerToCorner;
  const places = read(pieceOfEdge(plan.edge), pieceOfRound(back), plan.choices.start.side, begin);
  expect(placesOf(pairing.runs, plan.edge, back)).toEqual(places);
  expect(pairing.pairs).toBe(places.filter((place) => place.joined).length);
}

/** Mishaps that change counts and leave every corner where it turns. */
function countMishaps(plan: Plan): fc.Arbitrary<Mishap[]> {
  const k = plan.foundation.sides.length;
  const side = fc.integer({ min: 0, max: k - 1 });
  const place = fc.integer({ min: 0, max: 12 });
  const count = fc.integer({ min: 1, max: 3 });
  const round = fc.constantFrom<'foundation' | 'edging'>('foundation', 'edging');
  const onSides: fc.Arbitrary<Mishap> = fc.record({
    kind: fc.constantFrom('stitch-missed', 'stitch-doubled'),
    round,
    side,
    place,
    count,
  });
  if (plan.foundation.corners.length === 0) return fc.array(onSides, { maxLength: 3 });
  const corner = fc.integer({ min: 0, max: k - 1 });
  const chains: fc.Arbitrary<Mishap> = fc.record({
    kind: fc.constant('corner-chains'),
    round: fc.constant('edging'),
    edging: fc.constant(plan.edgings.length - 1),
    corner,
    count: fc.integer({ min: 0, max: 4 }),
  });
  const hidden: fc.Arbitrary<Mishap> = fc.record({ kind: fc.constant('hidden-missed'), corner });
  return fc.array(fc.oneof(onSides, chains, hidden), { maxLength: 3 });
}

function joinMishaps(plan: Plan): fc.Arbitrary<Mishap[]> {
  const k = plan.foundation.corners.length;
  const count = fc.integer({ min: -9, max: 9 });
  const offset: fc.Arbitrary<Mishap> = fc.record({ kind: fc.constant('join-offset'), count });
  const turned: fc.Arbitrary<Mishap> = fc.record({ kind: fc.constant('join-wrong-side'), count });
  const hole: fc.Arbitrary<Mishap> = fc.constant({ kind: 'last-hole' });
  const skipped: fc.Arbitrary<Mishap> = fc.record({
    kind: fc.constant('join-chain-skipped'),
    corner: fc.integer({ min: 0, max: Math.max(0, k - 1) }),
  });
  return fc.array(k > 0 ? fc.oneof(offset, turned, hole, skipped) : fc.oneof(offset, hole), { maxLength: 3 });
}

/** A small panel with what hands did to it. */
const smallJoins = smallPanels.chain((panel) => {
  const plan = planOf(panel);
  return fc.tuple(fc.constant(plan), countMishaps(plan), joinMishaps(plan)).map(([drawn, counts, joins]) => ({
    plan: drawn,
    mishaps: [...counts, ...joins],
  }));
});

/** Stitches of the side in which a gap is told as lying, on the piece that is short. */
const sideLength = (gap: Gap, plan: Plan, back: Round): number | undefined =>
  gap.short === 'front' ? plan.edge.sides[gap.frontSide] : countRound(back).sides[gap.backSide];

/** Nothing to join where hands left out every stitch there was. */
const isThere = ({ edgings }: Worked): boolean => (edgings.at(-1)?.length ?? 0) > 0;

describe.each(manners)('%s', (manner) => {
  it('pairs as a reading place by place does, whatever hands did', () => {
    fc.assert(
      fc.property(smallJoins, ({ plan, mishaps }) => {
        fc.pre(isThere(workOf(plan, mishaps)));
        expectOracle(joined(plan, mishaps, manner));
      }),
      many,
    );
  });

  it('finds every place without a partner, once, on the side and after the stitch where it lies', () => {
    fc.assert(
      fc.property(smallJoins, ({ plan, mishaps }) => {
        fc.pre(isThere(workOf(plan, mishaps)));
        const { pairing, worked } = joined(plan, mishaps, manner);
        const back = worked.edgings.at(-1) as Round;
        const places = placesOf(pairing.runs, plan.edge, back);
        const alone = pairing.runs.flatMap((run, i) => (run.kind.endsWith('alone') ? [i] : []));
        expect(pairing.gaps.map((gap) => gap.run)).toEqual(alone);
        for (const gap of pairing.gaps) {
          const run = pairing.runs[gap.run] as PairRun;
          expect([gap.at, gap.count, gap.short]).toEqual([
            run.at,
            run.count,
            run.kind === 'front-alone' ? 'back' : 'front',
          ]);
          // The next name on the lane that lacks a stitch: the front's next comes after the gap in its own order,
          // the back's next before it.
          const ahead = [...places.slice(gap.at), ...places.slice(0, gap.at)];
          const next = ahead.map((place) => place[gap.short]).find((name) => name !== null);
          if (next === undefined || next === null) continue;
          const side = gap.short === 'front' ? gap.frontSide : gap.backSide;
          const [which, number] = next.slice(1).split('.').map(Number);
          if (!next.startsWith('S') || which !== side) continue;
          const after = gap.short === 'front' ? (number as number) : (number as number) + 1;
          // Where one side holds the whole round, also because nothing was worked on the others, its end is its beginning.
          const length = gap.short === 'front' ? pairing.front : pairing.back;
          const isWhole = length === sideLength(gap, plan, back);
          expect(isWhole ? gap.after % length : gap.after).toBe(isWhole ? after % length : after);
        }
      }),
      many,
    );
  });

  it('joins every position of a round with its mirror, and each once', () => {
    fc.assert(
      fc.property(panels, (panel) => {
        const plan = planOf(panel);
        const { pairing } = joined(plan, [], manner);
        expect(pairing.verdict).toEqual({ kind: 'meets', reasons: [] });
        expect(pairing).toMatchObject({
          front: plan.pairs,
          back: plan.pairs,
          pairs: plan.pairs,
          gaps: [],
          clashes: [],
          leftOver: 0,
          betterTurn: 0,
        });
        expect(total(pairing.runs.map((run) => run.count))).toBe(plan.pairs);
        expect(pairing.sides.every(({ surplus, drift }) => surplus === 0 && drift === 0)).toBe(true);
        expect(pairing.sides.map(({ frontSide, backSide }) => plan.faces[backSide] === frontSide)).toEqual(
          plan.edge.sides.map(() => true),
        );
      }),
      runs,
    );
  });

  it('does not meet with one stitch more', () => {
    fc.assert(
      fc.property(panels, fc.nat(), fc.nat(), (panel, sideAt, place) => {
        const plan = planOf(panel);
        const side = sideAt % plan.foundation.sides.length;
        // A side whose one stitch is made by the chains or the closing has none to double.
        fc.pre(side > 0 || plan.foundation.lead + plan.foundation.tail > 0);
        const doubled: Mishap = { kind: 'stitch-doubled', round: 'foundation', side, place: place % 100_000 };
        const { pairing } = joined(plan, [doubled], manner);
        expect(pairing.leftOver).toBe(1);
        expect(pairing.gaps.map(({ short, count }) => ({ short, count }))).toEqual([
          { short: 'front', count: 1 },
        ]);
        const front = plan.edge.sides[plan.faces[side] as number] as number;
        const mayEase = manner === 'corner-to-corner' && front >= 20;
        if (mayEase && pairing.betterTurn === 0) expect(pairing.verdict.kind).toBe('meets-with-easing');
        else expect(pairing.verdict.kind).toBe('does-not-meet');
      }),
      runs,
    );
  });
});

describe('a front that was worked', () => {
  it('pairs as its counts do', () => {
    fc.assert(
      fc.property(smallJoins, fc.constantFrom(...manners), ({ plan, mishaps }, manner) => {
        // The back of one panel is the front of another, with its own back in turn.
        const front = workOf(plan).edgings.at(-1) as Round;
        const { sides, corners } = countRound(front);
        const edge = given(readEdge({ sides, corner: corners, counted: 'stitches-only' }));
        const { edgings, foundationCorner } = plan.choices;
        const choices = {
          edgings: edgings.map(({ arm, increase }) => ({ arm, increase })),
          foundationCorner,
        };
        const itsOwn = given(planBack(edge, { ...choices, foundationClosing: { adds: 0 } }));
        const kept = mishaps.filter(({ kind }) => kind.startsWith('join') || kind === 'last-hole');
        const worked = workOf(itsOwn, kept);
        const options = { start: worked.join, manner };
        const back = worked.edgings.at(-1) as Round;
        expect(pair(front, back, options)).toEqual(pair(edge, back, options));
      }),
      runs,
    );
  });
});

describe('the verdict', () => {
  it.each(manners)(
    'is that two rounds meet when every place is held and corner falls on corner: %s',
    (manner) => {
      const count = { meets: 0, not: 0 };
      fc.assert(
        fc.property(smallJoins, fc.boolean(), ({ plan, mishaps }, isTwisted) => {
          const still = mishaps.filter(({ kind }) => kind !== 'join-offset');
          const all = isTwisted ? [...still, { kind: 'twisted' as const }] : still;
          fc.pre(isThere(workOf(plan, all)));
          const { pairing, worked, begin } = joined(plan, all, manner);
          const front = pieceOfEdge(plan.edge);
          const back = pieceOfRound(worked.edgings.at(-1) as Round);
          const rings = inJoinOrder(front, back, plan.choices.start.side, begin);
          const shapeOf = (ring: string[]): string => ring.map((name) => name.charAt(0)).join('');
          const isHeld = stitchByStitch(front, back, plan.choices.start.side, begin).every(
            (place) => place.joined,
          );
          const meets = isHeld && shapeOf(rings.front) === shapeOf(rings.back) && !isTwisted;
          count[meets ? 'meets' : 'not']++;
          if (meets) expect(pairing.verdict).toEqual({ kind: 'meets', reasons: [] });
          else {
            expect(pairing.verdict.kind).not.toBe('meets');
            expect(pairing.verdict.reasons.length).toBeGreaterThan(0);
          }
          if (manner === 'stitch-by-stitch') expect(pairing.verdict.kind).not.toBe('meets-with-easing');
        }),
        many,
      );
      expect(Math.min(count.meets, count.not)).toBeGreaterThan(many.numRuns / 20);
    },
  );

  it('is that they do not meet when the join begins elsewhere on one of them', () => {
    fc.assert(
      fc.property(smallJoins, fc.integer({ min: -9, max: 9 }), ({ plan }, by) => {
        const least = Math.min(...plan.edge.sides);
        fc.pre(by !== 0 && Math.abs(by) < least && plan.edge.corners.length > 0);
        const offset: Mishap = { kind: 'join-offset', count: by };
        for (const manner of manners) {
          const { pairing } = joined(plan, [offset], manner);
          expect(pairing.verdict.kind).toBe('does-not-meet');
          expect(pairing.verdict.reasons[0]).toEqual({ code: 'offset', by });
        }
      }),
      runs,
    );
  });

  it('of a rectangle turned by one side is that it is turned, and by how much', () => {
    const rectangles = fc
      .tuple(fc.integer({ min: 3, max: 60 }), fc.integer({ min: 3, max: 60 }))
      .filter(([long, wide]) => long !== wide);
    fc.assert(
      fc.property(rectangles, fc.constantFrom(1, 3, -1, 5), ([long, wide], count) => {
        const sides = [long, wide, long, wide];
        const plan = planOf({
          input: { sides, corner: { made: 'chain', size: 2 }, counted: 'stitches-only' },
          choices: {},
        });
        const { pairing } = joined(plan, [{ kind: 'join-wrong-side', count }], 'corner-to-corner');
        expect(pairing.verdict.kind).toBe('does-not-meet');
        expect(pairing.verdict.reasons[0]).toEqual({ code: 'turned', by: 1 });
        expect(pairing.betterTurn).toBe(1);
      }),
      runs,
    );
  });
});

describe('what drifts', () => {
  it('is how much later the back turns than the front, place by place', () => {
    fc.assert(
      fc.property(smallJoins, ({ plan, mishaps }) => {
        const still = mishaps.filter(({ kind }) => kind !== 'join-offset');
        fc.pre(isThere(workOf(plan, still)));
        const { pairing, worked, begin } = joined(plan, still, 'stitch-by-stitch');
        const front = pieceOfEdge(plan.edge);
        const back = pieceOfRound(worked.edgings.at(-1) as Round);
        // On a side without stitches the join begins at two corners at once.
        fc.pre(back.sides.every((count) => count > 0));
        const rings = inJoinOrder(front, back, plan.choices.start.side, begin);
        const skipped = skippedNames(rings.back, begin.skipped);
        const ahead = (ring: string[], name: string): number =>
          ring.slice(0, ring.indexOf(name)).filter((one) => !one.startsWith('T')).length;
        const joinedBacks = rings.back.filter((name) => !skipped.includes(name));
        const turns = (ring: string[]): string[] => ring.filter((name) => name.startsWith('T'));
        const late = turns(rings.front).map(
          (name, n) => ahead(joinedBacks, turns(rings.back)[n] as string) - ahead(rings.front, name),
        );
        const expected = front.corners.length > 0 ? late : [pairing.leftOver];
        expect(pairing.sides.map(({ drift }) => drift)).toEqual(expected);
        expect(pairing.clashes.map((clash) => clash.late)).toEqual(late.filter((by) => by !== 0));
        expect(pairing.clashes.map((clash) => `T${clash.frontCorner}`)).toEqual(
          turns(rings.front).filter((_, n) => late[n] !== 0),
        );
      }),
      many,
    );
  });

  it('is shifted as a whole by a join begun elsewhere on the back', () => {
    fc.assert(
      fc.property(smallJoins, fc.integer({ min: -9, max: 9 }), ({ plan, mishaps }, count) => {
        const kept = mishaps.filter(({ kind }) => kind !== 'join-offset' && kind !== 'join-chain-skipped');
        fc.pre(isThere(workOf(plan, kept)) && plan.foundation.corners.length > 0);
        const drifts = (also: Mishap[]): number[] =>
          joined(plan, [...kept, ...also], 'corner-to-corner').pairing.sides.map(({ drift }) => drift);
        expect(drifts([{ kind: 'join-offset', count }])).toEqual(drifts([]).map((drift) => drift - count));
      }),
      runs,
    );
  });
});

describe('a back that lacks a corner', () => {
  const lacking = corneredPanels({ sides: 5, stitches: 9, edgings: 1 }).chain((panel) => {
    const plan = planOf(panel);
    const k = plan.foundation.corners.length;
    const corner = fc.integer({ min: 0, max: k - 1 });
    return fc.record({
      plan: fc.constant(plan),
      forgotten: fc.uniqueArray(corner, { minLength: 1, maxLength: 2 }),
    });
  });

  it.each(manners)('never meets, and %s says how many corners it lacks', (manner) => {
    fc.assert(
      fc.property(lacking, ({ plan, forgotten }) => {
        const mishaps = forgotten.map(
          (corner): Mishap => ({ kind: 'corner-forgotten', round: 'edging', corner }),
        );
        const { pairing } = joined(plan, mishaps, manner);
        expect(pairing.verdict.kind).toBe('does-not-meet');
        expect(pairing.verdict.reasons[0]).toEqual({ code: 'corner-count', by: -forgotten.length });
        const alone = total(pairing.gaps.map(({ short, count }) => (short === 'front' ? count : -count)));
        expect(alone).toBe(pairing.leftOver);
      }),
      runs,
    );
  });

  it.each(manners)('never has another corner named than the one left out, laid %s', (manner) => {
    fc.assert(
      fc.property(lacking, ({ plan, forgotten: [corner = 0] }) => {
        fc.pre(plan.foundation.corners.length > 1);
        const { pairing } = joined(plan, [{ kind: 'corner-forgotten', round: 'edging', corner }], manner);
        const [finding] = pairing.findings;
        if (finding?.code !== 'corner-count') throw new Error('A corner too few is told first.');
        expect(finding.leftOut).toContain(corner);
        if (finding.leftOut.length > 1) {
          expect(finding.frontCorner).toBeUndefined();
          return;
        }
        expect(finding.frontCorner).toBe(plan.cornerFaces[corner]);
        // However much better another laying would fit, no other side is said to be off.
        for (const { frontSide, surplus } of pairing.sides)
          if (frontSide !== finding.frontCorner) expect(surplus).toBe(0);
        // Where the corner is lacking, one side of the back lies along both of the front.
        const k = plan.edge.sides.length;
        const told = pairing.sides.map(({ frontSide }) => frontSide);
        expect(told).toContain(finding.frontCorner);
        expect(told).not.toContain(((finding.frontCorner ?? -1) + 1) % k);
      }),
      runs,
    );
  });

  it('is pinned where the differences are least, where no count tells the corner', () => {
    fc.assert(
      fc.property(lacking, ({ plan, forgotten }) => {
        fc.pre(forgotten.length < plan.foundation.corners.length);
        const mishaps = forgotten.map(
          (corner): Mishap => ({ kind: 'corner-forgotten', round: 'edging', corner }),
        );
        const { pairing, worked, begin } = joined(plan, mishaps, 'corner-to-corner');
        const [finding] = pairing.findings;
        fc.pre(finding?.code === 'corner-count' && finding.leftOut.length !== 1);
        const front = pieceOfEdge(plan.edge);
        const back = pieceOfRound(worked.edgings.at(-1) as Round);
        const inSides = pairing.gaps.filter((gap) => gap.frontCorner === undefined);
        expect(total(inSides.map(({ count }) => count))).toBe(leastDifference(front, back, begin));
      }),
      runs,
    );
  });
});
