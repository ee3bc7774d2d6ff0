import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createActor } from 'xstate';
import { getShortestPaths } from 'xstate/graph';
import { type EdgeInput, planBack, readEdge, type Steps, steps } from '../../../core/index.ts';
import { type MakingEvent, makingMachine, makingStates, stateOf } from '../../../src/making/machine.ts';
import { backward, forward, furthest, placeToldLater, questionsOf } from '../../../src/making/moving.ts';

function stepsFor(input: EdgeInput): Steps {
  const edge = readEdge(input);
  if (!edge.ok) throw new Error(JSON.stringify(edge.problems));
  const plan = planBack(edge.value);
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  const made = steps(plan.value);
  return made;
}

const small = stepsFor({ sides: [6, 6, 6, 6], corner: { made: 'chain', size: 2 }, counted: 'stitches-only' });

function start(of: Steps, place = 0, answered: ('twist' | 'pad')[] = []) {
  const actor = createActor(makingMachine, { input: { steps: of, place, answered } });
  actor.start();
  return {
    send: (event: MakingEvent) => actor.send(event),
    place: () => actor.getSnapshot().context.place,
    path: () => {
      const { value } = actor.getSnapshot();
      return typeof value === 'string' ? value : Object.entries(value).map(([a, b]) => `${a}.${b}`)[0];
    },
    answered: () => actor.getSnapshot().context.answered,
  };
}

const leaves = Object.entries(makingStates).flatMap(([parent, children]) =>
  children.length > 0 ? children.map((child) => `${parent}.${child}`) : [parent],
);

test('a place kept when fewer steps were told is found again at the same act', () => {
  const later = ['fasten-off', 'tape-ends', 'lay-strip', 'sew-fast', 'pins-out', 'take-loop'];
  const told = Array.from({ length: small.length }, (_, i) => small.at(i));
  const before = told.filter(({ kind }) => !later.includes(kind));
  expect(told.length - before.length).toBe(8);
  before.forEach(({ index }, place) => {
    expect(placeToldLater(small, place)).toBe(index);
  });
});

describe('the making', () => {
  test('stands in the state that its step belongs to, at every step', () => {
    const walk = start(small, 0, ['twist', 'pad']);
    const visited = new Set<string>();
    for (let place = 0; place < small.length; place++) {
      expect(walk.place()).toBe(place);
      expect(walk.path()).toBe(stateOf(small.at(place)));
      visited.add(walk.path() as string);
      walk.send({ type: 'NEXT' });
    }
    expect([...visited].sort()).toEqual([...leaves].sort());
    expect(walk.path()).toBe('finished');
  });

  test('a jump equals as many single steps, and back undoes next', () => {
    fc.assert(
      fc.property(fc.nat(small.length - 1), fc.subarray(['twist', 'pad'] as const), (k, answered) => {
        const jumped = start(small, 0, answered);
        jumped.send({ type: 'JUMP', to: k });
        const stepped = start(small, 0, answered);
        for (let i = 0; i < k; i++) stepped.send({ type: 'NEXT' });
        expect([jumped.place(), jumped.path()]).toEqual([stepped.place(), stepped.path()]);
        const before = jumped.place();
        jumped.send({ type: 'NEXT' });
        if (jumped.place() > before) jumped.send({ type: 'BACK' });
        expect(jumped.place()).toBe(before);
      }),
      { numRuns: 400 },
    );
  });

  test('no event leads past a question without an answer', () => {
    const [twist, pad] = questionsOf(small);
    expect([twist?.asks, pad?.asks]).toEqual(['twist', 'pad']);
    const walk = start(small);
    walk.send({ type: 'JUMP', to: small.length });
    expect(walk.place()).toBe(twist?.at);
    expect(walk.path()).toBe('foundationClosing.untwisted');
    for (const by of ['stitch', 'marker', 'corner', 'side', 'round'] as const) {
      walk.send({ type: 'NEXT', by });
      expect(walk.place()).toBe(twist?.at);
    }
    walk.send({ type: 'ANSWER', asks: 'pad' });
    expect(walk.answered()).toEqual([]);
    walk.send({ type: 'ANSWER', asks: 'twist' });
    expect(walk.place()).toBe((twist?.at ?? 0) + 1);
    walk.send({ type: 'JUMP', to: small.length });
    expect(walk.path()).toBe('join.pad');
    walk.send({ type: 'ANSWER', asks: 'pad' });
    walk.send({ type: 'JUMP', to: small.length });
    expect(walk.path()).toBe('finished');
  });

  test('every jump by marker, corner, side and round stops where one begins, forwards and back', () => {
    for (const by of ['marker', 'corner', 'side', 'round'] as const)
      for (let place = 0; place < small.length; place++) {
        const ahead = Math.min(forward(small, place, by), small.length - 1);
        expect(ahead).toBeGreaterThan(place - (place === small.length - 1 ? 1 : 0));
        const behind = Math.max(0, backward(small, place, by));
        if (place > 0) expect(behind).toBeLessThan(place);
        const there = small.at(ahead);
        if (by === 'corner' && ahead < small.length - 1)
          expect(there.corner >= 0 || (there.side < 0 && there.corner < 0) || there.place <= 0).toBe(true);
      }
  });

  test('the first marker of a long side is its tenth stitch, and the jump back returns to it', () => {
    const long = stepsFor({
      sides: [46, 32, 46, 32],
      corner: { made: 'chain', size: 2 },
      counted: 'stitches-only',
    });
    const first = forward(long, 0, 'marker');
    expect(long.at(first)).toMatchObject({ stage: 'front', place: 9, marker: true });
    expect(backward(long, first + 4, 'marker')).toBe(first);
    expect(backward(long, first + 15, 'marker')).toBe(first + 10);
  });

  test('another panel is taken up at the same place, as far as it reaches', () => {
    const walk = start(small, 0, ['twist', 'pad']);
    walk.send({ type: 'JUMP', to: small.length - 1 });
    const smaller = stepsFor({
      sides: [4, 4, 4],
      corner: { made: 'chain', size: 1 },
      counted: 'stitches-only',
    });
    walk.send({ type: 'TAKE', steps: smaller });
    expect(walk.place()).toBe(smaller.length - 1);
    expect(walk.path()).toBe('finished');
  });

  test('furthest is the end once all is answered', () => {
    expect(furthest(small, questionsOf(small), ['twist', 'pad'])).toBe(small.length - 1);
  });
});

describe('the making as a model', () => {
  const tiny = stepsFor({ sides: [3, 3, 3], corner: { made: 'chain', size: 1 }, counted: 'stitches-only' });

  test('shortest paths reach every state, and replaying each ends in its state', () => {
    const events: MakingEvent[] = [
      { type: 'NEXT' },
      { type: 'BACK' },
      { type: 'ANSWER', asks: 'twist' },
      { type: 'ANSWER', asks: 'pad' },
    ];
    const paths = getShortestPaths(makingMachine, {
      input: { steps: tiny, place: 0, answered: [] },
      events,
      serializeState: ({ context }) => `${context.place} ${context.answered.join()}`,
      limit: 20_000,
    });
    const reached = new Set<string>();
    for (const path of paths) {
      const walk = start(tiny);
      for (const { event } of path.steps)
        if ((event as { type: string }).type !== 'xstate.init') walk.send(event as MakingEvent);
      expect(walk.place()).toBe(path.state.context.place);
      reached.add(stateOf(tiny.at(path.state.context.place)));
      expect(walk.path()).toBe(stateOf(tiny.at(walk.place())));
    }
    expect([...reached].sort()).toEqual([...leaves].sort());
  });
});
