/** How far the making has come at a step: stitches made on each round and pairs joined. */
import type { Step } from '../../core/index.ts';

export type Progress = { foundation: number; edgings: (edging: number) => number; joined: number };

const ALL = Number.POSITIVE_INFINITY;

/** All made and joined: for looking ahead at what will meet, wherever the walk stands. */
export const EVERYTHING: Progress = { foundation: ALL, edgings: () => ALL, joined: ALL };

/** The state once this step is done. The front is there from the start. */
export function progressAt(step: Step): Progress {
  const { stage, edging, done } = step;
  const none = () => 0;
  const all = () => ALL;
  switch (stage) {
    case 'front':
      return { foundation: 0, edgings: none, joined: 0 };
    case 'foundation':
    case 'foundation-closing':
      return { foundation: done, edgings: none, joined: 0 };
    case 'edging':
    case 'edging-closing':
      return {
        foundation: ALL,
        edgings: (which) => (which < edging ? ALL : which > edging ? 0 : done),
        joined: 0,
      };
    case 'cloth':
      return { foundation: ALL, edgings: all, joined: 0 };
    case 'join':
    case 'join-closing':
      return { foundation: ALL, edgings: all, joined: done };
    case 'finished':
      // Where a side stays open the step says how many pairs are joined.
      return { foundation: ALL, edgings: all, joined: done > 0 ? done : ALL };
  }
}

/** What a part's marks are, so that `made` can be told and a place be named. */
export type Source =
  | { of: 'front'; first: number }
  | { of: 'foundation' | 'edging'; edging: number; first: number }
  /** Pairs in join order from `first`; `slots` as in the seam. */
  | { of: 'seam'; first: number; slots: readonly { slot: number; count: number }[] }
  /** Empty places, by slot. */
  | { of: 'gap'; slots: readonly number[] };

/** How many marks of a part are made. */
export function madeOf(source: Source, size: number, progress: Progress): number {
  const reached = (made: number, first: number) => Math.max(0, Math.min(size, made - first));
  switch (source.of) {
    case 'foundation':
      return reached(progress.foundation, source.first);
    case 'edging':
      return reached(progress.edgings(source.edging), source.first);
    case 'seam':
      return reached(progress.joined, source.first);
    default:
      return size;
  }
}
