import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { contrast, mix, readHex, writeHex } from '../../src/theme/colour.ts';
import { customProperties, DARK, LIGHT, markInk, type Theme, textInk } from '../../src/theme/theme.ts';

const THEMES: [string, Theme][] = [
  ['light', LIGHT],
  ['dark', DARK],
];

/** [what, on what, least contrast] — text 4.5, marks 3. */
const PAIRS: [keyof Theme, keyof Theme, number][] = [
  ...(['paper', 'raised', 'well'] as const).flatMap((paper): [keyof Theme, keyof Theme, number][] => [
    ['ink', paper, 4.5],
    ['muted', paper, 4.5],
    ['gapText', paper, 4.5],
    ['accent', paper, 4.5],
    ['edge', paper, 3],
    ['gap', paper, 3],
    ['focus', paper, 3],
    ['marker', paper, 4.5],
    ['seam', paper, 3],
    ['strong', paper, 3],
  ]),
  ['gapText', 'gapPaper', 4.5],
  ['ink', 'gapPaper', 4.5],
  ['gap', 'gapPaper', 3],
  ['onAccent', 'accent', 4.5],
  ['onStrong', 'strong', 4.5],
  ['focus', 'gapPaper', 3],
];

const anyHex = fc
  .tuple(fc.nat(255), fc.nat(255), fc.nat(255))
  .map(([red, green, blue]) => writeHex([red, green, blue]));

test('the styles of the first paint hold the very same colours', () => {
  const css = readFileSync('src/page/styles/tokens.css', 'utf8');
  const written = new Map(
    [...css.matchAll(/(--[\w-]+): (?:light-dark\((#\w+), (#\w+)\)|(#\w+));/g)].map(([, name, ...hexes]) => {
      const [light, dark] = hexes.filter(Boolean);
      return [name, [light, dark ?? light]];
    }),
  );
  const dark = new Map(customProperties(DARK));
  const wanted = customProperties(LIGHT).map(([name, light]) => [name, [light, dark.get(name)]] as const);
  expect(Object.fromEntries(written)).toEqual(Object.fromEntries(wanted));
});

describe('contrast arithmetic', () => {
  test.each([
    // Ratios of WCAG 2.2: black on white is 21, #767676 is the lightest grey with 4.5 on white.
    ['#000000', '#ffffff', 21],
    ['#ffffff', '#ffffff', 1],
    ['#767676', '#ffffff', 4.54],
  ])('%s on %s is %f', (one, other, ratio) => {
    expect(contrast(one, other)).toBeCloseTo(ratio, 2);
  });

  test('a written colour reads back', () => {
    fc.assert(fc.property(anyHex, (hex) => writeHex(readHex(hex)) === hex));
  });

  test('a colour that is none reads as grey', () => {
    expect(readHex('teal')).toEqual([128, 128, 128]);
    expect(readHex('#abc')).toEqual([0xaa, 0xbb, 0xcc]);
  });

  test('mixing ends at both ends', () => {
    expect(mix('#102030', '#a0b0c0', 0)).toBe('#102030');
    expect(mix('#102030', '#a0b0c0', 1)).toBe('#a0b0c0');
  });
});

describe.each(THEMES)('%s theme', (_name, theme) => {
  test.each(PAIRS)('%s on %s reaches %f', (mark, paper, least) => {
    expect(contrast(theme[mark] as string, theme[paper] as string)).toBeGreaterThanOrEqual(least);
  });

  test('an outline for any yarn stands 3:1 on both papers', () => {
    fc.assert(
      fc.property(anyHex, (yarn) => {
        const line = markInk(yarn, theme);
        return contrast(line, theme.paper) >= 3 && contrast(line, theme.raised) >= 3;
      }),
      { numRuns: 2000 },
    );
  });

  test('text in any yarn stands 4.5:1 on all three papers', () => {
    fc.assert(
      fc.property(anyHex, (yarn) => {
        const text = textInk(yarn, theme);
        return [theme.paper, theme.raised, theme.well].every((paper) => contrast(text, paper) >= 4.5);
      }),
      { numRuns: 2000 },
    );
  });

  test('every property is a colour and is named once', () => {
    const properties = customProperties(theme);
    expect(new Set(properties.map(([name]) => name)).size).toBe(properties.length);
    for (const [name, value] of properties) {
      expect(name).toMatch(/^--[a-z-]+$/);
      expect(value).toMatch(/^#[0-9a-f]{6}$/);
    }
  });

  test('default yarns stay apart from one another', () => {
    const { front, edging, foundation } = theme.yarns;
    expect(new Set([front, edging, foundation]).size).toBe(3);
  });
});

test('dark is a theme of its own, not the light one turned over', () => {
  const turned = (hex: string) => writeHex(readHex(hex).map((channel) => 255 - channel) as never);
  expect(DARK.paper).not.toBe(turned(LIGHT.paper));
  expect(contrast(DARK.paper, '#000000')).toBeLessThan(contrast(LIGHT.paper, '#000000'));
});
