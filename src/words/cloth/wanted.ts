/** From a wanted size to counts. */
import type { Candidate, Note, PadRule } from '../../../core/index.ts';
import type { Dialect, Units } from '../../state/snapshot.ts';
import { many, manyOf } from '../numbers.ts';
import { sayLength, sayOff, saySize } from './lengths.ts';

export const WANTED = {
  heading: 'Not made yet? From a size to counts',
  from: 'What do you start from?',
  fromSize: 'a size',
  swatch: 'Work a swatch and count a stretch of it.',
  needs: 'What does the pattern need?',
  parity: 'Odd or even',
  any: 'any count',
  odd: 'odd',
  even: 'even',
  take: 'Take the nearest as my counts',
  taken: 'They replace the counts in Your edge, stitches only. Undo brings yours back.',
} as const;

export const sayFromPad = (pad: string): string => `a ${pad} I have`;

/** `sides`: 0 for a round. */
export const askSize = (sides: number): string => {
  if (sides === 0) return "How large is the front's last round to be, across?";
  return sides === 4
    ? "How wide is the front's last round to be?"
    : "How long is each side of the front's last round to be?";
};

export const askPad = (pad: string, isRound: boolean): string =>
  `How large is the ${pad}${isRound ? ', across' : ''}?`;

/** Why no count can be told. */
export const sayNoCount = (problems: readonly Note[]): string =>
  problems.some(({ code }) => code === 'parity-never')
    ? 'No count can be both: choose another multiple, or any count.'
    : 'That leaves no front: check the size wanted.';

const smaller: Record<PadRule, boolean> = { usual: true, full: true, same: false };

/** What the front comes to for a pad, by the rule chosen there. */
export const sayWanted = (
  { width, height, isRound }: { width: number; height: number; isRound: boolean },
  units: Units,
): string => (isRound ? `${sayLength(width, units)} across` : saySize(width, height, units));

export const sayFrontForPad = (size: string, by: string, rule: PadRule): string =>
  smaller[rule] ? `The front is to be ${size}: ${by} smaller.` : `The front is to be ${size}, as large.`;

/** Sides of which the same is wanted. */
export const sideGroup = (sides: readonly number[], all: number): string =>
  all === 1 ? 'all round' : sides.length === all ? 'each side' : `sides ${sides.join(' and ')}`;

/** "54 stitches, the nearest". */
export const sayCandidate = ({ front }: Candidate, isNearest: boolean): { count: string; rank: string } => ({
  count: many(front, 'stitch', 'stitches'),
  rank: isNearest ? ', the nearest' : '',
});

/** "41 cm, +0.3 cm. On the strip 52 foundation trebles." */
export function sayCandidateSize({ length, off, strip }: Candidate, units: Units, dialect: Dialect): string {
  const differs = sayOff(off, units);
  return `${sayLength(length, units)}${differs && `, ${differs}`}. On the strip ${manyOf(strip, 'foundation-treble', dialect)}.`;
}
