/** What is wrong, as signs and words on the whole panel: each told once, where it is. */
import { describe, expect, it } from 'vitest';
import type { Mishap } from '../../core/index.ts';
import { describePosition } from '../../src/drawing/describe.ts';
import { example, standardSettings } from '../../src/state/project.ts';
import { openStore } from '../../src/state/store.ts';
import { Look, type SceneView, type Sign } from '../../src/table/draw-list.ts';
import { makingOf, RECTANGLE, sceneOf, wholeOf } from './drawing-making.ts';

const wholeWith = (...mishaps: Mishap[]): SceneView => wholeOf(sceneOf(makingOf(RECTANGLE, { mishaps })));
const ofKind = (view: SceneView, kind: Sign['kind']) => view.signs.filter((sign) => sign.kind === kind);
type Ringed = Extract<Sign, { kind: 'ring' }>;
const texts = (view: SceneView) => view.labels.map(({ text }) => text);

describe('what is wrong on the whole panel', () => {
  it('rings a chain missed in the join once', () => {
    const view = wholeWith({ kind: 'join-chain-skipped', round: 'join', corner: 2 });
    expect(ofKind(view, 'ring')).toHaveLength(1);
  });

  it('rings the last hole where the join began, with no arrow upon the ring', () => {
    const arrows = (view: SceneView) => ofKind(view, 'arrow').map(({ key }) => key);
    expect(arrows(wholeWith())).toContain('start.join');
    const open = wholeWith({ kind: 'last-hole', round: 'join' });
    expect(ofKind(open, 'ring')).toHaveLength(1);
    expect(arrows(open)).toEqual(['start.back']);
  });

  const rings = (view: SceneView) =>
    view.signs.flatMap((sign) => (sign.kind === 'ring' && !sign.key.startsWith('happened') ? [sign] : []));
  const late = (count: number): Mishap => ({ kind: 'corner-moved', corner: 1, count, then: 'from-total' });
  const begun = (count: number): Mishap => ({ kind: 'join-offset', round: 'join', count });

  it.each([
    ['a corner two late', late(2)],
    ['a corner nine early', late(-9)],
    ['a join begun two late', begun(2)],
    ['a chain missed in the join', { kind: 'join-chain-skipped', round: 'join', corner: 2 } as Mishap],
  ])('lays no ring on another at any zoom: %s', (_, mishap) => {
    const all = rings(wholeWith(mishap));
    for (let px = 0.5; px < 90; px *= 1.1) {
      const shown = all.filter(({ minPx = 0, maxPx = Infinity }) => px >= minPx && px <= maxPx);
      expect(shown.length).toBeGreaterThan(0);
      shown.forEach((one, i) => {
        for (const other of shown.slice(i + 1))
          expect(Math.hypot(one.x - other.x, one.y - other.y) * px).toBeGreaterThan(one.px + other.px);
      });
    }
  });

  it('tells both counts of the sides beside a late corner, from a phone on', () => {
    const making = makingOf(RECTANGLE, { mishaps: [late(2)] });
    const off = making.pairing.sides.filter(({ surplus }) => surplus !== 0);
    expect(off).toHaveLength(2);
    const { labels } = wholeOf(sceneOf(making));
    for (let px = 2.5; px < 40; px *= 1.1) {
      const shown = labels.filter(({ minPx = 0, maxPx = Infinity }) => px >= minPx && px <= maxPx);
      for (const { frontSide: side } of off) {
        const said = (piece: string) => shown.find(({ key }) => key.startsWith(`${piece}.${side}`))?.text;
        expect([said('front'), said('back')], `side ${side + 1} at ${px}`).toEqual([
          expect.stringMatching(/front/),
          expect.stringMatching(/back/),
        ]);
      }
    }
  });

  it('points from where a corner should be the way it went', () => {
    for (const count of [-3, 3]) {
      const all = rings(wholeWith(late(count)));
      const [front, back, both] = ['front', 'back', 'both'].map(
        (which) => all.find(({ key }) => key.endsWith(`.${which}`))!,
      ) as [Ringed, Ringed, Ringed];
      const [dx, dy] = [back.x - front.x, back.y - front.y];
      expect(dx * Math.cos(both.towards!) + dy * Math.sin(both.towards!)).toBeGreaterThan(0);
    }
  });

  it('points from where the join should begin the way it went', () => {
    const [two, minusTwo] = [2, -2].map(
      (count) => rings(wholeWith(begun(count))).find(({ towards }) => towards !== undefined)!,
    );
    // On the upper side the join runs to the left.
    expect(Math.cos(two!.towards!)).toBeCloseTo(-1, 1);
    expect(Math.cos(minusTwo!.towards!)).toBeCloseTo(1, 1);
  });

  it('draws a band along each side where all are off alike, and says what is off in the middle only', () => {
    const view = wholeWith({ kind: 'arms-forgotten', round: 'plan' });
    expect(ofKind(view, 'band')).toHaveLength(4);
    expect(ofKind(view, 'ring')).toHaveLength(0);
    expect(texts(view)).toContain('every side: 2 too long');
    expect(view.labels.filter(({ key }) => key.startsWith('off.'))).toEqual([]);
  });

  it('says where what happened, apart from where the gap is drawn, and only of what is known', () => {
    const missed: Mishap = { kind: 'stitch-missed', round: 'foundation', side: 2, place: 20 };
    const making = makingOf(RECTANGLE, { mishaps: [missed] });
    const of = (known?: number) => {
      const scene = sceneOf(known === undefined ? making : { ...making, known });
      const node = making.worked.foundation.marks[0]!.node;
      const said = describePosition(
        known === undefined ? making : { ...making, known },
        { round: 'foundation', edging: 0, node },
        standardSettings,
      );
      return {
        words: texts(wholeOf(scene)).includes('A stitch missed'),
        rings: ofKind(wholeOf(scene), 'ring').filter(({ key }) => key.startsWith('happened')).length,
        // The walk's close-up at the place.
        looks: scene.views
          .flatMap(({ parts }) => parts.flatMap(({ marks }) => [...marks.look]))
          .includes(Look.mishap),
        told: said?.lines.includes('Made otherwise than the recipe asks.'),
      };
    };
    expect(of()).toEqual({ words: true, rings: 1, looks: true, told: true });
    expect(of(0)).toEqual({ words: false, rings: 0, looks: false, told: false });
  });

  it('takes no place for known that only a typed count asks for', () => {
    const store = openStore({
      project: { ...example, texts: { ...example.texts, 'worked.edging.0.2': '61' } },
      settings: standardSettings,
      tab: 'edge',
      place: 0,
      answered: [],
    });
    const { making } = store.snapshot();
    store.stop();
    expect(making.acts.length).toBeGreaterThan(0);
    expect(making.known).toBe(0);
  });

  it('tells the side of a back that lacks a corner between the two of the front it lies along', () => {
    const view = wholeWith({ kind: 'corner-forgotten', round: 'foundation', corner: 1 });
    expect(texts(view)).toContain('back corner 2: left out');
    expect(texts(view)).toContain('back 2 \u00b7 92 along both');
    // Beside a count of the front there is no count of the back that it does not meet.
    expect(texts(view)).not.toContain('back 2 \u00b7 92');
    const [band] = ofKind(view, 'band');
    const [plain] = ofKind(wholeWith({ kind: 'stitch-missed', round: 'edging', side: 2, place: 5 }), 'band');
    const lengthOf = (sign?: Sign) => {
      const points = sign?.kind === 'band' ? sign.points : new Float32Array();
      const last = points.length - 2;
      return Math.hypot(points[last]! - points[0]!, points[last + 1]! - points[1]!);
    };
    expect(lengthOf(band)).toBeGreaterThan(lengthOf(plain));
  });

  it('sets the two counts of a side beside each other where the side lies above or below', () => {
    const { labels } = wholeWith({ kind: 'stitch-missed', round: 'edging', side: 2, place: 5 });
    const [front, back] = ['front 3 \u00b7 58', 'back 3 \u00b7 57'].map((text) =>
      labels.find((label) => label.text === text),
    );
    expect(front?.dy).toBe(back?.dy);
    expect(front?.dx).toBeLessThan(back?.dx ?? 0);
  });
});
