/** Holds an open stitch for the page: the machine, and the movement between two rests. */
import { createActor } from 'xstate';
import type { Step } from '../../core/index.ts';
import type { Told } from '../words/walk/telling.ts';
import { type StitchEvent, stitchMachine } from './machine.ts';
import type { StitchView } from './panel.ts';
import { variantOf } from './variant.ts';

/** What moves pictures: frames, a clock for them, and whether the person wants movement at all. */
export type Motion = {
  /** Runs once, soon; gives back how to call it off. */
  frame(run: (nowMs: number) => void): () => void;
  reduced(): boolean;
};

/** The browser's own. */
export const browserMotion = (): Motion => ({
  frame: (run) => {
    const id = requestAnimationFrame(run);
    return () => cancelAnimationFrame(id);
  },
  reduced: () => matchMedia('(prefers-reduced-motion: reduce)').matches,
});

/** Milliseconds of one move. Slower than a step on the table: here the movement itself is what is taught. */
export const MOVE_MS = 700;

export type Stitch = {
  /** What to show, or null while no stitch is open. */
  view(): StitchView | null;
  send(event: StitchEvent): void;
  /** Opens the stitch of a step; false where there is nothing inside it. */
  open(step: Step, making: Told): boolean;
  stop(): void;
};

/** `onChange` is called whenever the view is another. Nothing starts by itself: only NEXT moves. */
export function createStitch(onChange: () => void, motion: Motion = browserMotion()): Stitch {
  const actor = createActor(stitchMachine);
  let t = 1;
  let callOff = (): void => {};
  const rest = (): void => {
    callOff();
    t = 1;
  };
  const run = (): void => {
    let startMs: number | null = null;
    t = 0;
    const tick = (nowMs: number): void => {
      startMs ??= nowMs;
      t = Math.min(1, (nowMs - startMs) / MOVE_MS);
      if (t < 1) callOff = motion.frame(tick);
      onChange();
    };
    callOff = motion.frame(tick);
  };
  actor.start();
  const send = (event: StitchEvent): void => {
    const before = actor.getSnapshot().context.done;
    rest();
    actor.send(event);
    if (event.type === 'NEXT' && actor.getSnapshot().context.done > before && !motion.reduced()) run();
    onChange();
  };
  return {
    view: () => {
      const { variant, done, of } = actor.getSnapshot().context;
      return variant === null ? null : { variant, done, of, t };
    },
    send,
    open: (step, making) => {
      const variant = variantOf(step, making);
      if (variant !== null) send({ type: 'OPEN', variant });
      return variant !== null;
    },
    stop: () => {
      rest();
      actor.stop();
    },
  };
}
