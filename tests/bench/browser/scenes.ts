/** Made-up scenes for looking at the table and for timing it: two rounds of a rectangle, and a close-up. */
import {
  type Box,
  Glyph,
  type Marks,
  type Part,
  type Scene,
  type SceneView,
  Tone,
} from '../../../src/table/draw-list.ts';

export function emptyMarks(count: number): Marks {
  return {
    count,
    x: new Float32Array(count),
    y: new Float32Array(count),
    angle: new Float32Array(count),
    scale: new Float32Array(count).fill(1),
    glyph: new Uint8Array(count),
    tone: new Uint8Array(count),
    look: new Uint8Array(count),
  };
}

type RoundOptions = {
  key: string;
  wide: number;
  high: number;
  inset: number;
  tone: number;
  layer: number;
  posts?: boolean;
};

/** Marks around a rectangle of `wide` × `high` stitches, anticlockwise as a right hand works it, corners of two chains. */
export function rectangleRound({ key, wide, high, inset, tone, layer, posts = false }: RoundOptions): Part {
  const sides = [wide, high, wide, high];
  const corner = posts ? 0 : 2;
  const marks = emptyMarks(2 * (wide + high) + 4 * corner);
  const [halfWidth, halfHeight] = [wide / 2 + 1 - inset, high / 2 + 1 - inset];
  // Along the bottom to the right, up, along the top to the left, down: outer side to the right of the way.
  const starts = [
    [-halfWidth, halfHeight, 0],
    [halfWidth, halfHeight, -Math.PI / 2],
    [halfWidth, -halfHeight, Math.PI],
    [-halfWidth, -halfHeight, Math.PI / 2],
  ] as const;
  const lengths = [2 * halfWidth, 2 * halfHeight, 2 * halfWidth, 2 * halfHeight];
  const points: number[] = [];
  let index = 0;
  for (const [side, [x, y, angle]] of starts.entries()) {
    points.push(x, y);
    const length = lengths[side]!;
    const places = sides[side]!;
    for (let place = 0; place < places + corner; place++) {
      const chain = place >= places;
      const first = posts ? 1.2 : 1.2;
      const along = chain
        ? length - 0.55 + (place - places) * 0.75
        : first + ((length - 2 * first) * (place + 0.5)) / places;
      const turned = chain && place > places ? Math.PI / 4 : 0;
      marks.x[index] = x + Math.cos(angle) * along;
      marks.y[index] = y + Math.sin(angle) * along;
      marks.angle[index] = posts ? angle + Math.PI : angle - turned;
      marks.glyph[index] = posts ? Glyph.post : chain ? Glyph.oval : Glyph.vee;
      marks.scale[index] = posts ? 1.5 : 1;
      marks.tone[index] = tone;
      index++;
    }
  }
  points.push(points[0]!, points[1]!);
  return {
    key,
    revision: 1,
    bounds: { x0: -halfWidth - 1, y0: -halfHeight - 1, x1: halfWidth + 1, y1: halfHeight + 1 },
    marks,
    ribbons: [
      {
        points: Float32Array.from(points),
        width: posts ? 1.3 : 0.85,
        tone: tone as 0,
        firstMark: 0,
        markCount: marks.count,
      },
    ],
    made: marks.count,
    layer,
    solid: true,
  };
}

/** A whole view: front round, edging and foundation, `wide` × `high` stitches. */
export function wholeView(wide: number, high: number): SceneView {
  const front = rectangleRound({ key: 'front', wide, high, inset: 0, tone: Tone.front, layer: 2 });
  const edging = rectangleRound({ key: 'edging', wide, high, inset: 2, tone: Tone.edging, layer: 1 });
  const foundation = rectangleRound({
    key: 'foundation',
    wide: wide - 2,
    high: high - 2,
    inset: 2.4,
    tone: Tone.foundation,
    layer: 0,
    posts: true,
  });
  return {
    id: 'whole',
    bounds: front.bounds,
    parts: [front, edging, foundation],
    labels: [],
    signs: [],
  };
}

/** A lane of marks along x from 0. */
export function lane(key: string, length: number, y: number, glyph: number, tone: number, scale = 1): Part {
  const marks = emptyMarks(length);
  for (let index = 0; index < length; index++) {
    marks.x[index] = index;
    marks.y[index] = y;
    marks.glyph[index] = glyph;
    marks.tone[index] = tone;
    marks.scale[index] = scale;
  }
  const bounds: Box = { x0: -1, y0: y - 1, x1: length, y1: y + scale + 1 };
  return { key, revision: 1, bounds, marks, ribbons: [], made: length, layer: 1, solid: true };
}

/** A close-up: two lanes, bars between, posts below. */
export function closeView(length: number, at: number): SceneView {
  const front = lane('front-lane', length, 0, Glyph.vee, Tone.front);
  const bars = lane('bars', length, 0.5, Glyph.bar, Tone.ink, 0.95);
  const back = lane('edging-lane', length, 2, Glyph.vee, Tone.edging);
  const posts = lane('posts', length, 2.42, Glyph.post, Tone.foundation, 1.5);
  posts.layer = 0;
  bars.made = at;
  return {
    id: 'close',
    bounds: { x0: -1, y0: -2.2, x1: length, y1: 4.6 },
    centre: { x: at, y: 1.4 },
    px: 30,
    parts: [front, bars, back, posts],
    labels: [],
    signs: [],
  };
}

export const scene = (...views: SceneView[]): Scene => ({ views });
