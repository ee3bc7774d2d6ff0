/** Who writes a pattern: terms of one dialect or of both, the hand, and numbers for one size or several. */
import type { Adjustment, ClothPlan, CornerMade } from '../../../core/index.ts';
import type { Becomes } from '../../state/cloth-types.ts';
import type { Dialect, Hand, Units } from '../../state/snapshot.ts';
import type { Language, Speaker } from '../speaker.ts';
import { speakerOf } from '../speaker.ts';
import { type TermForm, type TermId, term } from '../terms.ts';

/** A number a size. */
export type Amount = readonly number[];

type WrittenTerms = Dialect | 'both';

export type WriteOptions = {
  terms: WrittenTerms;
  hand: Hand;
  units: Units;
  language?: Language;
  title?: string;
  designer?: string;
  /** The designer's own words, as typed. */
  notes?: string;
  adjustments?: readonly Adjustment[];
  /** What it is to be: what goes inside. Default a cushion. */
  becomes?: Becomes;
  /** The front is cloth too, with a strip of its own. */
  isOfCloth?: boolean;
  /** The cloth of a panel that was measured. */
  cloth?: ClothPlan;
};

/** Writes terms and amounts, and remembers which terms were written short. */
export type Writer = {
  speaker: Speaker;
  terms: WrittenTerms;
  hand: Hand;
  /** The terms written short so far, in the order in which they came. */
  shorts: ReadonlySet<TermId>;
  term(id: TermId, form?: TermForm): string;
  short(id: TermId): string;
  /** 62, or 62 (70: 78) for several sizes. */
  amount(values: Amount): string;
};

export function openWriter({ terms, hand, language = 'en' }: WriteOptions): Writer {
  const speaker = speakerOf({ dialect: terms === 'us' ? 'us' : 'uk' }, language);
  const shorts = new Set<TermId>();
  const written = (id: TermId, form?: TermForm): string => {
    if (terms !== 'both') return term(id, terms, form);
    const [uk, us] = [term(id, 'uk', form), term(id, 'us', form)];
    return uk === us ? uk : `${uk}/${us}`;
  };
  return {
    speaker,
    terms,
    hand,
    shorts,
    term: written,
    short: (id) => {
      shorts.add(id);
      return written(id, 'short');
    },
    amount: (values) => {
      const { plain } = speaker.formatting;
      const [first = 0, ...others] = values;
      if (others.every((one) => one === first)) return plain(first);
      return `${plain(first)} (${others.map(plain).join(': ')})`;
    },
  };
}

/** A corner as it is written: how many places, made of what. */
export type WrittenCorner = { made: CornerMade; size: number };

/** Stitches of the sides and the corners between them, as counted at the end of a round. */
export type Counts = { sides: readonly Amount[]; corners: readonly WrittenCorner[]; total: Amount };
