import { describe, expect, test } from 'vitest';
import { createActor, type SnapshotFrom } from 'xstate';
import { getShortestPaths } from 'xstate/graph';
import { type StitchEvent, stitchMachine } from '../../src/stitch/machine.ts';
import { movesOf, STITCH_KINDS, type StitchKind } from '../../src/stitch/moves.ts';
import { createStitch, type Motion } from '../../src/stitch/stitch.ts';
import { plain } from '../../src/stitch/variant.ts';

type Shot = SnapshotFrom<typeof stitchMachine>;

const where = (shot: Shot): string => {
  const value = shot.value as string | { opened: string };
  return typeof value === 'string' ? value : `opened.${value.opened}`;
};

const eventsIn = (kind: StitchKind): StitchEvent[] => [
  { type: 'OPEN', variant: plain(kind) },
  { type: 'NEXT' },
  { type: 'BACK' },
  { type: 'JUMP', to: 0 },
  { type: 'JUMP', to: 1 },
  { type: 'JUMP', to: 99 },
  { type: 'CLOSE' },
];

/** A shortest way to every state: the events to send, and the state they must lead to. */
const ways = (kind: StitchKind): { events: StitchEvent[]; leadsTo: Shot }[] =>
  getShortestPaths(stitchMachine, {
    events: eventsIn(kind),
    serializeState: (shot) => `${where(shot)} ${shot.context.done}`,
  }).map(({ steps, state }) => ({
    // The first step of a path is the machine's own start.
    events: steps.map(({ event }) => event as StitchEvent).filter(({ type }) => !type.startsWith('xstate.')),
    leadsTo: state as Shot,
  }));

/** What must hold in every state: rest where the moves say, loops as they say. */
function holds(shot: Shot, kind: StitchKind): void {
  const { done, of, variant } = shot.context;
  if (where(shot) === 'closed') {
    expect([variant, done, of]).toEqual([null, 0, 0]);
    return;
  }
  const moves = movesOf(kind);
  expect(of).toBe(moves.length);
  const expected = done === 0 ? 'before' : done === of ? 'made' : 'within';
  expect(where(shot)).toBe(`opened.${expected}`);
}

describe.each(STITCH_KINDS)('inside %s', (kind) => {
  test('every state is reached, and every event in every state is answered', () => {
    const visited = new Set<string>();
    const taken = new Set<string>();
    for (const { events, leadsTo } of ways(kind)) {
      for (const event of eventsIn(kind)) {
        const actor = createActor(stitchMachine).start();
        for (const earlier of events) actor.send(earlier);
        const here = where(actor.getSnapshot());
        expect(here).toBe(where(leadsTo));
        holds(actor.getSnapshot(), kind);
        visited.add(`${here} ${actor.getSnapshot().context.done}`);
        actor.send(event);
        holds(actor.getSnapshot(), kind);
        taken.add(`${here} ${event.type} ${where(actor.getSnapshot())}`);
      }
    }
    // Closed, and a still for each number of moves made.
    expect(visited.size).toBe(movesOf(kind).length + 2);
    for (const state of ['before', 'made']) expect(taken).toContain(`opened.${state} CLOSE closed`);
    expect(taken).toContain('closed OPEN opened.before');
    if (movesOf(kind).length < 2) return;
    for (const [state, event, next] of [
      ['before', 'NEXT', 'within'],
      ['within', 'BACK', 'before'],
      ['within', 'NEXT', 'made'],
      ['made', 'BACK', 'within'],
      ['before', 'JUMP', 'made'],
      ['made', 'JUMP', 'before'],
      ['made', 'OPEN', 'before'],
      ['before', 'BACK', 'before'],
      ['made', 'NEXT', 'made'],
    ]) {
      expect(taken).toContain(`opened.${state} ${event} opened.${next}`);
    }
  });

  test('a jump is as many nexts, and back undoes next', () => {
    const of = movesOf(kind).length;
    for (let k = 0; k <= of; k++) {
      const [walked, jumped] = [createActor(stitchMachine).start(), createActor(stitchMachine).start()];
      for (const actor of [walked, jumped]) actor.send({ type: 'OPEN', variant: plain(kind) });
      for (let i = 0; i < k; i++) walked.send({ type: 'NEXT' });
      jumped.send({ type: 'JUMP', to: k });
      expect(jumped.getSnapshot().context).toEqual(walked.getSnapshot().context);
      expect(jumped.getSnapshot().value).toEqual(walked.getSnapshot().value);
      if (k === of) continue;
      jumped.send({ type: 'NEXT' });
      jumped.send({ type: 'BACK' });
      expect(jumped.getSnapshot().context).toEqual(walked.getSnapshot().context);
    }
  });
});

test('odd jumps end at the nearest still', () => {
  const actor = createActor(stitchMachine).start();
  actor.send({ type: 'OPEN', variant: plain('treble') });
  const after = (to: number): number => {
    actor.send({ type: 'JUMP', to });
    return actor.getSnapshot().context.done;
  };
  expect([after(-3), after(2.9), after(99), after(Number.NaN)]).toEqual([0, 2, 5, 0]);
});

describe('the movement', () => {
  /** Frames run by hand. */
  function motion(reduced: boolean): Motion & { run(nowMs: number): void; waiting(): number } {
    let waiting: ((nowMs: number) => void)[] = [];
    return {
      frame: (run) => {
        waiting.push(run);
        return () => {
          waiting = waiting.filter((one) => one !== run);
        };
      },
      reduced: () => reduced,
      run: (nowMs) => {
        const due = waiting;
        waiting = [];
        for (const run of due) run(nowMs);
      },
      waiting: () => waiting.length,
    };
  }

  test('only NEXT moves; the state is final when the movement starts, and then it rests', () => {
    const hand = motion(false);
    const stitch = createStitch(() => {}, hand);
    stitch.send({ type: 'OPEN', variant: plain('chain') });
    expect([stitch.view()?.t, hand.waiting()]).toEqual([1, 0]);
    stitch.send({ type: 'NEXT' });
    expect([stitch.view()?.done, stitch.view()?.t]).toEqual([1, 0]);
    hand.run(1000);
    hand.run(1350);
    expect(stitch.view()?.t).toBeCloseTo(0.5);
    hand.run(1700);
    expect([stitch.view()?.t, hand.waiting()]).toEqual([1, 0]);
    stitch.send({ type: 'BACK' });
    expect([stitch.view()?.done, stitch.view()?.t, hand.waiting()]).toEqual([0, 1, 0]);
  });

  test('going on during a movement ends it at once', () => {
    const hand = motion(false);
    const stitch = createStitch(() => {}, hand);
    stitch.send({ type: 'OPEN', variant: plain('treble') });
    stitch.send({ type: 'NEXT' });
    stitch.send({ type: 'NEXT' });
    expect([stitch.view()?.done, hand.waiting()]).toEqual([2, 1]);
    stitch.send({ type: 'CLOSE' });
    expect([stitch.view(), hand.waiting()]).toEqual([null, 0]);
  });

  test('with reduced motion nothing moves', () => {
    const hand = motion(true);
    const stitch = createStitch(() => {}, hand);
    stitch.send({ type: 'OPEN', variant: plain('treble') });
    stitch.send({ type: 'NEXT' });
    expect([stitch.view()?.done, stitch.view()?.t, hand.waiting()]).toEqual([1, 1, 0]);
  });
});
