/**
 * What can be wrong with what was given, as codes: the sentences are made where words live.
 * Indices and counts in params are as in the model: sides, corners and rounds count from 0.
 */
import type { ActRound } from './types.ts';

type None = Record<string, never>;

/** Every code, and the values its sentence needs. */
export type ProblemParams = {
  empty: None;
  'not-a-number': { like: number };
  'not-whole': { like: number };
  'too-low': { min: number };
  'too-high': { max: number };
  between: { min: number; max: number };

  /** The count must be `min` or more, for it takes in `taken` positions of the corners. */
  'corners-take-all': { min: number; taken: number };
  'corner-count': { corners: number };
  'no-corners': None;

  'corner-must-match': { corner: number; size: number };
  /** `fitting`: how many of the `rounds` asked for would leave a stitch. */
  'no-foundation-stitch': {
    stitches: number;
    growth: number;
    rounds: number;
    fitting: number;
    cornered: boolean;
  };
  'increase-with-corners': None;
  'increase-too-big': { adds: number; to: number; max: number };
  'start-side-too-short': None;
  'lead-too-long': { max: number };

  mishaps: { max: number };
  'mishap-sum': { max: number };
  'mishap-kind': { mishap: number };
  'mishap-round': { mishap: number; rounds: readonly ActRound[] };
  'mishap-edging': { mishap: number };
  'mishap-side': { mishap: number; sides: number };
  'mishap-corner': { mishap: number; corners: number };
  'mishap-place': { mishap: number };
  'mishap-count': { mishap: number };
  'mishap-end': { mishap: number };

  'back-empty': None;

  'printed-side': { round: number; given: number; printed: number };
  'printed-total': { round: number; given: number; printed: number };
  'rounds-named': { named: number; printed: number; of: 'sides' | 'totals' };
  'printed-rounds': { of: 'sides' | 'totals'; max: number };
  'first-uneven': { total: number; sides: number };
};

/** Problems with codes of a table; all of them, or those of one code. */
export type ProblemOf<Table, Code extends keyof Table = keyof Table> = {
  [C in Code]: {
    /** Path of the value, like `sides[2]` or `choices.start.lead`. */
    at: string;
    code: C;
    params: Table[C];
  };
}[Code];

export type Problem = ProblemOf<ProblemParams>;

/** What every function answers that takes a person's numbers. All problems come at once. */
export type Result<T, P = Problem> = { ok: true; value: T } | { ok: false; problems: P[] };

export const fail = <P = Problem>(problems: P[]): { ok: false; problems: P[] } => ({ ok: false, problems });
export const done = <T>(value: T): { ok: true; value: T } => ({ ok: true, value });
