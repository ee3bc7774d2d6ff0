/** What a search for causes carries along, found once and looked up from then on. */
import type { Candidate } from './candidate.ts';
import type { Touching } from './touch.ts';
import type { Trying } from './trying.ts';

export type Searching = {
  /** Causes a set may have at most, this time round. */
  size: number;
  /**
   * A corner followed around an edging hides what lies beyond it: with one, a single cause more is looked for, not two;
   * and none where fewer causes explain it.
   */
  followsBarred: boolean;
  trying: Trying;
  candidates: Candidate[];
  /** What each changes by itself; null where it changes the shape. */
  effects: (Int32Array | null)[];
  /** The sum of what each changes; 0 for nothing. */
  sums: Int32Array;
  /** Candidates by that sum. */
  bySum: Map<number, number[]>;
  touching: Touching;
  /** Candidates that can touch each spot by themselves. */
  bySpot: number[][];
  /** The most stitches by which any one cause can change a number, and the next most. */
  biggest: [number, number];
  /** Sides each can touch by itself, and beside a corner worked elsewhere, as bits. */
  ownSides: Int32Array;
  nearSides: Int32Array;
  /** And all that come after those. */
  onSides: Int32Array;
  /** Every candidate's index. */
  everyone: number[];
  /** Those that may be used at all, this time round; and of these, those that can meddle where there is room. */
  allowed: number[];
  meddlers: number[];
  /** Those that each candidate meddles with and that may stand beside it, this time round; found when asked for. */
  partners: (number[] | undefined)[];
  /** Whether two can stand in one set. */
  fits: (a: number, b: number) => boolean;
  meddlesFrom: (a: number, b: number) => number;
  meddlesWith: (a: number, b: number) => boolean;
  /** Candidates that give nothing of their own: the same mishap at another place of a roomy side. */
  shadows: Uint8Array;
  /** Causes that run all round the work: habits, errors in the plan, a corner followed by the later ones. */
  isWide: boolean[];
  wides: number[];
  /** Corners forgotten that the number of sides seen forbids. */
  isBarred: boolean[];
  /** Candidates all of whose sets are found already. */
  spent: Uint8Array;
  found: Map<string, number[]>;
};
