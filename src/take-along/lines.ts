/**
 * A panel as a few lines of plain text: read by a person, and read back by the page.
 *
 * Rule: what is read is what was written, or nothing. The last line is the sum of the lines between it and the head;
 * what stands around them, and what a letter puts before each line, is no part of it.
 */
import { type LinkProblem, plainOf, type ReadLink, readPlain, type Shared } from '../input/link.ts';
import { sumOf } from '../input/sum.ts';
import { type Project, tabs } from '../state/snapshot.ts';
import type { LineLabel, LineWords } from '../words/pattern/line-words.ts';
import { namesOf } from './line-names.ts';

/** No panel has more lines, nor longer ones. */
const most = { lines: 2000, signs: 20_000 };

const zeroOrOne = ['foundationStart', 'foundationClosing', 'edgingClosing'] as const;
/** What the one number of a choice is called. */
const inside = { foundationStart: 'counts', foundationClosing: 'adds', edgingClosing: 'adds' } as const;

type Line = readonly [label: string, value: string];
type Part = Record<string, string | number | boolean>;

/** Signs that come through every letter as they are; anything else is written as a JSON string. */
const isPlain = (text: string): boolean =>
  /^[\p{L}\p{N}\p{P}\p{S}]+( [\p{L}\p{N}\p{P}\p{S}]+)*$/u.test(text) && !text.startsWith('"');
const written = (text: string): string =>
  isPlain(text) ? text : JSON.stringify(text).replace(/[^ \p{L}\p{N}\p{P}\p{S}]/gu, escaped);
const escaped = (sign: string): string =>
  Array.from(
    { length: sign.length },
    (_, i) => `\\u${sign.charCodeAt(i).toString(16).padStart(4, '0')}`,
  ).join('');

export function linesOf(shared: Shared, words: LineWords): string {
  const { p, d, h, u, t, w, a } = plainOf(shared);
  const { name, texts = {}, choices = {}, mishaps = [], adjustments = [], stands, ...shape } = p;
  const scalar = (label: LineLabel, value: unknown): Line => [
    words.labels[label],
    words.values[`${value}`] ?? `${value}`,
  ];
  const lines: Line[] = [
    ...(name === undefined ? [] : [[words.labels.name, written(name)] as const]),
    ...Object.entries(shape).map(([key, value]) => scalar(key as LineLabel, value)),
    ...zeroOrOne.flatMap((key) => {
      const chosen = choices[key] as Record<string, number> | undefined;
      return chosen ? [scalar(key, chosen[inside[key]])] : [];
    }),
    ...textLines(texts, words),
    ...mishaps.map((act): Line => [words.labels.mishap, partOf(act as Part, words)]),
    ...adjustments.map(({ asked: _, ...act }): Line => [words.labels.adjustment, partOf(act as Part, words)]),
    ...(stands ? [[words.labels.stands, partOf(stands as Part, words)] as const] : []),
    scalar('dialect', d),
    scalar('hand', h),
    scalar('units', u),
    scalar('tab', t),
    ...(w === undefined ? [] : [scalar('place', w + 1)]),
    ...(a === undefined
      ? []
      : [[words.labels.answered, a.map((one) => words.values[one]).join(', ')] as const]),
  ];
  const body = lines.map(([label, value]) => `${label}: ${value}`);
  return [words.head, ...body, `${words.labels.check}: ${sumOf(body.join('\n'))}`].join('\n');
}

/** Counts of one round in one line, as long as all are plain numbers; else each text in a line of its own. */
function textLines(texts: Project['texts'], words: LineWords): Line[] {
  const { groups, fields } = namesOf(words);
  const grouped = new Set<string>();
  const counts = [...groups].flatMap(([label, names]): Line[] => {
    const there = names.filter((field) => texts[field] !== undefined);
    if (there.length === 0 || !there.every((field) => /^-?\d+$/.test(texts[field] ?? ''))) return [];
    for (const field of there) grouped.add(field);
    const last = names.findLastIndex((field) => texts[field] !== undefined);
    return [
      [
        label,
        names
          .slice(0, last + 1)
          .map((field) => texts[field] ?? words.open)
          .join(', '),
      ],
    ];
  });
  const single = [...fields].flatMap(([label, field]): Line[] => {
    const text = texts[field];
    return text === undefined || grouped.has(field) ? [] : [[label, written(text)]];
  });
  return [...counts, ...single];
}

type NumberedPart = keyof LineWords['acts'];
const isNumbered = (key: string, words: LineWords): key is NumberedPart => Object.hasOwn(words.acts, key);

/** "stitch missed, round edging, edging 1, side 2, stitch 6" */
function partOf(part: Part, words: LineWords): string {
  return Object.entries(part)
    .map(([key, value]) => {
      if (key === 'kind' || key === 'at') return `${value}`.replaceAll('-', ' ');
      return isNumbered(key, words) ? `${words.acts[key]} ${Number(value) + 1}` : `${key} ${value}`;
    })
    .join(', ');
}

function readPart(text: string, first: 'kind' | 'at', words: LineWords): Part {
  const [name = '', ...rest] = text.split(', ');
  const part: Part = { [first]: name.replaceAll(' ', '-') };
  for (const one of rest) {
    const [, word = '', value = ''] = /^(\S+) (\S+)$/.exec(one) ?? [];
    const numbered = Object.entries(words.acts).find(([, says]) => says === word)?.[0];
    if (numbered) part[numbered] = Number(value) - 1;
    else part[word] = /^-?\d+$/.test(value) ? Number(value) : value;
  }
  return part;
}

/** Null where there are no such lines in a text. */
export function readLines(text: string, words: LineWords): ReadLink | null {
  if (text.length > most.signs * 10) return refused('unreadable');
  // What a letter puts before lines: marks of quoting, spaces.
  const all = text.split(/\r?\n/).map((line) => line.replace(/^[\s>|]+|\s+$/g, ''));
  const from = all.indexOf(words.head);
  if (from < 0) return null;
  const check = `${words.labels.check}: `;
  const to = all.findIndex((line, at) => at > from && line.startsWith(check));
  if (to < 0 || to - from > most.lines) return refused('cut');
  const body = all.slice(from + 1, to).filter((line) => line !== '');
  if (sumOf(body.join('\n')) !== all[to]?.slice(check.length)) return refused('cut');
  const shared = readPlain(plainFrom(body, words));
  return shared ? { ok: true, shared } : refused('unreadable');
}

const refused = (why: LinkProblem): ReadLink => ({ ok: false, why });

/** What is chosen out of a few, as it is kept. */
const chosenFrom: Partial<Record<LineLabel, readonly string[]>> = {
  counted: ['stitches-only', 'one-corner', 'both-corners'],
  cornerMade: ['chain', 'stitch'],
  cornersDiffer: ['true', 'false'],
  dialect: ['uk', 'us'],
  hand: ['right', 'left'],
  units: ['cm', 'inch'],
  tab: tabs,
};
const isChoice = (label: LineLabel): label is (typeof zeroOrOne)[number] => Object.hasOwn(inside, label);

function plainFrom(body: readonly string[], words: LineWords): unknown {
  const { groups, fields } = namesOf(words);
  const labels = new Map(Object.entries(words.labels).map(([key, label]) => [label, key as LineLabel]));
  const project: Record<string, unknown> = {};
  const texts: Record<string, string> = {};
  const choices: Record<string, unknown> = {};
  const [mishaps, adjustments]: [Part[], Part[]] = [[], []];
  const plain: Record<string, unknown> = {};
  const meant = (value: string, of: readonly string[]): string =>
    of.find((one) => (words.values[one] ?? one) === value) ?? value;
  const take = (label: LineLabel, value: string): void => {
    const of = chosenFrom[label];
    const told = of ? meant(value, of) : value;
    if (label === 'name') project.name = read(value);
    else if (label === 'sideCount' || label === 'edgingCount') project[label] = Number(value);
    else if (label === 'counted' || label === 'cornerMade') project[label] = told;
    else if (label === 'cornersDiffer') project.cornersDiffer = told === 'true';
    else if (isChoice(label)) choices[label] = { [inside[label]]: Number(value) };
    else if (label === 'mishap') mishaps.push(readPart(value, 'kind', words));
    else if (label === 'adjustment') adjustments.push(readPart(value, 'kind', words));
    else if (label === 'stands') project.stands = readPart(value, 'at', words);
    else if (label === 'place') plain.w = Number(value) - 1;
    else if (label === 'answered') plain.a = value.split(', ').map((one) => meant(one, ['twist', 'pad']));
    // Terms, hand, units and place stand under their first letters.
    else plain[label[0] as string] = told;
  };
  for (const line of body) {
    const [, label = '', value = ''] = /^([^:]*): (.*)$/.exec(line) ?? [];
    const known = labels.get(label);
    const names = groups.get(label);
    const field = fields.get(label);
    if (known) take(known, value);
    else if (names)
      for (const [i, count] of value.split(', ').entries()) {
        const name = names[i];
        if (name !== undefined && count !== words.open) texts[name] = read(count);
      }
    else if (field) texts[field] = read(value);
    else return null;
  }
  plain.p = { ...project, texts, choices, mishaps, adjustments };
  return plain;
}

function read(value: string): string {
  if (!value.startsWith('"')) return value;
  try {
    const text: unknown = JSON.parse(value);
    return typeof text === 'string' ? text : value;
  } catch {
    return value;
  }
}
