/** What a person starts with, and reading kept projects back without trusting them. */
import { type Counted, limits, type Mishap } from '../../core/index.ts';
import type { Project, Settings } from './snapshot.ts';

/** A worked example of our own, already meeting: the first thing a visitor sees. */
export const example: Project = {
  name: 'Window-seat cushion',
  sideCount: 4,
  counted: 'one-corner',
  cornerMade: 'chain',
  cornersDiffer: false,
  edgingCount: 1,
  choices: {},
  texts: { 'side.0': '64', 'side.1': '40', 'side.2': '64', 'side.3': '40', corner: '2' },
  mishaps: [],
};

export const standardSettings: Settings = {
  dialect: 'uk',
  hand: 'right',
  units: 'cm',
  theme: 'auto',
  manner: 'corner-to-corner',
  easing: 'end',
  arrangement: 'together',
  yarns: { front: '#23717a', edging: '#c1673a', foundation: '#b89a6a' },
  pace: 1200,
  readAloud: false,
  stayAwake: false,
};

type Fields = Record<string, unknown>;

const asFields = (value: unknown): Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : {};

const own = (fields: Fields, key: string): unknown => (Object.hasOwn(fields, key) ? fields[key] : undefined);

const oneOf = <T>(value: unknown, allowed: readonly T[], standard: T): T =>
  allowed.includes(value as T) ? (value as T) : standard;

const between = (value: unknown, low: number, high: number, standard: number): number =>
  typeof value === 'number' && Number.isInteger(value) && value >= low && value <= high ? value : standard;

const longestText = 200;
const mostTexts = 600;

/** Strips control and direction-override characters; a name is shown as text only, never as markup. */
const cleanText = (value: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
  value.replace(/[\u0000-\u001f\u007f\u202a-\u202e\u2066-\u2069]/g, '').slice(0, longestText);

function readTexts(value: unknown): Record<string, string> {
  const texts: Record<string, string> = {};
  for (const [field, text] of Object.entries(asFields(value)).slice(0, mostTexts))
    if (/^[a-z][a-z0-9.-]{0,60}$/.test(field) && typeof text === 'string') texts[field] = cleanText(text);
  return texts;
}

function readChoice(value: unknown, key: 'counts' | 'adds'): Fields | undefined {
  const given = own(asFields(value), key);
  return given === 0 || given === 1 ? { [key]: given } : undefined;
}

/** A project from kept or foreign data: every field read for itself, anything odd replaced by the example's. */
export function readProject(value: unknown): Project {
  const fields = asFields(value);
  const choices = asFields(own(fields, 'choices'));
  const name = own(fields, 'name');
  const mishaps = own(fields, 'mishaps');
  const kept: Fields = {};
  for (const [key, inner] of [
    ['foundationStart', 'counts'],
    ['foundationClosing', 'adds'],
    ['edgingClosing', 'adds'],
  ] as const) {
    const read = readChoice(own(choices, key), inner);
    if (read) kept[key] = read;
  }
  return {
    name: typeof name === 'string' ? cleanText(name) : example.name,
    sideCount: between(own(fields, 'sideCount'), 0, limits.sides, example.sideCount),
    counted: oneOf<Counted>(
      own(fields, 'counted'),
      ['stitches-only', 'one-corner', 'both-corners'],
      example.counted,
    ),
    cornerMade: oneOf(own(fields, 'cornerMade'), ['chain', 'stitch'] as const, 'chain'),
    cornersDiffer: own(fields, 'cornersDiffer') === true,
    edgingCount: between(own(fields, 'edgingCount'), 1, limits.edgings, 1),
    choices: kept as Project['choices'],
    texts: own(fields, 'texts') === undefined ? example.texts : readTexts(own(fields, 'texts')),
    // Mishaps are read again by core, which refuses what it does not know.
    mishaps: Array.isArray(mishaps) ? (structuredClone(mishaps.slice(0, 50)) as Mishap[]) : [],
  };
}

const colour = (value: unknown, standard: string): string =>
  typeof value === 'string' && /^#[0-9a-f]{6}$/i.test(value) ? value : standard;

export function readSettings(value: unknown, standard: Settings = standardSettings): Settings {
  const fields = asFields(value);
  const get = (key: keyof Settings): unknown => own(fields, key);
  const yarns = asFields(get('yarns'));
  return {
    dialect: oneOf(get('dialect'), ['uk', 'us'] as const, standard.dialect),
    hand: oneOf(get('hand'), ['right', 'left'] as const, standard.hand),
    units: oneOf(get('units'), ['cm', 'inch'] as const, standard.units),
    theme: oneOf(get('theme'), ['auto', 'light', 'dark'] as const, standard.theme),
    manner: oneOf(get('manner'), ['corner-to-corner', 'stitch-by-stitch'] as const, standard.manner),
    easing: oneOf(get('easing'), ['end', 'spread'] as const, standard.easing),
    arrangement: oneOf(get('arrangement'), ['together', 'apart'] as const, standard.arrangement),
    yarns: {
      front: colour(own(yarns, 'front'), standard.yarns.front),
      edging: colour(own(yarns, 'edging'), standard.yarns.edging),
      foundation: colour(own(yarns, 'foundation'), standard.yarns.foundation),
    },
    // Slower than three a second: nothing flashes.
    pace: between(get('pace'), 350, 10_000, standard.pace),
    readAloud: get('readAloud') === true,
    stayAwake: get('stayAwake') === true,
  };
}
