/** What every sentence needs to know to speak the person's words. */
import type { Dialect, Hand, Units } from '../state/snapshot.ts';

export type Speech = {
  dialect: Dialect;
  hand: Hand;
  units: Units;
  /** The other dialect's word stands beside each of the person's own. */
  bothTerms?: boolean;
};
