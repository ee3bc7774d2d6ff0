/** Pinning and sewing in the maker's own numbers. The walk and the place say the same. */
import type { Pin, SewingPlan } from '../../../core/index.ts';
import type { Units } from '../../state/snapshot.ts';
import { many, ordinal } from '../numbers.ts';
import { sayLength, sayLong } from './lengths.ts';

/** "the 41st stitch", "between the 40th and 41st stitch". */
export const sayPinStitch = ({ stitch, isBetween, kind }: Pin): string => {
  if (kind === 'corner') return 'the corner';
  if (!isBetween) return `the ${ordinal(stitch)} stitch`;
  return stitch === 0
    ? 'where the round begins'
    : `between the ${ordinal(stitch)} and ${ordinal(stitch + 1)} stitch`;
};

/** "20 cm from the corner: the 41st stitch". */
export const sayPin = (pin: Pin, units: Units, from: string): string =>
  pin.kind === 'corner'
    ? 'the corner'
    : `${sayLength(pin.distance, units)} from ${from}: ${sayPinStitch(pin)}`;

export const sayPinCount = (pins: readonly Pin[]): string => many(pins.length, 'pin');

/** "Out 40, back 40." */
export const sayPasses = ({ over }: SewingPlan, side: number): string =>
  `out over ${over.out[side]}, back over ${over.back[side]}`;

export const sayThread = ({ lengths, cut }: SewingPlan, working: number, units: Units): string =>
  `${many(2 * lengths, 'length')} of ${sayLength(working, units)}: ${many(lengths, 'length')} out and ${lengths} back, ${sayLong(cut, units)} in all.`;

export const MACHINE = 'By machine: straight stitch, just below the edging, slowly over the corners.';
