/**
 * The foundation treble, move by move. Trebles finished stand to the right; the base chain of the last one
 * lies at its foot, and the new one grows out of it.
 */
import { halfPost, head, treblePost, vee } from './fabric.ts';
import { caught, drawnThrough, type Frame, still } from './frame.ts';
import { hookAt, type LoopSpec } from './loops.ts';
import { at, type Point } from './point.ts';
import { type Scene, STITCH, type Strand, type Tool } from './scene.ts';

const TOP = 108;
const BASE = 246;
const LAST = 266;
const NEW = LAST - STITCH;
/** The base chain lies a little ahead of the top. */
const AHEAD = 22;
const YARN = 'foundation' as const;

const baseX = (x: number): number => x - AHEAD;
const foot = (x: number): Point => at(head(baseX(x + STITCH), BASE)[0] + 4, BASE - 10);
const base = (x: number, over = false): Strand[] =>
  vee({ key: `base${x}`, x: baseX(x), y: BASE, yarn: YARN, z: over ? 62 : 22, ...(over && { marked: 'both' as const }) });
const top = (x: number): Strand[] => vee({ key: `top${x}`, x, y: TOP, yarn: YARN });
const post = (x: number): Strand[] => treblePost(`post${x}`, YARN, at(x, TOP + 4), foot(x));

const treble = (x: number, over = false): Strand[] => [...post(x), ...base(x, over), ...top(x)];

/** The trebles already made, the oldest first so that each newer V lies on the one before. */
const done = (last: number, over = false): Strand[] => [
  ...[3, 2, 1].flatMap((back) => treble(last + back * STITCH)),
  ...treble(last, over),
];

const BALL: readonly Point[] = [at(120, 66), at(50, 40), at(-20, 34)];
const FAR = at(-20, 34);
const AWAY: readonly Point[] = [...BALL].reverse();
const ballFrom = (...start: Point[]): Frame['yarn'] => ({ name: YARN, path: [...start, ...BALL] });

const topHead = head(LAST, TOP);
const baseHead = head(baseX(LAST), BASE);
const newBaseHead = head(baseX(NEW), BASE);
const middle = at(NEW + 4, TOP + 66);

const rest = (x: number): Tool => hookAt(at(x - 96, 62), -7);

const loop = (key: string, on: number, front: readonly Point[], back: readonly Point[]): LoopSpec => ({
  key,
  yarn: YARN,
  on,
  front,
  back,
});

/** Both strands of a loop from one place. */
const outOf = (key: string, on: number, [x, y]: Point): LoopSpec => loop(key, on, [at(x - 3, y + 4)], [at(x + 4, y - 4)]);

const finished = (x: number): Frame => ({
  hook: rest(x),
  work: done(x),
  loops: [outOf('live', 64, head(x, TOP))],
  yarn: ballFrom(head(x, TOP)),
});

const wrapped: Frame = {
  hook: rest(LAST),
  work: done(LAST),
  loops: [outOf('live', 64, topHead), loop('wrap', 38, [...AWAY.slice(0, 2), at(150, 100)], [topHead])],
  yarn: null,
};

const inserted: Frame = {
  hook: hookAt(at(211, 284), -87),
  work: done(LAST, true),
  loops: [outOf('live', 190, topHead), loop('wrap', 152, [...AWAY.slice(0, 2), at(150, 120)], [at(topHead[0], topHead[1] + 4)])],
  yarn: null,
};

const wrapAfter = (on: number, down: Point): LoopSpec => loop('wrap', on, [down, at(down[0] + 2, down[1] - 40)], [topHead]);

/** The yarn comes from the wrap, down behind the work. */
const insertedHeld: Frame = { ...inserted, loops: [outOf('live', 190, topHead), wrapAfter(152, baseHead)] };

const drawnUp: Frame = {
  hook: hookAt(at(128, 168), -32),
  work: done(LAST),
  loops: [outOf('live', 144, topHead), wrapAfter(98, baseHead), outOf('up', 50, baseHead)],
  yarn: ballFrom(baseHead),
};

const withBase = [...done(LAST), ...base(NEW)];

const chained: Frame = {
  hook: hookAt(at(112, 164), -27),
  work: withBase,
  loops: [outOf('live', 152, topHead), wrapAfter(104, baseHead), outOf('chained', 52, newBaseHead)],
  yarn: ballFrom(newBaseHead),
};

const lowerPost = (): Strand[] => halfPost(post(NEW));

const half: Frame = {
  hook: hookAt(at(116, 118), -17),
  work: [...withBase, ...lowerPost()],
  loops: [outOf('live', 120, topHead), outOf('half', 66, middle)],
  yarn: ballFrom(middle),
};

const through = (frame: Frame, held: Point, by: number): Scene[] => [
  caught(frame, YARN, [held], [FAR]),
  drawnThrough(frame, YARN, [held], [FAR], by),
];

export const TRIAL: Scene[] = [
  still(finished(LAST)),
  still(wrapped),
  still(inserted),
  caught(insertedHeld, YARN, [baseHead], [FAR]),
  drawnThrough(insertedHeld, YARN, [baseHead], [at(baseHead[0] - 8, baseHead[1] - 6), at(120, 180), FAR], 76),
  still(drawnUp),
  ...through(drawnUp, baseHead, 66),
  still(chained),
  ...through(chained, newBaseHead, 120),
  still(half),
  ...through(half, middle, 130),
  still(finished(NEW)),
];
