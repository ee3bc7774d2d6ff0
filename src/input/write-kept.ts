/** The work as one text, as `kept.ts` reads it. Apart from it, for writing needs no schema. */
import type { Snapshot } from '../state/snapshot.ts';
import type { Start } from '../state/store.ts';

export const version = 1;

/** Goes up when the walk tells more steps, so that a place kept before is found again. */
export const walkEdition = 2;

/** Who kept it, the how manieth time, so that two tabs never write the same; and when its work was last changed. */
export type Stamp = { tab: string; count: number; at?: number };

/** What is kept beside the work: which of the panels it is, and its stamp. */
export type Marks = { stamp?: Stamp; panel?: string };

/** What there is to keep of a snapshot: what is only looked at leaves no trace. */
export function lasting({ project, settings, tab, place, answered, preview }: Snapshot): Start {
  const walk = preview ?? { place, answered };
  return { project, settings, tab, place: walk.place, answered: walk.answered };
}

export const writeStart = ({ fewerSteps, ...start }: Start, { stamp, panel }: Marks = {}): string =>
  JSON.stringify({ version, stamp, panel, walk: fewerSteps ? walkEdition - 1 : walkEdition, ...start });

export const writeKept = (snapshot: Snapshot, marks?: Marks): string => writeStart(lasting(snapshot), marks);
