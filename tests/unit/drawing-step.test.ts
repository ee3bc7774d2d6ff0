import { describe, expect, it } from 'vitest';
import { buildScene, spotToPosition } from '../../src/drawing/scene.ts';
import { closeOf, inputOf, makingOf, ONE_SHORT, RECTANGLE, sceneOf, wholeOf } from './drawing-making.ts';

describe('a step', () => {
  const making = makingOf(RECTANGLE, { mishaps: [ONE_SHORT] });
  const stages = new Map(making.steps.stretches.toReversed().map(({ stage, from }) => [stage, from]));

  it('leaves every typed array of the whole panel as it is, and changes `made` of two parts at most', {
    timeout: 30_000,
  }, () => {
    let scene = sceneOf(making, 0);
    for (let place = 1; place < making.steps.length; place++) {
      const next = buildScene(inputOf(making, place), scene);
      const changed = wholeOf(next).parts.filter((part, i) => {
        const old = wholeOf(scene).parts[i]!;
        expect(part.key).toBe(old.key);
        expect(part.revision).toBe(old.revision);
        expect(part.marks).toBe(old.marks);
        expect(part.ribbons).toBe(old.ribbons);
        return part !== old;
      });
      const jump = making.steps.at(place).stage !== making.steps.at(place - 1).stage;
      if (!jump) expect(changed.length).toBeLessThanOrEqual(2);
      scene = next;
    }
  });

  it('keeps the close-up while the hook stays within a block', () => {
    const from = (stages.get('edging') ?? 0) + 10;
    let scene = sceneOf(making, from);
    let rebuilt = 0;
    for (let place = from + 1; place < from + 100; place++) {
      const next = buildScene(inputOf(making, place), scene);
      const same = closeOf(next).parts.every((part, i) => part.marks === closeOf(scene).parts[i]?.marks);
      if (!same) rebuilt++;
      expect(closeOf(next).centre!.x).not.toBe(closeOf(scene).centre!.x);
      scene = next;
    }
    expect(rebuilt).toBeGreaterThan(0);
    expect(rebuilt).toBeLessThanOrEqual(3);
  });

  it('has made exactly what the step says', () => {
    const made = (place: number, name: string) =>
      wholeOf(sceneOf(making, place))
        .parts.filter(({ key }) => key.startsWith(name) && !key.endsWith('.gaps'))
        .reduce((sum, part) => sum + part.made, 0);
    for (const [stage, from] of stages) {
      const place = Math.min(from + 7, making.steps.length - 1);
      const step = making.steps.at(place);
      if (step.stage === 'foundation') expect(made(place, 'foundation.')).toBe(step.done);
      if (step.stage === 'edging') expect(made(place, 'edging0.')).toBe(step.done);
      if (step.stage === 'join') expect(made(place, 'bars.')).toBe(step.done);
      if (stage === 'finished') expect(made(from, 'bars.')).toBe(making.pairing.pairs);
      expect(made(place, 'front.')).toBe(196);
    }
  });

  it('frames the place at hand and no other, in each view', () => {
    for (let place = 0; place < making.steps.length; place += 3) {
      const scene = sceneOf(making, place);
      const { stage } = making.steps.at(place);
      for (const view of scene.views) {
        const frames = view.signs.filter(({ kind }) => kind === 'frame').length;
        if (stage === 'front' || stage === 'foundation' || stage === 'edging')
          expect(frames, `${view.id} at ${place}`).toBe(1);
        else expect(frames, `${view.id} at ${place}`).toBeLessThanOrEqual(1);
      }
    }
  });

  it('joins the bar of the pair at hand', () => {
    for (const node of [10, 60, 150]) {
      const place = making.steps.stepOf('join', node);
      const scene = sceneOf(making, place);
      const made = wholeOf(scene).parts.find(({ key, made: count, marks }) => {
        return key.startsWith('bars.') && count > 0 && count < marks.count;
      })!;
      const last = spotToPosition(scene, { view: 'whole', part: made.key, index: made.made - 1 });
      expect(last).toEqual({ round: 'front', edging: 0, node });
    }
  });

  it('rebuilds what another making changes, and says so by the revision', () => {
    const before = sceneOf(makingOf(RECTANGLE), 10);
    const after = buildScene(inputOf(making, 10), before);
    const changed = wholeOf(after).parts.filter((part) => {
      const old = wholeOf(before).parts.find(({ key }) => key === part.key);
      expect(part.marks === old?.marks).toBe(part.revision === old?.revision);
      return part.revision !== old?.revision;
    });
    expect(changed.map(({ key }) => key)).toEqual(expect.arrayContaining(['front.2', 'edging0.2']));
  });
});
