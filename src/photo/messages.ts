/** What the photo's thread is asked and answers. All places are pixels of the photo as the thread holds it. */
import type { Point } from './line.ts';

export type Ask =
  | { kind: 'open'; photo: Blob }
  /** The straightened strip in colour, `half` pixels on each side of the line. */
  | { kind: 'strip'; through: readonly Point[]; half: number }
  | { kind: 'propose'; through: readonly Point[]; marks: readonly number[]; lookedTo: number };

export type Question = Ask & { id: number };

export type Answer =
  /** A smaller picture to look at; `width` and `height` are those of the photo in the thread. */
  | { kind: 'opened'; picture: ImageBitmap; width: number; height: number }
  /** The file is no picture that this browser reads. */
  | { kind: 'broken' }
  /** One column each `step` pixels, one row a pixel. */
  | { kind: 'strip'; picture: ImageBitmap; half: number; step: number }
  | { kind: 'progress'; done: number }
  /** `isAlike`: the places look like the marked ones; else they only go on evenly. */
  | { kind: 'proposed'; places: readonly number[]; isAlike: boolean };

export type Told = Answer & { id: number };
