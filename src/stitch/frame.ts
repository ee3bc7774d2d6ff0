/**
 * A frame: the hook, the loops on it and the work behind. Moves are runs of frames, and the last frame of a
 * move is the first of the next, so that forwards and back show the same stills.
 */
import { caughtIn, drawnBack, type LoopSpec, loopOn, type WorkingYarn, Z } from './loops.ts';
import type { Point } from './point.ts';
import type { Item, Scene, Strand, Tool, YarnName } from './scene.ts';

export type Frame = {
  hook: Tool;
  /** Work, marks, and all that is no loop. */
  work: readonly Item[];
  loops: readonly LoopSpec[];
  /** The working yarn from the work to the ball; null where a loop's own strand runs on to it. */
  yarn: { name: YarnName; path: readonly Point[] } | null;
};

/** The frame as a picture. */
export const still = ({ hook, work, loops, yarn }: Frame): Scene => [
  ...work,
  ...(yarn === null ? [] : [ballStrand(yarn.name, yarn.path)]),
  hook,
  ...loops.flatMap((loop) => loopOn(hook, loop)),
];

const ballStrand = (yarn: YarnName, points: readonly Point[]): Strand => ({
  what: 'strand',
  key: 'ball',
  points,
  yarn,
  z: Z.behind,
});

/** The yarn is laid round the hook and lies in its throat. */
export const caught = (frame: Frame, yarn: WorkingYarn): Scene => [
  ...frame.work,
  frame.hook,
  ...frame.loops.flatMap((loop) => loopOn(frame.hook, loop)),
  ...caughtIn(frame.hook, yarn),
];

/** The hook has drawn the yarn back through its first loops (or the work), which still lie where they lay. */
export function drawnThrough(frame: Frame, yarn: WorkingYarn, by: number): Scene {
  const hook = drawnBack(frame.hook, by);
  return [
    ...frame.work,
    hook,
    ...frame.loops.flatMap((loop) => loopOn(frame.hook, loop)),
    ...caughtIn(hook, yarn),
  ];
}

/** A stitch's pictures: the start, and for each move the pictures it runs through, the last one staying. */
export type MoveScenes = { start: Scene; moves: readonly (readonly Scene[])[] };

/** The still after so many moves. */
export const sceneAfter = ({ start, moves }: MoveScenes, done: number): Scene =>
  done <= 0 ? start : (moves[Math.min(done, moves.length) - 1]?.at(-1) ?? start);
