import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../core/index.ts';
import { toHtml, toMarkdown, toText } from '../../../src/words/pattern/formats.ts';
import { writeOut, writeSizes } from '../../../src/words/pattern/write-out.ts';
import type { WriteOptions } from '../../../src/words/pattern/writing.ts';
import { wordsOnlyIn } from '../../../src/words/terms.ts';
import { planOf } from '../core/making.ts';
import { examples } from './examples.ts';
import { readPattern } from './reader.ts';

const uk: WriteOptions = { terms: 'uk', hand: 'right', units: 'cm' };
const cushion = planOf([62, 38, 62, 38]);
const textOf = (plan: Plan, options: Partial<WriteOptions> = {}): string =>
  toText(writeOut(plan, { ...uk, ...options }));

describe('a written pattern', () => {
  it.each([
    ['uk', 'us'],
    ['us', 'uk'],
  ] as const)('in %s terms has no word of the others', (terms, other) => {
    const text = textOf(cushion, { terms });
    const written = (word: string): boolean =>
      [word, word.charAt(0).toUpperCase() + word.slice(1)].some((one) =>
        new RegExp(`(?<![A-Za-z])${one}(?![A-Za-z])`).test(text),
      );
    const words = wordsOnlyIn(other).filter(written);
    expect(words).toEqual([]);
  });

  it('lists the abbreviations it uses, and no others', () => {
    const listed = [...textOf(cushion).matchAll(/^- (\S+) – /gm)].map(([, short]) => short);
    expect(listed).toEqual(['blo', 'ch', 'dc', 'ftr', 'ss', 'yrh']);
    const rest = textOf(cushion).replace(/ABBREVIATIONS[\s\S]*?SPECIAL/, '');
    for (const short of listed) expect(rest).toMatch(new RegExp(`\\b${short}\\b`));
  });

  it('names title, designer and notes as they were typed', () => {
    const text = textOf(cushion, {
      title: 'Hazel',
      designer: 'Ida Fenn',
      notes: 'Wash it cold.\nDry it flat.',
    });
    expect(text).toMatch(/^Hazel\nDesigned by Ida Fenn\nUK terms\./);
    expect(text).toMatch(/NOTES\n\nWash it cold\.\nDry it flat\.\n$/);
  });

  it('writes nothing as markup that was typed', () => {
    const written = writeOut(cushion, { ...uk, title: '<b>1 & 2</b>', notes: '*not* [bold](x)' });
    expect(toHtml(written)).toContain('<h1>&lt;b&gt;1 &amp; 2&lt;/b&gt;</h1>');
    expect(toMarkdown(written)).toContain('\\*not\\* \\[bold\\](x)');
  });

  it('says of a bag which side stays open, and of what goes inside only what does', () => {
    const bag = planOf([62, 38, 62, 38], { choices: { open: 2 } });
    const text = textOf(bag, { becomes: 'bag' });
    expect(text).not.toMatch(/pad|form it goes over/);
    expect(text).toMatch(/in the last stitch of panel side 3, which stays open/);
    expect(text).toMatch(/the other corner of panel side 3, and fasten off\. That side stays open\./);
    expect(text).toMatch(/\b146 ss\b/);
    expect(textOf(cushion)).toMatch(/a cushion pad[\s\S]*put the cushion pad in/);
    expect(textOf(cushion, { becomes: 'cover' })).toMatch(/the form it goes over[\s\S]*put the form in/);
  });

  it('mirrors the turning words with the hand, and no number', () => {
    const [right, left] = [textOf(cushion), textOf(cushion, { hand: 'left' })];
    expect(right).toContain('anticlockwise');
    expect(left).toContain('runs clockwise');
    expect(left.match(/\d+/g)).toEqual(right.match(/\d+/g));
  });

  it('carries adjustments into the counts of their round and of those after it', () => {
    const text = textOf(cushion, {
      adjustments: [{ kind: 'stitch-doubled', round: 'foundation', side: 1, place: 11, asked: true }],
    });
    expect(text).toContain('Side 2: 37, work 2 in the 12th.');
    const { foundation, edgings } = readPattern(text);
    expect(foundation.sides).toEqual([60, 37, 60, 36]);
    expect(edgings[0]?.counts.sides).toEqual([62, 39, 62, 38]);
  });

  it('says how large the cloth is cut where the panel was measured, and how it is found where not', () => {
    const cut = { shape: 'rectangle', width: 425, height: 320 } as const;
    const cloth = { cut, allowance: 7 } as unknown as WriteOptions['cloth'];
    const measured = { ...uk, ...(cloth && { cloth }) };
    expect(textOf(cushion, measured)).toContain(
      'Cut the cloth: 42.5 × 32 cm. The cut edge lies 0.7 cm outside the panel, all round.',
    );
    expect(textOf(cushion, { ...measured, units: 'inch' })).toMatch(
      /Cut the cloth: 16\s3\/4 × 12\s5\/8\sin\./,
    );
    expect(textOf(cushion)).toContain('Measure the panel and cut the cloth to it');
  });

  it('says how the stitch of the foundation is made, and where it goes after a corner', () => {
    const text = textOf(cushion, { terms: 'us' });
    expect(text).toContain('Foundation double crochet (fdc): yo, hook under 2 strands of the 4th ch');
    expect(text).toContain("After a corner, that base ch lies below the corner's chains.");
    expect(textOf(planOf([90], { corner: [] }))).not.toContain('After a corner');
  });

  it.each([
    [
      { before: 1, after: 1 },
      'The dc before a corner goes in the first place of the corner below, the dc after it goes in the last.',
    ],
    [{ before: 2, after: 0 }, 'The dc before a corner go in the first place of the corner below.'],
    [{ before: 0, after: 1 }, 'The dc after a corner goes in the last place of the corner below.'],
  ])('says where the stitches of an arm of %o go', ({ before, after }, says) => {
    const plan = planOf([62, 38, 62, 38], { choices: { edgings: [{ arm: [before, after] }] } });
    expect(textOf(plan)).toContain(says);
  });

  it('turns a corner, never the work', () => {
    const text = textOf(planOf([30, 30, 30, 30], { corner: { made: 'chain', size: 0 } }));
    expect(text).toContain('In each corner: 1 dc, turn the corner, 1 dc.');
    expect(text).toContain('4 sides of 30; 4 corners without chains; 120 in all.');
    expect(text).not.toMatch(/turn(?! the (?:corner|strip))/);
  });

  it('says where the stitch of a corner goes', () => {
    const says = 'The stitch of the corner goes in the same place as the one before it.';
    expect(textOf(planOf([40, 40, 40], { corner: { made: 'stitch', size: 1 } }))).toContain(says);
    expect(textOf(cushion)).not.toContain(says);
  });

  it('tells legs that are alike once', () => {
    expect(textOf(planOf([40, 40, 40, 40, 40, 40]))).toContain(
      '19 ftr, 2 ch, [38 ftr, 2 ch] 5 times, 18 ftr.',
    );
  });
});

describe('a pattern of several sizes', () => {
  const plans = [planOf([62, 38, 62, 38]), planOf([70, 46, 70, 46]), planOf([78, 54, 78, 54])] as const;
  const written = writeSizes({ names: ['small', 'medium', 'large'], plans: [...plans] }, uk);
  const text = toText(written);

  it('gives the numbers in the usual bracketed order', () => {
    expect(text).toContain('small (medium: large)');
    expect(text).toContain('30 (34: 38) ftr, 2 ch, 36 (44: 52) ftr, 2 ch');
    expect(text).toContain(
      'Sides 62 (70: 78), 38 (46: 54), 62 (70: 78), 38 (46: 54); 4 corners of 2 ch; 208 (240: 272) in all.',
    );
  });

  it.each([0, 1, 2])('holds size %i whole', (size) => {
    const one = text.replace(/(\d+) \(([\d: ]+)\)/g, (_, first: string, others: string) => {
      return [first, ...others.split(': ')][size] ?? '';
    });
    const { foundation, edgings, pairs } = readPattern(one);
    const plan = plans[size] as Plan;
    expect(foundation.sides).toEqual(plan.foundation.sides);
    expect(edgings[0]?.counts.sides).toEqual(plan.edgings[0]?.sides);
    expect(pairs).toBe(plan.pairs);
  });

  it('has all sizes in a table', () => {
    const table = written.sections[0]?.blocks.find(({ kind }) => kind === 'table');
    expect(table).toMatchObject({
      rows: [
        ['small', '62, 38, 62, 38', '60, 36, 60, 36', '62, 38, 62, 38', '208'],
        ['medium', '70, 46, 70, 46', '68, 44, 68, 44', '70, 46, 70, 46', '240'],
        ['large', '78, 54, 78, 54', '76, 52, 76, 52', '78, 54, 78, 54', '272'],
      ],
    });
  });
});

describe('the examples', () => {
  it.each(Object.entries(examples))('%s stands in assets as it is written now', (file, written) => {
    expect(readFileSync(`assets/examples/${file}`, 'utf8')).toBe(toMarkdown(written));
  });
});
