/** Makings for the drawing's tests, from the real core. */
import {
  type Choices,
  type Corner,
  type EdgeInput,
  type Manner,
  type Mishap,
  pair,
  planBack,
  type Result,
  readEdge,
  steps,
  work,
} from '../../core/index.ts';
import type { Making } from '../../src/state/snapshot.ts';

export const CHAINS: Corner = { made: 'chain', size: 2 };

/** 58 and 36 stitches, two chains a corner, 196 positions. */
export const RECTANGLE: EdgeInput = { sides: [58, 36, 58, 36], corner: CHAINS, counted: 'stitches-only' };

export function valueFrom<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

export type MakingOptions = {
  choices?: Choices;
  mishaps?: Mishap[];
  manner?: Manner;
  easing?: 'end' | 'spread';
};

export function makingOf(input: EdgeInput, options: MakingOptions = {}): Making {
  const { choices = {}, mishaps = [], manner = 'corner-to-corner', easing = 'end' } = options;
  const edge = valueFrom(readEdge(input));
  const plan = valueFrom(planBack(edge, choices));
  const worked = valueFrom(work(plan, mishaps));
  const last = worked.edgings.at(-1);
  const pairing = valueFrom(pair(edge, last, { start: worked.join, manner, easing }));
  return {
    edge,
    plan,
    mishaps,
    worked,
    pairing,
    steps: valueFrom(steps(plan, mishaps, { manner })),
    seen: {},
  };
}

/** One treble missed on the foundation of back side 3, as the person counts. */
export const ONE_SHORT: Mishap = { kind: 'stitch-missed', round: 'foundation', side: 2, place: 20 };
