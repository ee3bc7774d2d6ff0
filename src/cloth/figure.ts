/**
 * A drawing as plain shapes in mm, shown in the page and written as a file of true size.
 *
 * Rule: what a shape stands for decides its colours: by the page's styles on the page, by the light theme and the
 * maker's yarns in a file, which is read on paper.
 */
import { type SVGTemplateResult, svg } from 'lit-html';
import { LIGHT, type Yarns } from '../theme/theme.ts';

/** What a shape stands for; its class on the page is `picture-…`. */
export type Ink =
  | 'cloth'
  | 'piece'
  | 'outline'
  | 'strip'
  | 'edging'
  | 'base'
  | 'seam'
  | 'pin'
  | 'pin-head'
  | 'length'
  | 'word';

export type Words = { ink: 'length' | 'word'; size: number; text: string };

/** Lengths in mm. A path with an inner edge is a band between both. */
export type Shape =
  | { kind: 'path'; ink: Ink; d: string; width?: number; dash?: readonly [number, number] }
  | { kind: 'dot'; ink: Ink; x: number; y: number; r: number }
  | ({ kind: 'words'; x: number; y: number; then?: Words } & Words);

/** `box`: left, top, width, height. `says`: what it shows, in words. */
export type Figure = {
  box: readonly [number, number, number, number];
  says: string;
  shapes: readonly Shape[];
};

export function showFigure({ box, says, shapes }: Figure): SVGTemplateResult {
  return svg`<svg class="cloth-picture" viewBox=${box.join(' ')} role="img" aria-label=${says}>${shapes.map(showShape)}</svg>`;
}

function showShape(shape: Shape): SVGTemplateResult {
  const { ink } = shape;
  if (shape.kind === 'dot')
    return svg`<circle class="picture-${ink}" cx=${shape.x} cy=${shape.y} r=${shape.r}/>`;
  if (shape.kind === 'path')
    return svg`<path class="picture-${ink}" fill-rule="evenodd" d=${shape.d} stroke-width=${shape.width ?? 0} stroke-dasharray=${shape.dash?.join(' ') ?? 'none'}/>`;
  const { x, y, size, text, then } = shape;
  return svg`<text class="picture-${ink}" x=${x} y=${y} font-size=${size}>${text}${then ? svg` <tspan class="picture-${then.ink}" font-size=${then.size}>${then.text}</tspan>` : ''}</text>`;
}

const ENTITIES: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => ENTITIES[sign] ?? sign);
const rounded = (value: number): string => `${Math.round(value * 1000) / 1000}`;

type Paint = { fill: string; stroke?: string; opacity?: number; weight?: number };

const paints = ({ edging, foundation }: Yarns): Record<Ink, Paint> => ({
  cloth: { fill: LIGHT.paper },
  piece: { fill: LIGHT.well, stroke: LIGHT.ink },
  outline: { fill: 'none', stroke: LIGHT.ink },
  strip: { fill: foundation, opacity: 0.55 },
  edging: { fill: edging, opacity: 0.75 },
  base: { fill: 'none', stroke: LIGHT.ink },
  seam: { fill: 'none', stroke: LIGHT.ink },
  pin: { fill: 'none', stroke: LIGHT.marker },
  'pin-head': { fill: LIGHT.marker },
  length: { fill: LIGHT.ink, weight: 600 },
  word: { fill: LIGHT.muted },
});

/** The drawing as an SVG file: 1 mm of it is 1 mm of the cloth. `title` is told by whoever reads the file aloud. */
export function writeFigure({ box, says, shapes }: Figure, title: string, yarns: Yarns): string {
  const paint = paints(yarns);
  const [left, top, width, height] = box.map(rounded) as [string, string, string, string];
  const head = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${left} ${top} ${width} ${height}" width="${width}mm" height="${height}mm" font-family="sans-serif" text-anchor="middle" stroke-linecap="round">`;
  const ground = `<rect x="${left}" y="${top}" width="${width}" height="${height}" fill="${LIGHT.raised}"/>`;
  const body = shapes.map((shape) => writeShape(shape, paint));
  return `${[head, `<title>${escaped(title)}</title>`, `<desc>${escaped(says)}</desc>`, ground, ...body, '</svg>'].join('\n')}\n`;
}

function writeShape(shape: Shape, paint: Record<Ink, Paint>): string {
  const { fill, stroke, opacity, weight } = paint[shape.ink];
  const look = `class="${shape.ink}" fill="${fill}"${opacity === undefined ? '' : ` opacity="${opacity}"`}`;
  if (shape.kind === 'dot')
    return `<circle cx="${rounded(shape.x)}" cy="${rounded(shape.y)}" r="${rounded(shape.r)}" ${look}/>`;
  if (shape.kind === 'path') {
    const { d, width = 0, dash } = shape;
    const line =
      stroke === undefined || width === 0
        ? ''
        : ` stroke="${stroke}" stroke-width="${rounded(width)}"${dash ? ` stroke-dasharray="${dash.map(rounded).join(' ')}"` : ''}`;
    return `<path fill-rule="evenodd" d="${d}" ${look}${line}/>`;
  }
  const { x, y, size, text, then } = shape;
  const more = then
    ? ` <tspan font-size="${rounded(then.size)}" font-weight="400" fill="${paint[then.ink].fill}">${escaped(then.text)}</tspan>`
    : '';
  // Moved down by a third of its height: not every reader of such files knows a middle line.
  return `<text x="${rounded(x)}" y="${rounded(y + size * 0.35)}" font-size="${rounded(size)}" font-weight="${weight ?? 400}" ${look}>${escaped(text)}${more}</text>`;
}
