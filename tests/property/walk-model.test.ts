/** Next, back, jump, answer, undo, a full device and a crash in any order, against a model of a dozen lines. */
import fc from 'fast-check';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { buildScene } from '../../src/drawing/scene.ts';
import type { AppEvent, Snapshot } from '../../src/state/snapshot.ts';
import { stepDrawing } from '../../src/stitch/index.ts';
import type { Scene } from '../../src/table/draw-list.ts';
import { stepBar } from '../../src/walk/step-bar.ts';
import { flatten } from '../unit/panels-flatten.ts';
import { answerAll, type FailingDevice, failingDevice, smallPanel, Tab } from './walking-tab.ts';

type Asks = 'twist' | 'pad';
/** How long the making of a panel is, and where it asks. */
type Lay = { length: number; asks: [Asks, number][] };
type Work = { side: string; place: number; answered: Asks[] };
/** `kept` is what a crash comes back to. */
type Model = Work & { past: string[]; future: string[]; kept: Work };
type Real = { tab: Tab; device: FailingDevice };

/** Reads the lay of the panel; the model knows nothing else of the making. */
function layOf({ making: { steps } }: Snapshot): Lay {
  const asks: [Asks, number][] = [];
  for (let i = 0; i < steps.length; i++) {
    const step = steps.at(i);
    if (step.asks) asks.push([step.asks, i]);
  }
  return { length: steps.length, asks };
}

const askedAt = ({ place, answered }: Model, { asks }: Lay): Asks | undefined =>
  asks.find(([name, at]) => at === place && !answered.includes(name))?.[0];

/** A move never passes an open question; whoever stands beyond one may go back, not on. */
function move(model: Model, { asks, length }: Lay, wanted: number): void {
  const open = asks.find(([name]) => !model.answered.includes(name))?.[1] ?? length - 1;
  const within = Math.min(Math.max(0, wanted), length - 1);
  model.place = Math.min(within, Math.max(open, model.place));
}

const workOf = ({ project, place, answered }: Snapshot): Work => ({
  side: project.texts['side.0'] ?? '',
  place,
  answered: [...answered],
});

/** The words of the step bar. */
const wordsOf = (snapshot: Snapshot): string =>
  flatten(stepBar(snapshot, () => {}))
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');

/** Another panel may be shorter than where the work stood. */
function takeSide(model: Model, side: string, { tab }: Real): void {
  model.side = side;
  model.place = Math.min(model.place, tab.snapshot().making.steps.length - 1);
}

/** One act: what it does to the tab, and what it should have done. */
class Act implements fc.Command<Model, Real> {
  private readonly name: string;
  private readonly act: (model: Model, real: Real) => void;

  constructor(name: string, act: (model: Model, real: Real) => void) {
    this.name = name;
    this.act = act;
  }

  check = () => true;
  toString = () => this.name;

  run(model: Model, real: Real): void {
    this.act(model, real);
    if (!real.device.isFull)
      model.kept = { side: model.side, place: model.place, answered: [...model.answered] };
    const now = real.tab.snapshot();
    expect(workOf(now)).toEqual({ side: model.side, place: model.place, answered: model.answered });
    expect([now.canUndo, now.canRedo]).toEqual([model.past.length > 0, model.future.length > 0]);
    expect(wordsOf(now)).toContain(`${model.place + 1} of ${now.making.steps.length}`);
  }
}

const moves = (type: 'NEXT' | 'BACK', by: number) =>
  new Act(type, (model, { tab }) => {
    const lay = layOf(tab.snapshot());
    tab.send({ type });
    if (type === 'BACK' || !askedAt(model, lay)) move(model, lay, model.place + by);
  });

const jump = fc.nat(999).map(
  (thousandths) =>
    new Act(`JUMP to ${thousandths / 10} %`, (model, { tab }) => {
      const lay = layOf(tab.snapshot());
      const to = Math.floor((lay.length * thousandths) / 1000);
      tab.send({ type: 'JUMP', to });
      move(model, lay, to);
    }),
);

const answer = new Act('ANSWER', (model, { tab }) => {
  const lay = layOf(tab.snapshot());
  const asks = askedAt(model, lay);
  if (!asks) return;
  tab.send({ type: 'ANSWER', asks });
  model.answered = [...model.answered, asks];
  model.place += 1;
});

/** Another tab of the page in between, so that two typings are two. */
const type = fc.integer({ min: 4, max: 8 }).map(
  (side) =>
    new Act(`TYPE ${side}`, (model, real) => {
      real.tab.send({ type: 'TYPE', field: 'side.0', text: `${side}` }, { type: 'SHOW', tab: 'walk' });
      model.past.push(model.side);
      model.future = [];
      takeSide(model, `${side}`, real);
    }),
);

const undo = new Act('UNDO', (model, real) => {
  real.tab.send({ type: 'UNDO' });
  const last = model.past.pop();
  if (last === undefined) return;
  model.future.unshift(model.side);
  takeSide(model, last, real);
});

const redo = new Act('REDO', (model, real) => {
  real.tab.send({ type: 'REDO' });
  const next = model.future.shift();
  if (next === undefined) return;
  model.past.push(model.side);
  takeSide(model, next, real);
});

const crash = new Act('crash', (model, { tab }) => {
  tab.crash();
  Object.assign(model, { ...model.kept, answered: [...model.kept.answered], past: [], future: [] });
});

/** The device is full, or has room again; what was not kept is kept with the next act. */
const fill = new Act('fill', (_, { device }) => {
  device.isFull = true;
});
const clear = new Act('clear', (model, real) => {
  real.device.isFull = false;
  real.tab.send({ type: 'SHOW', tab: 'edge' }, { type: 'SHOW', tab: 'walk' });
  model.kept = { ...model };
});

const tabs: Tab[] = [];
afterEach(() => {
  vi.useRealTimers();
  for (const tab of tabs.splice(0)) tab.close();
});

function openTab(...events: AppEvent[]): Real {
  const device = failingDevice();
  const tab = new Tab(device);
  tabs.push(tab);
  tab.send(...smallPanel, ...events);
  return { device, tab };
}

/** A panel just typed and opened again, so that nothing is there to undo. */
function setUp(): { model: Model; real: Real } {
  const real = openTab();
  real.tab.crash();
  const work: Work = { side: '6', place: 0, answered: [] };
  return { model: { ...work, past: [], future: [], kept: { ...work } }, real };
}

test('any order of acts is followed by the app; a crash never loses more than the device refused', () => {
  const [next, back] = [moves('NEXT', 1), moves('BACK', -1)];
  const rare = [undo, redo, crash, fill, clear];
  // Moves are what hands do most.
  const acts = fc.commands(
    [
      ...[next, next, next, back, back, answer, answer, ...rare].map((one) => fc.constant(one)),
      jump,
      jump,
      type,
    ],
    { size: '+1', maxCommands: 60 },
  );
  fc.assert(
    fc.property(acts, (commands) => {
      try {
        fc.modelRun(setUp, commands);
      } finally {
        for (const tab of tabs.splice(0)) tab.close();
      }
    }),
    { numRuns: 100 },
  );
});

test('killed at 50 random moments, never more than the last tap is lost', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 50, maxLength: 50 }), (rounds) => {
      const { tab } = openTab(...answerAll);
      let place = 0;
      for (const taps of rounds) {
        for (let i = 0; i < taps; i++) tab.send({ type: 'NEXT' });
        place = Math.min(place + taps, tab.snapshot().making.steps.length - 1);
        tab.crash();
        expect(tab.snapshot().place).toBe(place);
      }
    }),
    { numRuns: 5 },
  );
});

describe('forwards, back and straight there', () => {
  /** Everything that a step shows, as text to be compared: state, words, picture, and the draw list with its marks. */
  function fingerprint(snapshot: Snapshot, scene: Scene): string {
    const { place, stage, step, answered, making, settings } = snapshot;
    const views = scene.views.map(({ id, centre, parts, labels, signs }) => ({
      id,
      centre,
      parts: parts.map(({ key, made, marks }) => [key, made, marks.count]),
      labels: labels.map(({ key, text, x, y }) => [key, text, x, y]),
      signs,
    }));
    const words = wordsOf(snapshot);
    const picture = flatten(stepDrawing(step, making, settings));
    return JSON.stringify({ place, stage, step, answered, words, picture, views });
  }

  test('come to the same: words, picture and drawing', () => {
    const { tab } = openTab(...answerAll);
    let scene: Scene | undefined;
    const shown = (event?: AppEvent): string => {
      if (event) tab.send(event);
      // Each scene is made from the one before it, as on the page.
      scene = buildScene({ ...tab.snapshot(), preview: false }, scene);
      return fingerprint(tab.snapshot(), scene);
    };
    const { length } = tab.snapshot().making.steps;
    const walked = [shown()];
    for (let place = 1; place < length; place++) walked.push(shown({ type: 'NEXT' }));
    expect(new Set(walked).size, 'no two steps show the same').toBe(length);
    // prev(next(s)) = s, at every step, met going back.
    for (let place = length - 2; place >= 0; place--)
      expect(shown({ type: 'BACK' }), `back at ${place}`).toBe(walked[place]);
    // jump(k) = next^k, from anywhere.
    fc.assert(
      fc.property(fc.nat(length - 1), (to) => {
        expect(shown({ type: 'JUMP', to }), `straight to ${to}`).toBe(walked[to]);
      }),
      { numRuns: 200 },
    );
  });
});

describe('a long rest', () => {
  test('of a night changes nothing, and a reload comes back to the same step with both answers', () => {
    vi.useFakeTimers();
    const { tab } = openTab(...answerAll, { type: 'JUMP', to: 1000 }, { type: 'BACK' });
    const before = tab.snapshot();
    vi.advanceTimersByTime(9 * 3_600_000);
    expect(tab.snapshot()).toBe(before);
    tab.crash();
    const after = tab.snapshot();
    expect([after.place, after.answered, after.stage]).toEqual([
      before.place,
      ['twist', 'pad'],
      before.stage,
    ]);
    // Answered once, a question does not bar the way again.
    tab.send({ type: 'JUMP', to: 0 }, { type: 'JUMP', to: 1000 });
    expect(tab.snapshot().stage).toBe('finished');
  });

  test('an open question is still open after a reload, and still bars the way', () => {
    const { tab } = openTab({ type: 'JUMP', to: 1000 });
    const { place, answered } = tab.snapshot();
    expect(answered).toEqual([]);
    tab.crash();
    tab.send({ type: 'NEXT' });
    expect(tab.snapshot()).toMatchObject({ place, answered: [] });
    expect(wordsOf(tab.snapshot())).toContain('Answer first');
  });

  test('playing stops by itself at a question and goes no further, however long it waits', () => {
    vi.useFakeTimers();
    const { tab } = openTab({ type: 'SETTLE', settings: { pace: 600 } }, { type: 'JUMP', to: 20 });
    const [first] = layOf(tab.snapshot()).asks;
    tab.send({ type: 'PLAY' });
    vi.advanceTimersByTime(60_000);
    expect(tab.snapshot()).toMatchObject({ place: first?.[1], playing: false });
    vi.advanceTimersByTime(60_000);
    expect(tab.snapshot().place).toBe(first?.[1]);
  });
});
