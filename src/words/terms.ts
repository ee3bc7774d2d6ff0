/**
 * The trade's terms by id, UK and US. Ids are the UK words and never change; what a person reads is
 * always looked up here, so that a sentence can never mix the two.
 *
 * Stitch names and shorts: Craft Yarn Council terms as reprinted, and the words in print for "fdc"
 * (read). Triple treble, cushion, unravel and the turning words: common practice.
 */
import type { Dialect } from '../state/snapshot.ts';

/** `one` and `many` for things; for a verb `one` is the plain verb, `doing` and `done` its other forms. */
type Forms = { one: string; many?: string; short?: string; doing?: string; done?: string };

export type TermForm = 'one' | 'many' | 'short' | 'doing' | 'done';

const both = (forms: Forms): Record<Dialect, Forms> => ({ uk: forms, us: forms });

const thing = (one: string, short?: string, many = `${one}s`): Forms =>
  short === undefined ? { one, many } : { one, many, short };

const TABLE = {
  chain: both(thing('chain', 'ch')),
  'slip-stitch': {
    uk: thing('slip stitch', 'ss', 'slip stitches'),
    us: thing('slip stitch', 'sl st', 'slip stitches'),
  },
  'double-crochet': { uk: thing('double crochet', 'dc'), us: thing('single crochet', 'sc') },
  'half-treble': { uk: thing('half treble', 'htr'), us: thing('half double crochet', 'hdc') },
  treble: { uk: thing('treble', 'tr'), us: thing('double crochet', 'dc') },
  'double-treble': { uk: thing('double treble', 'dtr'), us: thing('treble', 'tr') },
  'triple-treble': { uk: thing('triple treble', 'trtr'), us: thing('double treble', 'dtr') },
  'foundation-double-crochet': {
    uk: thing('foundation double crochet', 'fdc'),
    us: thing('foundation single crochet', 'fsc'),
  },
  'foundation-treble': {
    uk: thing('foundation treble', 'ftr'),
    us: thing('foundation double crochet', 'fdc'),
  },
  'back-loop-only': {
    uk: { one: 'back loop only', short: 'blo' },
    us: { one: 'back loop only', short: 'BLO' },
  },
  'yarn-round-hook': {
    uk: { one: 'yarn round hook', short: 'yrh' },
    us: { one: 'yarn over', short: 'yo' },
  },
  tension: { uk: { one: 'tension' }, us: { one: 'gauge' } },
  miss: {
    uk: { one: 'miss', doing: 'missing', done: 'missed' },
    us: { one: 'skip', doing: 'skipping', done: 'skipped' },
  },
  unravel: {
    uk: { one: 'unravel', doing: 'unravelling', done: 'unravelled' },
    us: { one: 'rip back', doing: 'ripping back', done: 'ripped back' },
  },
  cushion: { uk: thing('cushion'), us: thing('pillow') },
  'cushion-pad': { uk: thing('cushion pad'), us: thing('pillow form') },
  anticlockwise: { uk: { one: 'anticlockwise' }, us: { one: 'counterclockwise' } },
} satisfies Record<string, Record<Dialect, Forms>>;

export type TermId = keyof typeof TABLE;

export const TERM_IDS = Object.keys(TABLE) as TermId[];

const formsOf = (id: TermId, dialect: Dialect): Forms => TABLE[id][dialect];

/**
 * The word for a term. A form that the term does not have (the plural of "tension", the short of
 * "cushion") gives its plain word.
 */
export function term(id: TermId, dialect: Dialect, form: TermForm = 'one'): string {
  const forms = formsOf(id, dialect);
  return forms[form] ?? forms.one;
}

/** Has this term a form of its own, or would `term` fall back to the plain word? */
export const hasForm = (id: TermId, dialect: Dialect, form: TermForm): boolean =>
  formsOf(id, dialect)[form] !== undefined;

/** What the choice of terms is called, for the tag beside the first term on a screen. */
export const dialectName = (dialect: Dialect): string => (dialect === 'uk' ? 'UK terms' : 'US terms');

export const otherDialect = (dialect: Dialect): Dialect => (dialect === 'uk' ? 'us' : 'uk');

/** Words that one dialect has and the other has not, for a check that no sentence mixes them. */
export function wordsOnlyIn(dialect: Dialect): string[] {
  const other = new Set(allWords(otherDialect(dialect)));
  return [...new Set(allWords(dialect))].filter((word) => !other.has(word));
}

/** Words that both dialects have for different stitches, found in the table and not listed by hand. */
export function sharedWords(): { word: string; uk: TermId; us: TermId }[] {
  const found: { word: string; uk: TermId; us: TermId }[] = [];
  for (const uk of TERM_IDS) {
    for (const us of TERM_IDS) {
      if (uk === us) continue;
      for (const form of ['one', 'short'] as const) {
        if (!hasForm(uk, 'uk', form) || !hasForm(us, 'us', form)) continue;
        if (term(uk, 'uk', form) === term(us, 'us', form)) found.push({ word: term(uk, 'uk', form), uk, us });
      }
    }
  }
  return found;
}

/**
 * The "same word, different meaning" note for a term, or null where neither of its words is used for
 * another stitch. It names both dialects, so it reads the same whichever is chosen.
 */
export function falseFriend(id: TermId): string | null {
  const words = sharedWords().filter((shared) => shared.uk === id || shared.us === id);
  if (words.length === 0) return null;
  const meaning = `UK ${term(id, 'uk')} is US ${term(id, 'us')}.`;
  const asUk = words.find((shared) => shared.uk === id);
  const asUs = words.find((shared) => shared.us === id);
  const others = [
    asUk && `US ${term(asUk.us, 'us')} is UK ${term(asUk.us, 'uk')}.`,
    asUs && `UK ${term(asUs.uk, 'uk')} is US ${term(asUs.uk, 'us')}.`,
  ];
  return ['Same word, different meaning.', meaning, ...others.filter(Boolean)].join(' ');
}

function allWords(dialect: Dialect): string[] {
  return TERM_IDS.flatMap((id) => Object.values(formsOf(id, dialect)) as string[]);
}
