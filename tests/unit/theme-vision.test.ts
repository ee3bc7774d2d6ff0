/**
 * Whether tones and looks can be told apart by someone who sees colours otherwise, or none. Matrices for
 * full loss of one cone: Machado, Oliveira and Fernandes, 2009; they apply to linear light.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Glyph, Look, type LookCode, Tone } from '../../src/table/draw-list.ts';
import { cellLayers, LOOKS } from '../../src/table/glyphs/cells.ts';
import { GLYPHS } from '../../src/table/glyphs/glyphs.ts';
import { mixInks } from '../../src/table/glyphs/inks.ts';
import { contrast, readHex, writeHex } from '../../src/theme/colour.ts';
import { DARK, LIGHT, type Theme } from '../../src/theme/theme.ts';

type Matrix = readonly [number, number, number, number, number, number, number, number, number];

const VISIONS: [string, Matrix][] = [
  [
    'protanopia',
    [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  ],
  [
    'deuteranopia',
    [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  ],
  ['tritanopia', [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039]],
  ['achromatopsia', [0.2126, 0.7152, 0.0722, 0.2126, 0.7152, 0.0722, 0.2126, 0.7152, 0.0722]],
];

const toLinear = (channel: number) => {
  const part = channel / 255;
  return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
};
const toChannel = (light: number) => {
  const part = Math.min(1, Math.max(0, light));
  return 255 * (part <= 0.0031308 ? part * 12.92 : 1.055 * part ** (1 / 2.4) - 0.055);
};

function seen(hex: string, [a, b, c, d, e, f, g, h, i]: Matrix): string {
  const [red, green, blue] = readHex(hex).map(toLinear) as [number, number, number];
  const rows = [
    a * red + b * green + c * blue,
    d * red + e * green + f * blue,
    g * red + h * green + i * blue,
  ];
  return writeHex(rows.map(toChannel) as never);
}

/** CIE 1976 difference: below about 2.3 two colours look alike, 20 is plain to see. */
function difference(one: string, other: string): number {
  const [a, b] = [lab(one), lab(other)];
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

function lab(hex: string): [number, number, number] {
  const [red, green, blue] = readHex(hex).map(toLinear) as [number, number, number];
  const bend = (t: number) => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = bend((0.4124 * red + 0.3576 * green + 0.1805 * blue) / 0.9505);
  const y = bend(0.2126 * red + 0.7152 * green + 0.0722 * blue);
  const z = bend((0.0193 * red + 0.1192 * green + 0.9505 * blue) / 1.089);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** The glyphs each tone is drawn with: tones that share none differ in shape whatever is seen of colour. */
const SHAPES = {
  front: ['vee', 'oval'],
  edging: ['vee', 'oval'],
  foundation: ['post'],
  gap: ['hollow'],
  seam: ['bar', 'dot'],
} as const;

const colourOf = (theme: Theme, what: keyof typeof SHAPES): string =>
  what === 'gap' || what === 'seam' ? theme[what] : theme.yarns[what];

describe.each([
  ['light', LIGHT],
  ['dark', DARK],
] as [string, Theme][])('%s theme', (_name, theme) => {
  const kinds = Object.keys(SHAPES) as (keyof typeof SHAPES)[];
  const pairs = kinds.flatMap((one, index) => kinds.slice(index + 1).map((other) => [one, other] as const));

  test.each(VISIONS)('every two tones differ in shape or stay apart with %s', (_vision, matrix) => {
    for (const [one, other] of pairs) {
      const shared = SHAPES[one].some((shape) => (SHAPES[other] as readonly string[]).includes(shape));
      if (!shared) continue;
      const [a, b] = [seen(colourOf(theme, one), matrix), seen(colourOf(theme, other), matrix)];
      expect(difference(a, b), `${one} and ${other}`).toBeGreaterThan(8);
    }
  });

  test.each(VISIONS)('the gap mark keeps 3:1 on paper with %s', (_vision, matrix) => {
    expect(contrast(seen(theme.gap, matrix), seen(theme.paper, matrix))).toBeGreaterThanOrEqual(3);
  });
});

describe('inks', () => {
  const anyHex = fc.tuple(fc.nat(255), fc.nat(255), fc.nat(255)).map((rgb) => writeHex(rgb));

  test.each([
    ['as usual', false, 3],
    ['for someone who asks for more contrast', true, 4.5],
  ])('outlines of stitches, made or to come, of any yarn: %s', (_name, strong, least) => {
    fc.assert(
      fc.property(anyHex, fc.constantFrom(LIGHT, DARK), (yarn, theme) => {
        const inks = mixInks(theme, { front: yarn, edging: yarn, foundation: yarn }, strong);
        for (const { line, ghost } of inks.tones.slice(0, 3)) {
          for (const paper of [theme.paper, theme.raised]) {
            expect(contrast(line, paper)).toBeGreaterThanOrEqual(least);
            expect(contrast(ghost, paper)).toBeGreaterThanOrEqual(least);
          }
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('looks', () => {
  const codes = Object.values(Look) as LookCode[];

  test('no two looks share every attribute of shape', () => {
    const shapes = codes.map((code) => JSON.stringify(LOOKS[code]));
    expect(new Set(shapes).size).toBe(codes.length);
  });

  test('what is painted follows the attributes', () => {
    const plan = { glyph: Glyph.vee, tone: Tone.front, made: true, detail: 'full' } as const;
    const layersOf = (look: LookCode) => cellLayers({ ...plan, look }).layers;
    const plain = layersOf(Look.plain);
    expect(plain.every((layer) => layer.dash === undefined)).toBe(true);
    const gap = layersOf(Look.gap);
    expect(gap.some((layer) => layer.dash !== undefined)).toBe(true);
    expect(gap.every((layer) => layer.fill === undefined || layer.fill === 'paper')).toBe(true);
    // Surplus adds a ring around, a mishap a cross beside; both keep the stitch itself.
    for (const look of [Look.surplus, Look.mishap]) {
      const added = layersOf(look).filter((layer) => !plain.includes(layer));
      expect(added.length).toBeGreaterThan(0);
      expect(plain.every((layer) => layersOf(look).includes(layer))).toBe(true);
    }
    expect(layersOf(Look.surplus)).not.toEqual(layersOf(Look.mishap));
  });

  test('a stitch still to come is an outline, a made one is not', () => {
    for (const glyph of [Glyph.vee, Glyph.oval, Glyph.post] as const) {
      const { full, ghost } = GLYPHS[glyph];
      expect(ghost.length).toBeLessThan(full.length);
      expect(ghost.every((layer) => layer.fill === undefined || layer.fill === 'pale')).toBe(true);
      expect(full.some((layer) => layer.fill !== undefined && layer.fill !== 'pale')).toBe(true);
    }
  });
});
