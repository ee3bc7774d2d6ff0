/** A scene as SVG. Colours come from the style sheet (`stitch.css`), shapes from the scene. */
import { type SVGTemplateResult, svg } from 'lit-html';
import { type Point, smooth, straight } from './point.ts';
import { HIGH, type Item, type Scene, type Strand, type Tool, WIDE } from './scene.ts';
import { eyeOutline, hookOutline, needleOutline, place } from './tools.ts';

const VIEW = `0 0 ${WIDE} ${HIGH}`;

/** The items of a scene, farthest first, to be put into a picture of one's own. */
export const items = (scene: Scene): SVGTemplateResult[] => [...scene].sort((a, b) => a.z - b.z).map(draw);

/** The whole picture. `says` describes it for people who do not see it; decorative without. */
export function picture(scene: Scene, says?: string): SVGTemplateResult {
  return says === undefined
    ? svg`<svg class="stitch-drawing" viewBox=${VIEW} aria-hidden="true">${items(scene)}</svg>`
    : svg`<svg class="stitch-drawing" viewBox=${VIEW} role="img" aria-label=${says}>${items(scene)}</svg>`;
}

function draw(item: Item): SVGTemplateResult {
  switch (item.what) {
    case 'strand':
      return strand(item);
    case 'hook':
      return hook(item);
    case 'needle':
      return needle(item);
    case 'pin':
      return pin(item.tip, item.angle);
    case 'place':
      return svg`<circle class="place-halo" cx=${item.centre[0]} cy=${item.centre[1]} r=${item.radius}></circle
        ><circle class="place" cx=${item.centre[0]} cy=${item.centre[1]} r=${item.radius}></circle>`;
    case 'arrow':
      return arrow(item.points);
    case 'area': {
      const d = item.smooth === true ? smooth(item.points, true) : straight(item.points, true);
      return svg`<path class="area ${item.fill}" d=${d}></path>`;
    }
    case 'line':
      return svg`<path class="line ${item.broken ? 'broken' : ''}" d=${straight(item.points)}></path>`;
    case 'knot':
      return svg`<circle class="knot yarn-${item.yarn}" cx=${item.centre[0]} cy=${item.centre[1]} r="13"></circle>`;
    case 'words':
      return svg`<text class="words" x=${item.where[0]} y=${item.where[1]} font-size=${item.size}
        text-anchor=${item.align}>${item.words}</text>`;
  }
}

/** Yarn is three strokes: a dark edge, the body, and the light along its middle. */
function strand({ points, yarn, marked, faint, closed, round }: Strand): SVGTemplateResult {
  const d = smooth(points, closed);
  const look = `strand yarn-${yarn} ${marked === true ? 'marked' : ''} ${faint === true ? 'faint' : ''} ${round === true ? 'round' : ''}`;
  return svg`<g class=${look}>${marked === true ? svg`<path class="halo" d=${d}></path>` : ''}<path class="rim" d=${d}></path
    ><path class="body" d=${d}></path><path class="ply" d=${d}></path><path class="sheen" d=${d}></path></g>`;
}

/** Left-handed tools lean the other way: their lip is flipped, so that it still looks at the maker. */
const isFlipped = (angle: number): boolean => Math.abs((((angle % 360) + 360) % 360) - 180) < 90;

function hook({ tip, angle, length }: Tool): SVGTemplateResult {
  const flipped = isFlipped(angle);
  const outline = smoothCorners(place(hookOutline(length), tip, angle, flipped));
  const light = place(
    [
      [8, -5.5],
      [30, -6],
      [length, -6],
    ],
    tip,
    angle,
    flipped,
  );
  const rest = place(
    [
      [96, -SHADE],
      [150, -SHADE],
      [150, SHADE],
      [96, SHADE],
    ],
    tip,
    angle,
    flipped,
  );
  return svg`<g class="hook"><path class="tool" d=${outline}></path><path class="thumb-rest" d=${straight(rest, true)}></path
    ><path class="tool-light" d=${straight(light)}></path></g>`;
}

const SHADE = 5;

function needle({ tip, angle, length }: Tool): SVGTemplateResult {
  const flipped = isFlipped(angle);
  const outline = smooth(place(needleOutline(length), tip, angle, flipped), true);
  const eye = smooth(place(eyeOutline(length), tip, angle, flipped), true);
  return svg`<g class="needle"><path class="tool" d=${outline}></path><path class="eye" d=${eye}></path></g>`;
}

function pin(tip: Point, angle: number): SVGTemplateResult {
  const ends = place(
    [
      [0, 0],
      [64, 0],
    ],
    tip,
    angle,
    false,
  );
  const [head] = place([[66, 0]], tip, angle, false);
  return svg`<g class="pin"><path class="pin-shaft" d=${straight(ends)}></path
    ><circle class="pin-head" cx=${head?.[0] ?? 0} cy=${head?.[1] ?? 0} r="8"></circle></g>`;
}

function arrow(points: readonly Point[]): SVGTemplateResult {
  const end = points.at(-1);
  const before = points.at(-2);
  if (end === undefined || before === undefined) return svg``;
  const angle = (Math.atan2(end[1] - before[1], end[0] - before[0]) * 180) / Math.PI;
  const head = place(
    [
      [-17, -10],
      [2, 0],
      [-17, 10],
    ],
    end,
    angle,
    false,
  );
  return svg`<g class="arrow"><path class="arrow-halo" d=${smooth(points)}></path><path class="arrow-halo" d=${straight(head)}></path
    ><path class="arrow-line" d=${smooth(points)}></path><path class="arrow-line" d=${straight(head)}></path></g>`;
}

/** The hook's outline keeps its straight shaft: smooth round the head, straight along the handle. */
function smoothCorners(points: readonly Point[]): string {
  const round = [...points.slice(8), ...points.slice(0, 5)];
  const shaft = points.slice(5, 7);
  return `${smooth(round)}L${shaft.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}Z`;
}
