/**
 * Who speaks: the language, the trade's terms, and how numbers are written. Every sentence of a catalogue is a
 * function of typed values and a speaker.
 */
import type { Dialect } from '../state/snapshot.ts';
import { type TermForm, type TermId, term } from './terms.ts';

export type Language = 'en';

type Formatting = {
  /** A number that is told: 2,400,000. */
  grouped(value: number): string;
  /** One that the person could type back: 100000. */
  plain(value: number): string;
  /** Which form of a word goes with a number. */
  plural(value: number): Intl.LDMLPluralRule;
};

export type Speaker = { language: Language; terms: Dialect; formatting: Formatting };

const locales: Record<Language, string> = { en: 'en-GB' };

const formattingOf = (language: Language): Formatting => {
  const grouped = new Intl.NumberFormat(locales[language]);
  const plain = new Intl.NumberFormat(locales[language], { useGrouping: false });
  const rules = new Intl.PluralRules(locales[language]);
  return {
    grouped: (value) => grouped.format(value),
    plain: (value) => plain.format(value),
    plural: (value) => rules.select(value),
  };
};

const formattings: Record<Language, Formatting> = { en: formattingOf('en') };

export const speakerOf = ({ dialect }: { dialect: Dialect }, language: Language = 'en'): Speaker => ({
  language,
  terms: dialect,
  formatting: formattings[language],
});

/** The forms of a word by plural rule; `other` where a rule has none of its own. */
export type Plural = { other: string } & Partial<Record<Intl.LDMLPluralRule, string>>;

/** (1, corner) → "1 corner". */
export function counted({ formatting }: Speaker, count: number, forms: Plural): string {
  return `${formatting.grouped(count)} ${forms[formatting.plural(count)] ?? forms.other}`;
}

/** The speaker's word for a term of the trade. */
export const termOf = ({ terms }: Speaker, id: TermId, form?: TermForm): string => term(id, terms, form);
