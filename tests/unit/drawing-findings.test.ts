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
const texts = (view: SceneView) => view.labels.map(({ text }) => text);

describe('what is wrong on the whole panel', () => {
  it('rings a chain missed in the join once', () => {
    const view = wholeWith({ kind: 'join-chain-skipped', round: 'join', corner: 2 });
    expect(ofKind(view, 'ring')).toHaveLength(1);
  });

  it('draws a band along each side where all are off alike, and says what is off in the middle only', () => {
    const view = wholeWith({ kind: 'arms-forgotten', round: 'plan' });
    expect(ofKind(view, 'band')).toHaveLength(4);
    expect(ofKind(view, 'ring')).toHaveLength(0);
    expect(texts(view)).toContain('every side: 2 too long');
    expect(view.labels.filter(({ key }) => key.startsWith('off.'))).toEqual([]);
  });

  it('says where it happened, apart from where the gap is drawn, and only of what is known', () => {
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
        words: texts(wholeOf(scene)).includes('it happened here'),
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
