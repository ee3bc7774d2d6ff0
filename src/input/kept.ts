/**
 * The work as it is kept on the device: one text, versioned. What an older or partial one lacks is as at the start;
 * what is no work at all, or a later version's, is not read.
 */
import * as v from 'valibot';
import { standardSettings } from '../state/project.ts';
import { type Settings, tabs } from '../state/snapshot.ts';
import type { Start } from '../state/store.ts';
import { readProject } from './project.ts';
import { settingsSchema } from './settings.ts';
import { placeSchema } from './text.ts';
import { type Marks, version, walkEdition } from './write-kept.ts';

const keptSchema = v.object({
  version: v.literal(version),
  stamp: v.fallback(
    v.optional(
      v.object({ tab: v.string(), count: v.number(), at: v.exactOptional(v.pipe(v.number(), v.finite())) }),
    ),
    undefined,
  ),
  panel: v.fallback(v.optional(v.pipe(v.string(), v.minLength(1), v.maxLength(100))), undefined),
  project: v.optional(v.unknown()),
  settings: v.optional(v.unknown()),
  tab: v.fallback(v.picklist(tabs), 'edge'),
  /** Which edition of the walk the place counts in. */
  walk: v.fallback(v.picklist([1, walkEdition]), 1),
  place: v.fallback(placeSchema, 0),
  answered: v.pipe(
    v.fallback(v.array(v.unknown()), []),
    v.transform((all) => (['twist', 'pad'] as const).filter((one) => all.includes(one))),
  ),
});

/** Work as it was kept, and which of the panels it is. */
export type Kept = Start & Marks;

/** The text is of a later version: not ours to write over. */
export const isNewerText = (text: string): boolean =>
  v.is(
    v.pipe(v.string(), v.parseJson(), v.object({ version: v.pipe(v.number(), v.gtValue(version)) })),
    text,
  );

/** What a text means, or null where it is no work that can be read. */
export function readKeptText(text: string, standard: Settings = standardSettings): Kept | null {
  const read = v.safeParse(v.pipe(v.string(), v.parseJson(), keptSchema), text);
  if (!read.success) return null;
  const { project, settings, tab, place, answered, stamp, panel } = read.output;
  return {
    ...(stamp && { stamp }),
    ...(panel && { panel }),
    project: readProject(project ?? {}),
    settings: v.parse(settingsSchema(standard), settings ?? {}),
    tab,
    place,
    ...(read.output.walk < walkEdition && { fewerSteps: true as const }),
    answered,
  };
}
