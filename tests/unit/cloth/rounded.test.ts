/** Every length that is told can be found on a tape, and every amount bought: over many panels, in cm and in inches. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pieceBox } from '../../../core/index.ts';
import type { Units } from '../../../src/state/snapshot.ts';
import { everythingSaid, type Said } from './sentences.ts';

const lengthIn = (least: number, most: number) =>
  fc.integer({ min: least * 8, max: most * 8 }).map((eighths) => `${eighths / 8}`);
const maybe = (value: fc.Arbitrary<string>) => fc.option(value, { nil: '' });
const count = (least: number, most: number) => fc.integer({ min: least, max: most }).map(String);

/** Sizes as they may be typed in either unit: 0.125 is an eighth of an inch, and 1.25 mm. */
const texts = fc.record({
  'side.0': count(20, 160),
  'cloth.width.0': lengthIn(6, 30),
  'cloth.width.1': maybe(lengthIn(6, 30)),
  'cloth.height.0': lengthIn(6, 30),
  'cloth.diameter.0': lengthIn(6, 30),
  'cloth.side.0': lengthIn(6, 30),
  'cloth.depth': lengthIn(0.5, 1.5),
  'cloth.edging': maybe(lengthIn(0, 1)),
  'cloth.front-edge': maybe(lengthIn(0, 1)),
  'cloth.outline': fc.constantFrom('rectangle', 'sides'),
  'cloth.rule': fc.constantFrom('snug', 'exact', 'own'),
  'cloth.allowance': lengthIn(0, 1),
  'cloth.front': fc.constantFrom('panel', 'cloth'),
  'cloth.becomes': fc.constantFrom('cushion', 'bag', 'cover'),
  'cloth.pad-rule': fc.constantFrom('usual', 'full', 'same'),
  'cloth.stretch-stitches.top': count(10, 40),
  'cloth.stretch-length.top': maybe(lengthIn(3, 12)),
  'cloth.stretch-stitches.front': count(10, 40),
  'cloth.stretch-length.front': maybe(lengthIn(3, 12)),
  'cloth.spacing': maybe(lengthIn(1, 6)),
  'cloth.sewing': fc.constantFrom('hand', 'machine'),
  'cloth.thickness': maybe(lengthIn(0.125, 1)),
  'cloth.yarn-stitches.foundation': count(5, 30),
  'cloth.yarn-length.foundation': maybe(lengthIn(20, 90)),
  'cloth.yarn-stitches.join': count(5, 30),
  'cloth.yarn-grams.join': maybe(fc.constantFrom('0.7', '1.3', '12')),
  'cloth.ball-grams.join': maybe(count(25, 100)),
  'cloth.left': maybe(count(1, 60)),
  'cloth.cloth-width': maybe(lengthIn(40, 60)),
  'cloth.pieces': maybe(count(1, 7)),
  'cloth.wanted-width': maybe(lengthIn(6, 30)),
});

const sideCounts = fc.constantFrom(0, 3, 4, 4, 5, 6);

/** Numbers before a unit, each with its line: "16 3/4", "22–34" is two. */
function numbersBefore(lines: readonly string[], unit: string): string[] {
  const number = '\\d+(?: \\d/\\d+|/\\d+|\\.\\d+)?';
  const found = new RegExp(`(?:(${number})(?: ?(?:–|×|to) ?))?(${number}) ${unit}(?![a-z])`, 'g');
  return lines.flatMap((line) =>
    [...line.matchAll(found)].flatMap(([, first, last]) => (first ? [first, last!] : [last!])),
  );
}

const plain = ({ lines }: Said): string[] => lines.map((line) => line.replaceAll('\u00a0', ' '));

/** Every panel, and what is said of it. */
const overMany = (units: Units, check: (said: Said, lines: string[]) => void, most = 60): void => {
  let cut = 0;
  fc.assert(
    fc.property(texts, sideCounts, (typed, sides) => {
      const said = everythingSaid(typed, sides, units);
      if (said.cloth.plan) cut++;
      check(said, plain(said));
    }),
    { numRuns: most },
  );
  // Most of the panels can be cut; else nothing would have been looked at.
  expect(cut).toBeGreaterThan(most / 2);
};

const value = (told: string): number =>
  told
    .split(' ')
    .map((part) => {
      const [over = '', under = '1'] = part.split('/');
      return Number(over) / Number(under);
    })
    .reduce((sum, part) => sum + part, 0);

describe('what the place says', () => {
  it('in inches has whole ones and eighths, quarters, halves, and no decimals', () => {
    const seen = new Set<string>();
    overMany('inch', (_, lines) => {
      for (const unit of ['in', 'yd'])
        for (const told of numbersBefore(lines, unit)) {
          seen.add(unit);
          // The check line of 100 mm is told by a tape's sixteenths: it is to be measured, and not cut.
          const steps = told === '1/16' ? 8 : value(told) * 8;
          expect(steps, told).toBe(Math.round(steps));
          expect(told).not.toMatch(/\.|\/(?!2$|4$|8$|16$)|^[02468]\/|^0\d/);
        }
      expect(
        lines.filter(
          (line) => /\d (?:cm|m)\b/.test(line) || (/\d mm/.test(line) && !/100 mm|hook/.test(line)),
        ),
      ).toEqual([]);
    });
    expect([...seen].sort()).toEqual(['in', 'yd']);
  });

  it('in cm has mm at the finest, and what is bought by halves or tenths of a metre', () => {
    const seen = new Set<string>();
    overMany('cm', (_, lines) => {
      for (const told of numbersBefore(lines, 'cm')) expect(told).toMatch(/^\d+(?:\.\d)?$/);
      for (const told of numbersBefore(lines, 'm')) {
        seen.add('m');
        expect(told).toMatch(value(told) < 10 ? /^\d(?:\.\d)?$/ : /^\d+(?:\.\d)?$/);
      }
      expect(lines.filter((line) => /\d (?:in|yd)\b(?! print| all)/.test(line))).toEqual([]);
    });
    expect(seen.size).toBe(1);
  });

  it('has percents and grams as whole numbers, and a band from print in whole metres or halves', () => {
    const seen = { percent: 0, grams: 0, bands: 0 };
    overMany('cm', (_, lines) => {
      for (const line of lines) {
        for (const [, told] of line.matchAll(/([\d.]+) %/g)) {
          seen.percent++;
          // The bounds for a thread's ratio stand beside it and are no percents.
          expect(told, line).toMatch(/^\d+$/);
        }
        for (const [, told] of line.matchAll(/([\d.]+) g\b/g)) {
          seen.grams++;
          expect(told, line).toMatch(/^\d+$/);
        }
        for (const [, low, high] of line.matchAll(/([\d.]+)–([\d.]+) m\b/g)) {
          seen.bands++;
          for (const told of [low, high].map(Number)) expect(told % (told < 10 ? 0.5 : 1), line).toBe(0);
        }
      }
    });
    expect(Math.min(...Object.values(seen))).toBeGreaterThan(20);
  });

  it.each(['cm', 'inch'] as const)(
    'tells the cut never smaller than it is, and not a step larger, in %s',
    (units) => {
      const step = units === 'cm' ? 1 : 25.4 / 8;
      overMany(units, ({ cloth }, lines) => {
        if (cloth.plan?.cut.shape !== 'rectangle') return;
        const { width, height } = pieceBox(cloth.plan.cut);
        const at = lines.indexOf('Cut the cloth');
        const [told = []] = [/^(\d[\d ./]*) × (\d[\d ./]*) /.exec(lines[at + 1] ?? '')?.slice(1) ?? []];
        expect(told).toHaveLength(2);
        for (const [i, wanted] of [width, height].entries()) {
          const over = value(told[i] as string) * (units === 'cm' ? 10 : 25.4) - wanted;
          expect(over).toBeGreaterThan(-1e-6);
          expect(over).toBeLessThan(step);
        }
        // And wherever the cut stands it is told alike: on the list, on the drawing and in the walk.
        const [across, down] = told.map((one) => `${one} ${units === 'cm' ? 'cm' : 'in'}`);
        const isDrawn = (length = ''): boolean =>
          lines.some((line) => line === length || line.startsWith(`${length} side `));
        expect([isDrawn(across), isDrawn(down)]).toEqual([true, true]);
        expect(lines.some((line) => line.startsWith(`The cloth is cut ${told[0]} × ${told[1]} `))).toBe(true);
      });
    },
  );
});
