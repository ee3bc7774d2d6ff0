/**
 * Panels as one file: readable JSON of our own, versioned, with a sum by which a change is noticed.
 *
 * Rule: a panel is read whole or not at all. A file that was changed by hand is read all the same, and says so.
 */
import * as v from 'valibot';
import type { Project } from '../state/snapshot.ts';
import type { Start } from '../state/store.ts';
import { fileFormat, fileVersion, looseFileSchema, panelSchema } from './file-schema.ts';
import { projectSchema } from './project.ts';
import { sumOf } from './sum.ts';
import { answeredSchema, placeSchema } from './text.ts';
import { version as keptVersion, walkEdition } from './write-kept.ts';

/** A panel, and where its walk stands. How it is shown is the person's, and in no file. */
export type Panel = Pick<Start, 'project' | 'place' | 'fewerSteps' | 'answered'>;

/**
 * `huge`: longer than any file of ours. `no-json`: no text that can be taken apart. `strange`: well-formed, and not
 * ours. `newer`: of a later version. `damaged`: ours, and not one panel in it can be read.
 */
export type FileProblem = 'huge' | 'no-json' | 'strange' | 'newer' | 'damaged';

/** `as-saved`: the sum fits. `changed`: it does not. `unsummed`: an earlier format without one. */
type FileTrust = 'as-saved' | 'changed' | 'unsummed';

/** `unread`: how many panels of it are damaged, and left out. */
export type ReadFile =
  | { ok: true; panels: Panel[]; unread: number; trust: FileTrust }
  | { ok: false; why: FileProblem };

/** Bytes, and signs: some thousand panels. */
export const longestFile = 8_000_000;

type Written = { saved: string; panels: readonly unknown[] };

const sumOfFile = ({ saved, panels }: Written): string => sumOf(JSON.stringify([saved, panels]));

/** @param saved the day, `YYYY-MM-DD` */
export function writeFile(panels: readonly Panel[], saved: string): string {
  const written = panels.map(
    ({ project: { name, adjustments, ...project }, place, answered, fewerSteps }) => ({
      name,
      ...project,
      adjustments: adjustments.map(({ asked: _, ...act }) => act),
      walk: { edition: fewerSteps ? walkEdition - 1 : walkEdition, place, answered },
    }),
  );
  const sum = sumOfFile({ saved, panels: written });
  const file = { format: fileFormat, version: fileVersion, saved, sum, panels: written };
  return `${JSON.stringify(file, null, 2)}\n`;
}

const refused = (why: FileProblem): ReadFile => ({ ok: false, why });

export function readFile(text: string): ReadFile {
  if (text.length > longestFile) return refused('huge');
  const parsed = v.safeParse(v.pipe(v.string(), v.parseJson()), text.replace(/^\ufeff/, ''));
  if (!parsed.success) return refused('no-json');
  const head = v.safeParse(v.object({ format: v.optional(v.unknown()), version: v.number() }), parsed.output);
  if (!head.success) return refused('strange');
  const { format, version } = head.output;
  if (format === undefined) return readKeptFile(parsed.output, version);
  if (format !== fileFormat) return refused('strange');
  if (version > fileVersion) return refused('newer');
  return readPanels(parsed.output);
}

function readPanels(value: unknown): ReadFile {
  const file = v.safeParse(looseFileSchema, value);
  if (!file.success) return refused('damaged');
  const read = file.output.panels.map((panel) => v.safeParse(panelSchema, panel));
  const panels = read.flatMap((one) => (one.success ? [panelOf(one.output)] : []));
  if (panels.length === 0) return refused('damaged');
  const unread = read.length - panels.length;
  const isAsSaved = unread === 0 && sumOfFile(file.output) === file.output.sum;
  return { ok: true, panels, unread, trust: isAsSaved ? 'as-saved' : 'changed' };
}

function panelOf({ walk, ...project }: v.InferOutput<typeof panelSchema>): Panel {
  const { edition, place, answered } = walk;
  // The schema's project holds what a `Project` must, part by part.
  return {
    project: project as Project,
    place,
    ...(edition < walkEdition && { fewerSteps: true as const }),
    answered,
  };
}

const keptFileSchema = v.object({
  project: projectSchema,
  walk: v.fallback(v.picklist([1, walkEdition]), 1),
  place: v.optional(placeSchema, 0),
  answered: v.optional(answeredSchema, []),
});

/** Work that was set aside was handed out as it was kept. */
function readKeptFile(value: unknown, version: number): ReadFile {
  if (version > keptVersion) return refused('newer');
  const kept = v.safeParse(keptFileSchema, value);
  if (version !== keptVersion || !kept.success) return refused('strange');
  const { project, walk, place, answered } = kept.output;
  const fewer = walk < walkEdition && { fewerSteps: true as const };
  const panel = { project: project as Project, place, ...fewer, answered };
  return { ok: true, panels: [panel], unread: 0, trust: 'unsummed' };
}
