/** A stretch of the walk as pictures on one canvas, made by the rooms that draw. */
import type { Snapshot } from '../../state/snapshot.ts';

/** px. 720p. */
export const clipSize = { width: 1280, height: 720 } as const;

type Frames = {
  canvas: HTMLCanvasElement;
  /** Paints a step of the walk, with what is to be done burnt in. @param step index into the steps */
  paint(step: number): void;
};

export type DrawClip = (snapshot: Snapshot) => Frames;

/** Steps `from` to `to`, both shown, each for `seconds`. `onStep`: how many are done; a later press may stop it. */
export type Wanted = {
  frames: Frames;
  from: number;
  to: number;
  seconds: number;
  onStep(done: number): void;
  stop: AbortSignal;
};
export type Clip = { data: Blob; ending: 'mp4' | 'webm' | 'zip' };
