/** What every field is called in the lines of a panel: counts of one round together, and each by itself. */
import { answerFields } from '../state/answer-fields.ts';
import { clothFieldNames } from '../state/cloth-fields.ts';
import { type FieldKind, type FieldRow, fieldRows } from '../state/fields.ts';
import { patternFields } from '../state/pattern-fields.ts';
import type { Field } from '../state/snapshot.ts';
import type { LineWords } from '../words/pattern/line-words.ts';

export type Names = {
  /** All fields of a round that are of one kind, in order. */
  groups: ReadonlyMap<string, readonly Field[]>;
  fields: ReadonlyMap<string, Field>;
};

const ofRounds: readonly FieldKind[] = [
  'worked-side',
  'worked-corner',
  'worked-total',
  'corners-short',
  'arm-before',
  'arm-after',
  'increase',
];

const made = new WeakMap<LineWords, Names>();

export function namesOf(words: LineWords): Names {
  const known = made.get(words) ?? makeNames(words);
  made.set(words, known);
  return known;
}

function makeNames(words: LineWords): Names {
  const labelOf = ({ kind, round }: FieldRow): string => {
    const says = words.fields[kind];
    if (!ofRounds.includes(kind)) return says;
    return round === 'foundation' ? `${words.foundation}, ${says}` : `${words.edging} ${round + 1}, ${says}`;
  };
  const groups = new Map<string, Field[]>();
  const fields = new Map<string, Field>();
  for (const row of fieldRows) {
    const label = labelOf(row);
    groups.set(label, [...(groups.get(label) ?? []), row.field]);
    fields.set(`${label} (${row.index + 1})`, row.field);
  }
  // The others are seldom sent: by their own names, counted from 1.
  for (const field of [...clothFieldNames, ...Object.values(patternFields), ...Object.values(answerFields)]) {
    const says = field.replaceAll(/[.-]/g, ' ').replace(/\d+$/, (index) => `${Number(index) + 1}`);
    fields.set(says, field);
  }
  return { groups, fields };
}
