/** What the maker does on a photo: the line, the marks, looking over, and taking it back. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  afterCounting,
  alongOf,
  begun,
  type Counting,
  type CountingEvent,
  openStretch,
  savesNothing,
  setCount,
} from '../../../src/photo/counting.ts';

const done = (events: readonly CountingEvent[], from: Counting = begun()): Counting =>
  events.reduce(afterCounting, from);

const line: CountingEvent[] = [
  { type: 'ADD_POINT', at: { x: 0, y: 50 } },
  { type: 'ADD_POINT', at: { x: 600, y: 50 } },
];
const mark = (along: number): CountingEvent => ({ type: 'MARK', along, reach: 8 });
const unmark = (along: number): CountingEvent => ({ type: 'UNMARK', along, reach: 8 });
const three = [...line, mark(0), mark(20), mark(40)];
/** 60, 80 … 600. */
const rest = Array.from({ length: 28 }, (_, i) => 60 + 20 * i);
const proposed = done([...three, { type: 'PROPOSE', places: rest }]);
const placesOf = ({ now }: Counting): number[] => alongOf(now).map(Math.round);

describe('a tap', () => {
  test('marks, and the marks stand in the order of the line', () =>
    expect(placesOf(done([...line, mark(40), mark(0), mark(20)]))).toEqual([0, 20, 40]));

  test('beside a mark moves it; below it takes it away', () => {
    expect(placesOf(done([...three, mark(25)]))).toEqual([0, 25, 40]);
    expect(placesOf(done([...three, unmark(23)]))).toEqual([0, 40]);
  });

  test('on nothing changes nothing, so that there is nothing to undo', () => {
    const counting = done(three);
    expect(done([unmark(300)], counting)).toBe(counting);
    expect(done([mark(20)])).toEqual(begun());
  });
});

describe('the line', () => {
  test('is bent between the points that a new one lies between', () => {
    const { now } = done([
      ...line,
      { type: 'ADD_POINT', at: { x: 400, y: 80 } },
      { type: 'ADD_POINT', at: { x: 200, y: 20 } },
    ]);
    expect(now.through.map(({ x }) => x)).toEqual([0, 200, 400, 600]);
  });

  test('keeps its ends', () => {
    const counting = done(line);
    expect(done([{ type: 'REMOVE_POINT', point: 0 }], counting)).toBe(counting);
    expect(done([{ type: 'REMOVE_POINT', point: 1 }], counting)).toBe(counting);
  });

  test('takes no mark with it when it is bent', () => {
    const before = done(three);
    const { now } = done([{ type: 'ADD_POINT', at: { x: 300, y: 90 } }], before);
    expect(now.marks).toEqual(before.now.marks);
  });
});

describe('what is proposed', () => {
  test('is no mark before it was looked over, stretch by stretch, in order', () => {
    expect(setCount(proposed.now)).toBe(3);
    const counts = [];
    let counting = proposed;
    while (openStretch(counting.now)) {
      counting = done([{ type: 'LOOK_OVER' }], counting);
      counts.push(setCount(counting.now));
    }
    expect(counts).toEqual([13, 23, 31]);
  });

  test('is looked over in a stretch that stays while it is put right', () => {
    expect(openStretch(proposed.now)).toEqual({ from: 3, to: 12, open: 10, size: 10 });
    // The first is moved, the second taken away, one is added.
    const righted = done([mark(64), unmark(80), mark(90)], proposed);
    expect(openStretch(righted.now)).toEqual({ from: 3, to: 12, open: 8, size: 10 });
    expect(righted.now.righted).toBe(3);
    expect(placesOf(righted).slice(3, 6)).toEqual([64, 90, 100]);
  });

  test('is replaced by what is proposed next, and the marks stay', () => {
    const looked = done([{ type: 'LOOK_OVER' }, { type: 'PROPOSE', places: [265, 290] }], proposed);
    expect(placesOf(looked)).toEqual([0, 20, 40, ...rest.slice(0, 10), 265, 290]);
    expect(openStretch(looked.now)).toMatchObject({ open: 2 });
  });

  test('is taken away at once', () =>
    expect(placesOf(done([{ type: 'DROP_PROPOSED' }], proposed))).toEqual([0, 20, 40]));

  test('saves nothing where a stretch took as many taps as it has marks', () => {
    expect(savesNothing(9, 10)).toBe(false);
    expect(savesNothing(10, 10)).toBe(true);
    expect(savesNothing(0, 0)).toBe(false);
  });
});

describe('undo', () => {
  const place = fc.integer({ min: 0, max: 600 });
  const anything: fc.Arbitrary<CountingEvent> = fc.oneof(
    place.map(mark),
    place.map(unmark),
    fc
      .record({ x: place, y: fc.integer({ min: 20, max: 80 }) })
      .map((at) => ({ type: 'ADD_POINT', at }) as const),
    fc.constant({ type: 'PROPOSE', places: rest } as const),
    fc.constant({ type: 'LOOK_OVER' } as const),
    fc.constant({ type: 'DROP_PROPOSED' } as const),
  );

  test('takes back whatever was done, and redo does it again', () =>
    fc.assert(
      fc.property(fc.array(anything, { maxLength: 12 }), (events) => {
        const start = done(three);
        const end = done(events, start);
        const count = end.past.length - start.past.length;
        const undone = done(Array(count).fill({ type: 'UNDO' }), end);
        expect(undone.now).toBe(start.now);
        expect(done(Array(count).fill({ type: 'REDO' }), undone).now).toBe(end.now);
      }),
      { numRuns: 60 },
    ));
});
