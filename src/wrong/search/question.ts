/** What the search for causes is asked, and what it answers. Types and sizes only: the search itself is fetched apart. */
import type { Explained, Options, Plan, Seen, Stand } from '../../../core/index.ts';

export type Question = {
  plan: Plan;
  seen: Seen;
  looked: NonNullable<Options['looked']>;
  /** How far the piece is, where the person has said so. */
  stands?: Stand | undefined;
};

/** What one turn found. `causes`: the most causes in a set so far. */
export type Turn = { causes: number; explained: Explained };

/** Asks a question; gives back how to call it off. `tell` is called once a turn. */
export type Search = (question: Question, tell: (turn: Turn) => void) => () => void;

export const turnSizes = [1, 2, 3] as const;
export const lastTurn = turnSizes.length;
