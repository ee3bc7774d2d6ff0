/** A picture of an edge whose count is known: yarn, fuzz, colour and light, what is behind it, and the camera. */
import { addNoise, blur, jpeg, type Plane } from './camera.ts';
import { type Chance, chanceOf } from './chance.ts';
import { type Difficulty, difficulties, everyDifficulty } from './difficulty.ts';
import { drawEdge, type Look, lookOf, type Point, type Strand } from './edge.ts';

export type Picture = {
  width: number;
  height: number;
  /** RGBA, a byte each, row by row. */
  data: Uint8ClampedArray;
  /** The middle of every V, in the order of the edge, in pixels. Its length is the count. */
  vees: Point[];
  look: Look;
};

/** @param seed a whole number; the same one gives the same picture */
export function renderEdge(difficulty: Difficulty, seed: number): Picture {
  const chance = chanceOf(seed * 7919 + everyDifficulty.indexOf(difficulty) * 104729);
  const look = lookOf(difficulties[difficulty], chance);
  const { strands, vees, length } = drawEdge(look, chance);
  const see = camera(look, length);
  const margin = Math.ceil(look.pitch * 3);
  const seen = vees.map(see);
  const top = Math.floor(Math.min(...seen.map(({ y }) => y))) - margin;
  const width = Math.ceil(see({ x: length, y: 0 }).x);
  const height = Math.ceil(Math.max(...seen.map(({ y }) => y)) - top) + margin * 2;
  const at = (point: Point): Point & { scale: number } => {
    const { x, y, scale } = see(point);
    return { x, y: y - top, scale };
  };
  const plane = background({ width, height }, look, chance);
  const yarn = new Uint8Array(width * height);
  const canvas: Canvas = { plane, yarn, depth: new Float32Array(width * height).fill(-1e9), at };
  for (const strand of strands) paintStrand(canvas, strand, look);
  const hairs = Math.round(look.fuzz * look.count);
  for (let i = 0; i < hairs; i++)
    paintHair(canvas, vees[chance.whole([0, vees.length - 1])] ?? { x: 0, y: 0 }, look, chance);
  fallOff(plane, look, chance);
  blur(plane, look.blur);
  addNoise(plane, look.noise, chance);
  for (let i = 0; i < plane.light.length; i++)
    plane.light[i] = Math.min(255, Math.max(0, plane.light[i] ?? 0));
  jpeg(plane, look.jpeg);
  return {
    width,
    height,
    data: coloured(plane, yarn, chance),
    vees: vees.map(at).map(({ x, y }) => ({ x, y })),
    look,
  };
}

type Canvas = {
  plane: Plane;
  /** 1 where yarn is. */
  yarn: Uint8Array;
  depth: Float32Array;
  at(point: Point): Point & { scale: number };
};

/** From the plane of the work to the picture: the far end, on the right, is smaller. */
function camera(look: Look, length: number): (point: Point) => Point & { scale: number } {
  return ({ x, y }) => {
    const scale = 1 / (1 + ((look.perspective - 1) * x) / length);
    return { x: x * scale, y: y * scale, scale };
  };
}

/** Two gratings and a grain: boards, or a cloth. */
function background(size: { width: number; height: number }, look: Look, chance: Chance): Plane {
  const { width, height } = size;
  const light = new Float32Array(width * height);
  const own = chance.between([60, 210]);
  const waves = [0, 1].map(() => {
    const angle = chance.between([0, Math.PI]);
    const long = look.pitch * chance.between([0.5, 3]);
    return { x: Math.cos(angle) / long, y: Math.sin(angle) / long };
  });
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const pattern = waves.reduce((sum, wave) => sum + Math.sin(2 * Math.PI * (wave.x * x + wave.y * y)), 0);
      light[y * width + x] = own * (1 + 0.2 * look.ground * pattern);
    }
  return { width, height, light };
}

/** A strand as a round rope, lit from the upper left, with the twist of its plies. */
function paintStrand({ plane, yarn, depth, at }: Canvas, strand: Strand, look: Look): void {
  const path = strand.points.flatMap((from, i) => {
    const to = strand.points[i + 1];
    return to
      ? smoothed(strand.points, i, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) * 1.6) + 2)
      : [];
  });
  const { radius } = strand;
  path.forEach((here, k) => {
    const next = path[k + 1] ?? here;
    const before = path[k - 1] ?? here;
    const long = Math.hypot(next.x - before.x, next.y - before.y) || 1;
    const nx = -(next.y - before.y) / long;
    const ny = (next.x - before.x) / long;
    const steps = Math.ceil(radius * 1.6);
    for (let s = -steps; s <= steps; s++) {
      const across = s / steps;
      const up = Math.sqrt(1 - across * across);
      const { x, y } = at({ x: here.x + nx * across * radius, y: here.y + ny * across * radius });
      const pixel = Math.round(y) * plane.width + Math.round(x);
      const isOut = x < 0 || y < 0 || Math.round(x) >= plane.width || Math.round(y) >= plane.height;
      const z = here.z + up * radius;
      if (isOut || z < (depth[pixel] ?? 0)) continue;
      depth[pixel] = z;
      yarn[pixel] = 1;
      const lit = 0.72 * up + 0.45 * across * (-0.5 * nx - 0.85 * ny);
      const ply = 0.12 * Math.sin((k / (radius * 1.1)) * 2.2 + across * 2.6);
      const hollow = Math.min(0, here.z / look.pitch) * 0.6;
      plane.light[pixel] =
        255 * look.yarn * strand.light * (1 - look.relief + look.relief * (lit + ply + hollow + 0.25));
    }
  });
}

/** A piece of a curve through the points (Catmull–Rom), from point i to the next. */
function smoothed(points: Strand['points'], i: number, steps: number): Strand['points'] {
  const [a, b, c, d] = [i - 1, i, i + 1, i + 2].map(
    (k) => points[Math.min(points.length - 1, Math.max(0, k))],
  ) as [
    Strand['points'][number],
    Strand['points'][number],
    Strand['points'][number],
    Strand['points'][number],
  ];
  return Array.from({ length: steps }, (_, k) => {
    const t = k / steps;
    const mix = (name: 'x' | 'y' | 'z'): number =>
      b[name] +
      0.5 *
        t *
        (c[name] -
          a[name] +
          t *
            (2 * a[name] -
              5 * b[name] +
              4 * c[name] -
              d[name] +
              t * (3 * (b[name] - c[name]) + d[name] - a[name])));
    return { x: mix('x'), y: mix('y'), z: mix('z') };
  });
}

function paintHair({ plane, at }: Canvas, near: Point, look: Look, chance: Chance): void {
  let { x, y } = {
    x: near.x + look.pitch * chance.normal() * 0.6,
    y: near.y + look.pitch * chance.normal() * 0.6,
  };
  let way = chance.between([0, 2 * Math.PI]);
  const light = 255 * look.yarn * chance.between([0.6, 1.2]);
  for (let k = 0; k < look.pitch * 0.9; k++) {
    way += 0.15 * chance.normal();
    x += Math.cos(way);
    y += Math.sin(way);
    const seen = at({ x, y });
    const pixel = Math.round(seen.y) * plane.width + Math.round(seen.x);
    if (seen.x < 0 || seen.y < 0 || seen.x >= plane.width - 1 || seen.y >= plane.height - 1) continue;
    plane.light[pixel] = 0.55 * (plane.light[pixel] ?? 0) + 0.45 * light;
  }
}

/** Light from one side, and the shadow of something beside the work. */
function fallOff(plane: Plane, look: Look, chance: Chance): void {
  const angle = chance.between([0, 2 * Math.PI]);
  const shadow = {
    x: plane.width * chance.next(),
    y: plane.height * chance.next(),
    wide: plane.width * chance.between([0.1, 0.3]),
  };
  for (let y = 0; y < plane.height; y++)
    for (let x = 0; x < plane.width; x++) {
      const lie =
        (Math.cos(angle) * (x / plane.width - 0.5) + Math.sin(angle) * (y / plane.height - 0.5)) * look.shade;
      const far = ((x - shadow.x) ** 2 + (y - shadow.y) ** 2) / shadow.wide ** 2;
      const pixel = y * plane.width + x;
      plane.light[pixel] = (plane.light[pixel] ?? 0) * (1 + lie) * (1 - 0.5 * look.shade * Math.exp(-far));
    }
}

/** Yarn and ground each in a colour of its own. */
function coloured({ light, width, height }: Plane, yarn: Uint8Array, chance: Chance): Uint8ClampedArray {
  const data = new Uint8ClampedArray(width * height * 4);
  const tints = [0, 1].map(() => [0, 1, 2].map(() => chance.between([0.75, 1.2])));
  for (let i = 0; i < light.length; i++) {
    const tint = tints[yarn[i] ?? 0] ?? [];
    for (let channel = 0; channel < 3; channel++)
      data[i * 4 + channel] = (light[i] ?? 0) * (tint[channel] ?? 1);
    data[i * 4 + 3] = 255;
  }
  return data;
}
