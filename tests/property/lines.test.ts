/** A panel as lines of plain text: whatever is sent comes back the same, out of any letter, or is refused by name. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clothFieldNames } from '../../src/state/cloth-fields.ts';
import { fieldRows } from '../../src/state/fields.ts';
import { patternFields } from '../../src/state/pattern-fields.ts';
import { example } from '../../src/state/project.ts';
import { namesOf } from '../../src/take-along/line-names.ts';
import { linesOf, readLines } from '../../src/take-along/lines.ts';
import { lines as words } from '../../src/words/english/lines.ts';
import { anyShared } from './any-project.ts';

const ours = {
  project: { ...example, texts: { ...example.texts, 'worked.edging.0.1': '37' } },
  dialect: 'uk',
  hand: 'right',
  units: 'cm',
  tab: 'wrong',
  place: 12,
  answered: ['twist'],
} as const;

describe('a panel as lines', () => {
  it('comes back as it was sent', () => {
    fc.assert(
      fc.property(anyShared, (shared) => {
        expect(readLines(linesOf(shared, words), words)).toEqual({ ok: true, shared });
      }),
      { numRuns: 2000 },
    );
  });

  it('comes back out of a letter that quotes it, with other lines around and between', () => {
    const between = fc.constantFrom('\n', '\r\n', '\n\n', '\n> ', '\r\n>> ', '  \n\t');
    const around = fc.string({ unit: 'grapheme', maxLength: 30 }).map((text) => text.replaceAll('check', ''));
    fc.assert(
      fc.property(anyShared, between, around, around, (shared, join, before, after) => {
        const sent = linesOf(shared, words).replaceAll('\n', join);
        expect(readLines(`${before}\n${sent}\n${after}`, words)).toEqual({ ok: true, shared });
      }),
    );
  });

  it('says what a person would: the counts in a row, and no more than is needed', () => {
    expect(linesOf(ours, words).split('\n').slice(0, -1)).toEqual([
      'A crochet panel, for Ringtrue to read',
      'panel: Window-seat cushion',
      'sides are counted: with one corner',
      'front sides: 64, 40, 64, 40',
      'each corner: 2',
      'edging 1, sides counted: ?, 37',
      'terms: UK',
      'hand: right',
      'lengths in: cm',
      'opens on: What went wrong',
      'step of the walk: 13',
      'seen to: the twist',
    ]);
  });

  it('cut at any place is refused by name, and never read as another', () => {
    const sent = linesOf(ours, words);
    const head = words.head.length;
    for (let length = 0; length < sent.length; length++)
      expect(readLines(sent.slice(0, length), words), `${length}`).toEqual(
        length < head ? null : { ok: false, why: 'cut' },
      );
  });

  it('changed on the way is refused, or says what it said', () => {
    fc.assert(
      fc.property(
        anyShared,
        fc.array(fc.tuple(fc.nat(2000), fc.constantFrom(...'0123456789abcxyz,:;"?- \n')), {
          minLength: 1,
          maxLength: 3,
        }),
        (shared, changes) => {
          const signs = [...linesOf(shared, words)];
          for (const [at, sign] of changes) signs[at % signs.length] = sign;
          const read = readLines(signs.join(''), words);
          if (read?.ok) expect(read.shared).toEqual(shared);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('gives every field one name, and every name one field', () => {
    const { groups, fields } = namesOf(words);
    const all = [...fieldRows.map(({ field }) => field), ...clothFieldNames, ...Object.values(patternFields)];
    const named = [...fields.values()];
    expect(new Set(named).size).toBe(named.length);
    for (const field of all) expect(named).toContain(field);
    expect([...groups.values()].flat()).toEqual(fieldRows.map(({ field }) => field));
    const labels = Object.values(words.labels);
    for (const label of labels) expect(groups.has(label) || fields.has(label), label).toBe(false);
    expect(new Set(labels).size).toBe(labels.length);
  });
});
