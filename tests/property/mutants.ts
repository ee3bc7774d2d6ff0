/**
 * Links and files that something happened to, by a seeded draw, and what may come of reading one: a refusal by name, or
 * a correct panel. Correct is what was sent or saved; or, where the reader says that it was changed or a changed one
 * was summed anew, a panel that the published schema accepts and that is kept without a change from then on.
 */
import { Ajv, type ValidateFunction } from 'ajv';
import { type Panel, type ReadFile, readFile, writeFile } from '../../src/input/file.ts';
import type { ReadLink, Shared } from '../../src/input/link.ts';
import { sumOf } from '../../src/input/sum.ts';
import { fileJsonSchema } from '../schema/file-schema.ts';

export type Draw = (below: number) => number;

/** The minimal standard generator: Park and Miller, Communications of the ACM 31 (1988) 1192–1201. */
export function drawFrom(seed: number): Draw {
  let drawn = (seed % 2147483646) + 1;
  return (below) => {
    drawn = (drawn * 48271) % 2147483647;
    return drawn % below;
  };
}

export const savedOn = '2026-03-01';

let compiled: ValidateFunction | undefined;
/** Whether the published schema accepts a file's value. */
export function isPublished(value: unknown): boolean {
  // The format `date` is for people: what checks it is a package more.
  compiled ??= new Ajv({ formats: { date: /^\d{4}-\d{2}-\d{2}$/ } }).compile(fileJsonSchema());
  return compiled(value);
}

const signs =
  '{}[]",:0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ-_=#.\\ \n\u0000\u202e\ud83e';

/** One to three changes as they happen on the way: signs changed, lost, added, doubled; cut; two places swapped. */
export function mangled(text: string, draw: Draw): string {
  let changed = text;
  for (let count = 1 + draw(3); count > 0; count--) {
    const at = draw(Math.max(1, changed.length));
    const sign = signs.charAt(draw(signs.length));
    const [before, after] = [changed.slice(0, at), changed.slice(at)];
    const acts = [
      () => before + sign + after.slice(1),
      () => before + after.slice(1 + draw(4)),
      () => before + sign + after,
      () => before + after.slice(0, draw(40)) + after,
      () => before,
      () => after,
      () => before + after.replace(/\d/, `${draw(10)}`),
    ];
    changed = (acts[draw(acts.length)] as () => string)();
  }
  return changed;
}

const odd: readonly unknown[] = [
  null,
  true,
  '',
  '64',
  'x'.repeat(300),
  -1,
  0,
  1,
  2,
  25,
  1.5,
  1e300,
  Number.MAX_SAFE_INTEGER,
  [],
  {},
  [[]],
  [null],
  { __proto__: null, constructor: {} },
  { kind: 'twisted' },
  { at: 'join', side: 24 },
];
const oddKeys = ['__proto__', 'constructor', 'side.24', 'side.x', 'toString', 'kind', 'count', 'texts', ''];

/** The value with something odd at a random place in it: another value, a key more, one fewer, one renamed. */
export function twisted(value: unknown, draw: Draw): unknown {
  if (typeof value !== 'object' || value === null || draw(6) === 0) return odd[draw(odd.length)];
  if (Array.isArray(value)) {
    if (value.length === 0 || draw(5) === 0) return [...value, value[0] ?? odd[draw(odd.length)]];
    const at = draw(value.length);
    return value.flatMap((one, i) => (i !== at ? [one] : draw(8) === 0 ? [] : [twisted(one, draw)]));
  }
  const entries = Object.entries(value);
  const at = draw(entries.length + 1);
  const key = oddKeys[draw(oddKeys.length)] as string;
  if (at === entries.length) return ownEntries([...entries, [key, odd[draw(odd.length)]]]);
  return ownEntries(
    entries.flatMap(([name, one], i): [string, unknown][] => {
      if (i !== at) return [[name, one]];
      const way = draw(8);
      return way === 0 ? [] : way === 1 ? [[key, one]] : [[name, twisted(one, draw)]];
    }),
  );
}

/** `__proto__` as a key like any other, as parsed JSON has it. */
function ownEntries(entries: [string, unknown][]): object {
  const made = {};
  for (const [key, value] of entries)
    Object.defineProperty(made, key, { value, enumerable: true, configurable: true, writable: true });
  return made;
}

type FileValue = { saved: unknown; panels: unknown; sum: string };

/** A file's text with its content twisted, and summed anew: as one who means harm would do it. */
export function twistedFile(text: string, draw: Draw): string {
  const changed = twisted(JSON.parse(text), draw) as FileValue | null;
  if (typeof changed !== 'object' || changed === null) return JSON.stringify(changed) ?? '';
  const summed =
    draw(2) === 0 ? { ...changed, sum: sumOf(JSON.stringify([changed.saved, changed.panels])) } : changed;
  return JSON.stringify(summed);
}

/** A link that is not packed, with its content twisted, and summed anew. */
export function twistedLink({ shared, text }: { shared: Shared; text: string }, draw: Draw): string {
  const { project, tab, place, answered, dialect, hand, units } = shared;
  const plain = { p: project, d: dialect, h: hand, u: units, t: tab, w: place, a: answered };
  const data = Buffer.from(JSON.stringify(twisted(plain, draw)) ?? text).toString('base64url');
  return `#panel=1p${sumOf(`1p${data}`)}${data}`;
}

const fileRefusals: readonly string[] = ['huge', 'no-json', 'strange', 'newer', 'damaged'];
const linkRefusals: readonly string[] = ['cut', 'newer', 'unreadable'];

const alike = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/** Why the panels are not correct, or null: saved anew they are what the schema publishes, and read back the same. */
function flaw(panels: readonly Panel[]): string | null {
  const text = writeFile(panels, savedOn);
  if (!isPublished(JSON.parse(text))) return 'saved anew, the published schema refuses it';
  const again = readFile(text);
  if (!again.ok || again.trust !== 'as-saved') return 'saved anew, it is not read as saved';
  return alike(again.panels, panels) ? null : 'saved anew, it is another';
}

/** What is wrong with what came of a file's text, or null. `given`: what was saved; null where it was summed anew. */
export function fileFault(read: ReadFile, given: readonly Panel[] | null): string | null {
  if (!read.ok) return fileRefusals.includes(read.why) ? null : `refused without a name: ${read.why}`;
  if (read.trust === 'as-saved' && given !== null)
    return alike(read.panels, given) ? null : 'read as saved, and another';
  return flaw(read.panels);
}

/** What is wrong with what came of a link, or null. */
export function linkFault(read: ReadLink | null, given: Shared | null): string | null {
  // No fragment of ours at all: the own work is shown.
  if (read === null) return null;
  if (!read.ok) return linkRefusals.includes(read.why) ? null : `refused without a name: ${read.why}`;
  if (given !== null) return alike(inOrder(read.shared), inOrder(given)) ? null : 'read, and another';
  const { project, place, answered } = read.shared;
  return flaw([{ project, place, answered }]);
}

/** The same keys in the same order: a link leaves out what is usual. */
const inOrder = (value: unknown): unknown => {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return Array.isArray(value) ? value.map(inOrder) : value;
  return Object.fromEntries(
    Object.entries(value)
      .toSorted(([one], [other]) => (one < other ? -1 : 1))
      .map(([key, one]) => [key, inOrder(one)]),
  );
};
