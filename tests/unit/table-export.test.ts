import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Look, Tone } from '../../src/table/draw-list.ts';
import { mixInks } from '../../src/table/glyphs/inks.ts';
import { MOST_PICTURE_PX, pictureDensity, svgOf } from '../../src/table/painters/export.ts';
import { signShape } from '../../src/table/painters/signs.ts';
import { escapeXml } from '../../src/table/painters/svg-node.ts';
import { anyMoved, signsBetween } from '../../src/table/view/sign-motion.ts';
import { DARK, LIGHT } from '../../src/theme/theme.ts';
import { closeView, wholeView } from '../bench/browser/scenes.ts';

const inks = mixInks(LIGHT, LIGHT.yarns);

describe('a picture as SVG', () => {
  test('holds one use for every mark and one drawing for every kind', () => {
    const view = wholeView(20, 10);
    const svg = svgOf(view, inks, 'Panel');
    const marks = view.parts.reduce((sum, part) => sum + part.marks.count, 0);
    expect(svg.match(/<use /g)?.length).toBe(marks);
    const ids = [...svg.matchAll(/<g id="(c\d+)">/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.length).toBeLessThan(10);
    for (const [, id] of svg.matchAll(/href="#(c\d+)"/g)) expect(ids).toContain(id);
  });

  test('a large panel becomes ribbons, so the file stays small', () => {
    const view = wholeView(20_000, 15_000);
    expect(svgOf(view, inks, 'Panel').length).toBeLessThan(200_000);
  });

  test('a gap is drawn with a dashed outline', () => {
    const view = wholeView(20, 10);
    expect(svgOf(view, inks, 'Panel')).not.toContain('stroke-dasharray');
    view.parts[0]!.marks.look[4] = Look.gap;
    expect(svgOf(view, inks, 'Panel')).toContain('stroke-dasharray');
  });

  test('text from a person cannot become markup', () => {
    const view = closeView(30, 5);
    const text = '</text><script>x</script>"\'&\u0000';
    view.labels = [{ key: 'a', x: 5, y: 0, text, px: 14, tone: Tone.ink, align: 'left', plate: Tone.gap }];
    const svg = svgOf(view, inks, text);
    expect(svg).not.toContain('<script');
    expect(svg).not.toContain('\u0000');
    expect(svg).toContain('&lt;script&gt;');
    fc.assert(
      fc.property(fc.array(fc.nat(0x10ffff), { maxLength: 12 }), (codes) => {
        expect(escapeXml(String.fromCodePoint(...codes))).not.toMatch(/[<>"']/);
      }),
    );
  });

  test('colours follow theme and yarns', () => {
    const yarns = { front: '#123456', edging: '#654321', foundation: '#abcdef' };
    const view = wholeView(10, 5);
    expect(svgOf(view, mixInks(LIGHT, yarns), '')).toContain('#abcdef');
    expect(svgOf(view, mixInks(DARK, yarns), '')).toContain(DARK.raised);
  });

  test('no numbers go astray', () => {
    expect(svgOf(wholeView(58, 36), inks, 'Panel')).not.toMatch(/NaN|Infinity|undefined/);
    expect(svgOf(null, inks, 'None')).toContain('<svg');
  });
});

describe('a picture as PNG', () => {
  test.each([
    ['as asked', 1200, 800, 3600, 3],
    ['clamped by its width', 1200, 800, 99_999, MOST_PICTURE_PX / 1200],
    ['clamped by its height', 500, 5000, 4000, MOST_PICTURE_PX / 5000],
  ])('%s', (_name, width, height, widthPx, density) => {
    expect(pictureDensity(width, height, widthPx)).toBeCloseTo(density);
  });
});

describe('signs', () => {
  const frame = (x: number, angle = 0) =>
    ({ kind: 'frame', key: 'f', x, y: 0, w: 1, h: 3, angle, tone: Tone.ink }) as const;

  test('a frame encloses its place, a ring has its size in px at every zoom', () => {
    for (const px of [2, 10, 40]) {
      const [, outline] = signShape(frame(5), inks, px, inks.paper).strokes;
      const xs = Array.from(outline!.points).filter((_, index) => index % 2 === 0);
      expect(Math.min(...xs)).toBeCloseTo(4.5);
      expect(Math.max(...xs)).toBeCloseTo(5.5);
      const ring = { kind: 'ring', key: 'r', x: 5, y: 0, px: 16, tone: Tone.gap } as const;
      const [, circle] = signShape(ring, inks, px, inks.paper).strokes;
      const reach = Math.max(...Array.from(circle!.points).filter((_, index) => index % 2 === 0)) - 5;
      expect(reach * px).toBeCloseTo(16, 1);
    }
  });

  test('a ruler says its text in its middle, a flag beside its outer side', () => {
    const ruler = {
      kind: 'ruler',
      key: 'u',
      points: Float32Array.of(0, 0, 8, 0),
      tone: Tone.ink,
      text: '2 late',
    } as const;
    expect(signShape(ruler, inks, 20, inks.paper).words[0]).toMatchObject({ text: '2 late', x: 4, y: 0 });
    const flag = { kind: 'flag', key: 'g', x: 0, y: 0, angle: 0, text: '10', tone: Tone.marker } as const;
    expect(signShape(flag, inks, 20, inks.paper).words[0]!.dy).toBeLessThan(0);
    const turned = { ...flag, angle: Math.PI };
    expect(signShape(turned, inks, 20, inks.paper).words[0]!.dy).toBeGreaterThan(0);
  });

  test('a moving frame begins at the old place, ends at the new one and turns the short way', () => {
    const [from, to] = [[frame(0, 3)], [frame(4, -3)]];
    expect(signsBetween(from, to, 1)).toBe(to);
    expect(signsBetween(from, to, 0)[0]).toMatchObject({ x: 0, angle: 3 });
    const half = signsBetween(from, to, 0.5)[0] as ReturnType<typeof frame>;
    expect(half.x).toBe(2);
    expect(Math.abs(half.angle)).toBeGreaterThan(3);
    expect(anyMoved(from, to)).toBe(true);
    expect(anyMoved(from, from)).toBe(false);
    expect(anyMoved(from, [frame(0, 3)])).toBe(false);
    expect(anyMoved(from, [{ ...frame(0, 3), h: 4 }])).toBe(true);
  });
});
