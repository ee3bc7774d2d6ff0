/**
 * Inside a stitch: the machine that steps through its moves. It rests after every move until it is told to go
 * on; pictures and captions are read off `variant` and `done`. No clock: the movement itself is the view's.
 */
import { assign, setup } from 'xstate';
import { movesOf } from './moves.ts';
import type { Variant } from './variant.ts';

export type StitchEvent =
  | { type: 'OPEN'; variant: Variant }
  | { type: 'NEXT' }
  | { type: 'BACK' }
  /** To the still after so many moves. */
  | { type: 'JUMP'; to: number }
  | { type: 'CLOSE' };

export type StitchContext = { variant: Variant | null; done: number; of: number };

const inside = (to: number, of: number): number =>
  Math.max(0, Math.min(of, Math.trunc(Number.isFinite(to) ? to : 0)));

export const stitchMachine = setup({
  types: { context: {} as StitchContext, events: {} as StitchEvent },
  guards: {
    noneMade: ({ context }) => context.done === 0,
    allMade: ({ context }) => context.done === context.of,
  },
  actions: {
    take: assign(({ event }) =>
      event.type === 'OPEN'
        ? { variant: event.variant, done: 0, of: movesOf(event.variant.kind).length }
        : {},
    ),
    makeOne: assign({ done: ({ context }) => inside(context.done + 1, context.of) }),
    undoOne: assign({ done: ({ context }) => inside(context.done - 1, context.of) }),
    jump: assign({
      done: ({ context, event }) => (event.type === 'JUMP' ? inside(event.to, context.of) : context.done),
    }),
    putAway: assign({ variant: null, done: 0, of: 0 }),
  },
}).createMachine({
  id: 'stitch',
  context: { variant: null, done: 0, of: 0 },
  initial: 'closed',
  on: { OPEN: { target: '.opened', actions: 'take' } },
  states: {
    closed: {},
    opened: {
      initial: 'placing',
      on: {
        JUMP: { target: '.placing', actions: 'jump' },
        CLOSE: { target: 'closed', actions: 'putAway' },
      },
      states: {
        placing: {
          always: [
            { guard: 'noneMade', target: 'before' },
            { guard: 'allMade', target: 'made' },
            { target: 'within' },
          ],
        },
        before: { on: { NEXT: { target: 'placing', actions: 'makeOne' } } },
        within: {
          on: {
            NEXT: { target: 'placing', actions: 'makeOne' },
            BACK: { target: 'placing', actions: 'undoOne' },
          },
        },
        made: { on: { BACK: { target: 'placing', actions: 'undoOne' } } },
      },
    },
  },
});
