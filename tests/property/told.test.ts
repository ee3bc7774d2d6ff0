/**
 * Whoever speaks of what does not meet says the same: the card, the list, the voice, the summary, the drawing and
 * the saved picture. What they say is checked against the counts of both pieces, and never goes beyond them.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SideMeeting } from '../../core/index.ts';
import { mod } from '../../core/whole.ts';
import { buildScene } from '../../src/drawing/scene.ts';
import { sayChange } from '../../src/page/say-change.ts';
import { screenSummary } from '../../src/page/screen-summary.ts';
import { example, standardSettings } from '../../src/state/project.ts';
import type { Making, Snapshot } from '../../src/state/snapshot.ts';
import { openStore } from '../../src/state/store.ts';
import { sayCause, sayFinding, sayVerdict } from '../../src/words/verdict.ts';
import { anyMishap, planOf } from './explain-panels.ts';

const chains = { made: 'chain', size: 2 } as const;

/** A panel and what a hand did, laid both ways. */
const cases = fc.array(fc.integer({ min: 12, max: 80 }), { minLength: 3, maxLength: 8 }).chain((sides) =>
  fc.record({
    sides: fc.constant(sides),
    mishaps: fc.array(anyMishap(planOf(sides, chains)), { minLength: 1, maxLength: 2 }),
    manner: fc.constantFrom('corner-to-corner' as const, 'stitch-by-stitch' as const),
    easing: fc.constantFrom('end' as const, 'spread' as const),
  }),
);

type Case = typeof cases extends fc.Arbitrary<infer One> ? One : never;

/** The app as it stands before and after the mishaps. */
function shown({ sides, mishaps, manner, easing }: Case): { before: Snapshot; now: Snapshot } {
  const texts = Object.fromEntries(sides.map((count, side) => [`side.${side}`, `${count}`]));
  const store = openStore({
    project: {
      ...example,
      counted: 'stitches-only',
      sideCount: sides.length,
      texts: { ...texts, corner: '2' },
    },
    settings: { ...standardSettings, manner, easing },
    tab: 'edge',
    place: 0,
    answered: [],
  });
  const before = store.snapshot();
  store.send({ type: 'CHANGE', project: { mishaps } });
  const now = store.snapshot();
  store.stop();
  return { before, now };
}

const sentences = ({ making, settings }: Snapshot) => {
  const { head, body } = sayVerdict(making, settings);
  const list = making.pairing.findings.map((finding) => sayFinding(finding, making.edge.sides.length));
  return { head, body, list };
};

const wordsDrawn = (snapshot: Snapshot) =>
  buildScene({ ...snapshot, preview: true }).views.flatMap(({ labels }) => labels);

/** Every side that a text calls off, with the number it says. */
function sidesTold(text: string): [side: number, surplus: number][] {
  const told = text.matchAll(/side (\d+)(?: is|:) (\d+) (?:stitch(?:es)? )?(short|too long)/g);
  return [...told].map(([, side, off, way]) => [Number(side) - 1, Number(off) * (way === 'short' ? -1 : 1)]);
}

/** What the counts say of a side of the back, read off the sides themselves. */
const surplusOf = ({ pairing }: Making, backSide: number) =>
  pairing.sides.find((side) => side.backSide === backSide)?.surplus;

const runs = { numRuns: 400 };

describe('what is told of two rounds', () => {
  test('is the same wherever it is told', () => {
    fc.assert(
      fc.property(cases, (one) => {
        const { before, now } = shown(one);
        fc.pre(now.problems.length === 0);
        const { head, body, list } = sentences(now);
        const first = sayCause(now.making.pairing.findings, now.making.edge.sides.length);
        const drawn = wordsDrawn(now).map(({ text }) => text);
        expect(screenSummary(now)).toContain([head, body].filter(Boolean).join(' '));
        expect(drawn).toContain(sayVerdict(now.making, now.settings).count);
        if (!first) expect(now.making.pairing.verdict.kind).toBe('meets');
        else {
          expect(head).toBe(first.says);
          if (first.place !== 'every side') expect(head).toBe(list[0]?.says);
          expect(sayChange(before, now)).toBe(`${head} ${body}`);
          expect(drawn).toContain(`${first.place}: ${first.off}`);
        }
      }),
      runs,
    );
  });

  test('names the sides that the counts find off, by as much as they find, and no other', () => {
    fc.assert(
      fc.property(cases, (one) => {
        const { now } = shown(one);
        fc.pre(now.problems.length === 0);
        const { head, body, list } = sentences(now);
        const { making } = now;
        const texts = [head, body, screenSummary(now), ...list.map(({ says, more }) => `${says} ${more}`)];
        for (const [side, surplus] of texts.flatMap(sidesTold)) expect(surplusOf(making, side)).toBe(surplus);
        const isOff = ({ front, back, surplus }: SideMeeting) => surplus !== 0 && front !== back;
        const off = making.pairing.sides.filter(isOff).map(({ backSide }) => backSide);
        // Where both counts are the same, only the join took two with one: no side is called short or long.
        const taken = making.pairing.sides.filter((side) => side.surplus !== 0 && !isOff(side));
        for (const { frontSide } of taken)
          expect(list.map(({ says }) => says).join(' ')).toMatch(
            making.edge.sides.length === 1
              ? /Along the join, 2 of/
              : `Along front side ${frontSide + 1}, 2 of the`,
          );
        const told = list.flatMap(({ says, more }) => sidesTold(`${says} ${more}`)).map(([side]) => side);
        expect(told.sort()).toEqual(off.sort());
        // Beside the sides on the drawing stands the same.
        const plates = wordsDrawn(now).filter(({ key }) => /^off\.\d+$/.test(key));
        for (const { key, text } of plates) {
          const front = Number(key.split('.')[1]);
          const side = making.pairing.sides.find(({ frontSide }) => frontSide === front);
          if (!side || !isOff(side)) continue;
          const { surplus } = side;
          expect(text).toBe(`${Math.abs(surplus)} ${surplus < 0 ? 'short' : 'too long'}`);
        }
      }),
      runs,
    );
  });

  test('says of a corner only what makes the sides beside it come out', () => {
    fc.assert(
      fc.property(cases, (one) => {
        const { making } = shown(one).now;
        const k = making.edge.sides.length;
        for (const finding of making.pairing.findings) {
          if (finding.code !== 'corner-moved') continue;
          const late = new Map(finding.corners.map(({ backCorner, by }) => [backCorner, by]));
          for (const { backSide } of finding.sides) {
            const moved = (late.get(backSide) ?? 0) - (late.get(mod(backSide - 1, k)) ?? 0);
            expect(moved).toBe(surplusOf(making, backSide));
          }
        }
      }),
      runs,
    );
  });

  test('never names a stitch, for a count does not', () => {
    fc.assert(
      fc.property(cases, (one) => {
        const { before, now } = shown(one);
        const { head, body, list } = sentences(now);
        const texts = [
          head,
          body,
          sayChange(before, now),
          ...list.map(({ says, more }) => `${says} ${more}`),
        ];
        for (const text of texts)
          expect(text).not.toMatch(/stitch \d|\dth stitch|first stitch|last stitch|after stitch/);
      }),
      runs,
    );
  });

  test('grades each verdict by its own half of the scale', () => {
    const halves = {
      meets: [],
      'meets-with-easing': ['eases-in', 'shows'],
      'does-not-meet': ['puckers', 'cannot-join'],
    };
    fc.assert(
      fc.property(cases, (one) => {
        const { making, settings } = shown(one).now;
        const { severity } = sayVerdict(making, settings);
        const { verdict, findings } = making.pairing;
        if (findings.some(({ code }) => code === 'last-hole')) expect(severity).toBeUndefined();
        else if (verdict.kind === 'meets') expect(severity).toBeUndefined();
        else expect(halves[verdict.kind]).toContain(severity);
      }),
      runs,
    );
  });
});
