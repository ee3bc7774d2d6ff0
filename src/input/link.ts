/**
 * A panel in the fragment of an address: nothing of it reaches a server. Versioned, checked by a sum, and packed.
 *
 * Rule: a link is read whole or not at all. `#panel=`, the version, how it is packed, seven signs of the sum, the data.
 */
import * as v from 'valibot';
import type { Project, Settings, Tab } from '../state/snapshot.ts';
import { tabs } from '../state/snapshot.ts';
import { projectSchema } from './project.ts';
import { sumOf } from './sum.ts';
import { answeredSchema, placeSchema } from './text.ts';

export type Shared = Pick<Settings, 'dialect' | 'hand' | 'units'> & {
  project: Project;
  tab: Tab;
  place: number;
  answered: readonly ('twist' | 'pad')[];
};

/** `cut`: not whole, or changed on the way. `newer`: of a later version. `unreadable`: whole, and no panel. */
export type LinkProblem = 'cut' | 'newer' | 'unreadable';
export type ReadLink = { ok: true; shared: Shared } | { ok: false; why: LinkProblem };

export const linkMark = '#panel=';
const version = '1';
/** Packed as raw deflate, or as it is where the browser cannot pack. */
type Packing = 'z' | 'p';
/** No panel is longer than this as text; what unpacks to more is none. */
const longest = 200_000;
/** Nor is its link longer than that text in base64. */
const longestLink = linkMark.length + 20 + Math.ceil(longest / 3) * 4;
/** Taken at a time: deflate unpacks to a thousand times as much before it can be stopped. */
const slice = 1024;

/** What version 1 leaves out where it is so. Never changed: old links lean on it. */
const usual = {
  name: '',
  sideCount: 4,
  counted: 'stitches-only',
  cornerMade: 'chain',
  cornersDiffer: false,
  edgingCount: 1,
  choices: {},
  texts: {},
  mishaps: [],
  adjustments: [],
} as const satisfies Project;

const sharedSchema = v.object({
  p: v.pipe(
    v.record(v.string(), v.unknown()),
    v.transform((given) => ({ ...usual, ...given })),
    projectSchema,
  ),
  d: v.picklist(['uk', 'us']),
  h: v.picklist(['right', 'left']),
  u: v.picklist(['cm', 'inch']),
  t: v.picklist(tabs),
  w: v.optional(placeSchema, 0),
  a: v.optional(answeredSchema, []),
});

/** All that is sent, as plain data; what is usual is left out. */
export function plainOf({ project, tab, place, answered, ...shown }: Shared) {
  const differs = ([key, value]: [string, unknown]): boolean =>
    JSON.stringify(value) !== JSON.stringify((usual as Record<string, unknown>)[key]);
  return {
    p: Object.fromEntries(Object.entries(project).filter(differs)) as Partial<Project>,
    d: shown.dialect,
    h: shown.hand,
    u: shown.units,
    t: tab,
    ...(place > 0 && { w: place }),
    ...(answered.length > 0 && { a: answered }),
  };
}

/** What was sent, from plain data that may be anything; null where it is no panel. */
export function readPlain(plain: unknown): Shared | null {
  const read = v.safeParse(sharedSchema, plain);
  if (!read.success) return null;
  const { p, d, h, u, t, w, a } = read.output;
  // The schema's project holds what a `Project` must, part by part.
  return { project: p as Project, dialect: d, hand: h, units: u, tab: t, place: w, answered: a };
}

/** The fragment that stands for a panel, with its `#`. */
export async function writeLink(shared: Shared): Promise<string> {
  const text = JSON.stringify(plainOf(shared));
  const bytes = new TextEncoder().encode(text);
  const packed = await through(bytes, 'CompressionStream');
  const packing: Packing = packed ? 'z' : 'p';
  const data = toBase64Url(packed ?? bytes);
  return `${linkMark}${version}${packing}${sumOf(version + packing + data)}${data}`;
}

/** Null for a fragment that is no link of ours. */
export async function readLink(fragment: string): Promise<ReadLink | null> {
  if (fragment === '' || fragment === '#') return null;
  if (!fragment.startsWith(linkMark)) return linkMark.startsWith(fragment) ? refused('cut') : null;
  if (fragment.length > longestLink) return refused('unreadable');
  const [, given, packing, sum, data] = /^#panel=(\d+)([zp])([0-9a-z]{7})([\w-]*)$/.exec(fragment) ?? [];
  if (!given || !packing || !sum || data === undefined) return refused('cut');
  if (sumOf(given + packing + data) !== sum) return refused('cut');
  if (given !== version) return refused('newer');
  const text = await unpacked(data, packing as Packing);
  if (text === null) return refused('unreadable');
  const plain = v.safeParse(v.pipe(v.string(), v.parseJson()), text);
  const shared = plain.success ? readPlain(plain.output) : null;
  return shared ? { ok: true, shared } : refused('unreadable');
}

const refused = (why: LinkProblem): ReadLink => ({ ok: false, why });

async function unpacked(data: string, packing: Packing): Promise<string | null> {
  try {
    const bytes = fromBase64Url(data);
    const plain = packing === 'p' ? bytes : await through(bytes, 'DecompressionStream');
    return plain && new TextDecoder('utf-8', { fatal: true }).decode(plain);
  } catch {
    return null;
  }
}

/** Bytes packed or unpacked by the browser; null where it cannot, or where more comes out than any panel needs. */
async function through(
  bytes: Uint8Array,
  by: 'CompressionStream' | 'DecompressionStream',
): Promise<Uint8Array | null> {
  if (!(by in globalThis)) return null;
  const stream = inSlices(bytes).pipeThrough(new globalThis[by]('deflate-raw'));
  const pieces: Uint8Array[] = [];
  let length = 0;
  for (const reader = stream.getReader(); ; ) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > longest) {
      await reader.cancel();
      return null;
    }
    pieces.push(value);
  }
  const all = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

const inSlices = (bytes: Uint8Array): ReadableStream<BufferSource> => {
  let at = 0;
  return new ReadableStream({
    pull(controller) {
      if (at >= bytes.length) return controller.close();
      controller.enqueue(bytes.slice(at, at + slice));
      at += slice;
    },
  });
};

/** RFC 4648, section 5, without padding. */
const toBase64Url = (bytes: Uint8Array): string =>
  btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replaceAll('=', '');

const fromBase64Url = (data: string): Uint8Array =>
  Uint8Array.from(atob(data.replaceAll('-', '+').replaceAll('_', '/')), (sign) => sign.charCodeAt(0));
