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
import { version, walkEdition } from './write-kept.ts';

const keptSchema = v.object({
  version: v.literal(version),
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

/** What a text means, or null where it is no work that can be read. */
export function readKeptText(text: string, standard: Settings = standardSettings): Start | null {
  const read = v.safeParse(v.pipe(v.string(), v.parseJson(), keptSchema), text);
  if (!read.success) return null;
  const { project, settings, tab, place, answered } = read.output;
  return {
    project: readProject(project ?? {}),
    settings: v.parse(settingsSchema(standard), settings ?? {}),
    tab,
    place,
    ...(read.output.walk < walkEdition && { fewerSteps: true as const }),
    answered,
  };
}
