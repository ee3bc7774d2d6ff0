/** The work as one text, as `kept.ts` reads it. Apart from it, for writing needs no schema. */
import type { Snapshot } from '../state/snapshot.ts';
import type { Start } from '../state/store.ts';

export const version = 1;

/** Goes up when the walk tells more steps, so that a place kept before is found again. */
export const walkEdition = 2;

/** Who kept it, and the how manieth time: two tabs never write the same. */
export type Stamp = { tab: string; count: number };

/** What there is to keep of a snapshot: what is only looked at leaves no trace. */
export function lasting({ project, settings, tab, place, answered, preview }: Snapshot): Start {
  const walk = preview ?? { place, answered };
  return { project, settings, tab, place: walk.place, answered: walk.answered };
}

export const writeKept = (snapshot: Snapshot, stamp?: Stamp): string =>
  JSON.stringify({ version, stamp, walk: walkEdition, ...lasting(snapshot) });
