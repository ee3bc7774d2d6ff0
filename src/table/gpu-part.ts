/**
 * One part on the GPU. Only chunks that show are held; a step re-sends the chunks between the old and the
 * new place and nothing else.
 */
import { Container, Particle, type ParticleContainer } from 'pixi.js';
import type { Atlas } from './atlas.ts';
import { type Camera, overlaps, type Rect, shownBox } from './camera.ts';
import type { Detail } from './cells.ts';
import { type Chunk, chunksOf, chunksWithin } from './chunks.ts';
import {
  atLeast,
  LEAST_CORNER_PX,
  LEAST_TELLING_PX,
  type Level,
  levelOf,
  showsAt,
  tellingMarks,
} from './detail.ts';
import type { Part } from './draw-list.ts';
import { fillLines, lineContainer } from './gpu-lines.ts';
import type { Inks } from './inks.ts';
import { type Growth, growthScale } from './painter.ts';
import { ribbonStrokes, tickStrokes } from './ribbons.ts';
import { stampOf } from './stamps.ts';

/** Particles of some marks, and which: by chunk, or those that stay on a ribbon. */
type Held = { container: ParticleContainer; indices: readonly number[] | null; first: number; count: number };

export type PartOnGpu = {
  container: Container;
  part: Part;
  chunks: Chunk[];
  level: Level | 'hidden';
  px: number;
  held: Map<number, Held>;
  telling: ReturnType<typeof tellingMarks>;
  generation: number;
  growth: Growth | null;
};

/** Chunks kept beyond those that show, so that going back and forth builds nothing. */
const SPARE_CHUNKS = 24;
/** Chunks are held this far outside the view, in CSS px. */
const MARGIN_PX = 200;

/** Makes the holder of a part; nothing is built before `showPart`. */
export function holdPart(part: Part): PartOnGpu {
  return {
    container: new Container(),
    part,
    chunks: chunksOf(part.marks),
    level: 'hidden',
    px: 0,
    held: new Map(),
    telling: tellingMarks(part.marks),
    generation: -1,
    growth: null,
  };
}

/** Brings the part up to date for a view: builds what has come into sight, changes what was made since. */
export function showPart(
  holder: PartOnGpu,
  part: Part,
  camera: Camera,
  region: Rect,
  atlas: Atlas,
  inks: Inks,
  growth: Growth | null,
): void {
  const before = holder.part.made;
  holder.part = part;
  const box = shownBox(camera, region, MARGIN_PX);
  const inSight = showsAt(part, camera.px) && overlaps(part.bounds, box);
  holder.container.visible = inSight;
  if (!inSight) {
    // What changed unseen is built anew when it shows again.
    if (before !== part.made) drop(holder);
    return;
  }
  const level = levelOf(part, camera.px);
  const resized = level === 'ribbon' && holder.px !== camera.px;
  if (holder.level !== level || holder.generation !== atlas.generation() || resized) drop(holder);
  holder.level = level;
  holder.px = camera.px;
  holder.generation = atlas.generation();
  if (level === 'ribbon') {
    if (before !== part.made) drop(holder);
    if (holder.held.size === 0) buildRibbons(holder, atlas, inks, camera.px);
    return;
  }
  if (before !== part.made)
    change(holder, Math.min(before, part.made), Math.max(before, part.made), atlas, level);
  holdChunks(holder, chunksWithin(holder.chunks, box), atlas, level);
  grow(holder, growth, atlas, level);
}

/** Lets everything go that the part holds. */
export function drop(holder: PartOnGpu): void {
  for (const held of holder.held.values()) held.container.destroy();
  holder.held.clear();
  holder.growth = null;
}

function particleContainer(holder: PartOnGpu, x: number, y: number): ParticleContainer {
  const container = lineContainer();
  container.position.set(x, y);
  holder.container.addChild(container);
  return container;
}

function holdChunks(holder: PartOnGpu, wanted: number[], atlas: Atlas, detail: Detail): void {
  for (const number of wanted) {
    if (!holder.held.has(number)) holder.held.set(number, buildChunk(holder, number, atlas, detail));
  }
  if (holder.held.size <= wanted.length + SPARE_CHUNKS) return;
  const keep = new Set(wanted);
  for (const [number, held] of holder.held) {
    if (keep.has(number)) continue;
    held.container.destroy();
    holder.held.delete(number);
  }
}

function buildChunk(holder: PartOnGpu, number: number, atlas: Atlas, detail: Detail): Held {
  const { first, count, bounds } = holder.chunks[number]!;
  // Places are kept relative to the chunk: far from the middle, single precision would make them tremble.
  const container = particleContainer(holder, bounds.x0, bounds.y0);
  const particles: Particle[] = [];
  for (let index = first; index < first + count; index++) {
    const particle = new Particle({ texture: atlas.shape('box').texture });
    setParticle(particle, holder.part, index, atlas, detail, 1, bounds.x0, bounds.y0);
    particles.push(particle);
  }
  container.particleChildren = particles;
  container.texture = particles[0]!.texture;
  container.update();
  return { container, indices: null, first, count };
}

function setParticle(
  particle: Particle,
  part: Part,
  index: number,
  atlas: Atlas,
  detail: Detail,
  swell: number,
  originX: number,
  originY: number,
): void {
  const stamp = stampOf(part, index, detail, swell);
  const cell = atlas.cell(stamp.cell);
  particle.texture = cell.texture;
  particle.anchorX = cell.anchorX;
  particle.anchorY = cell.anchorY;
  particle.x = stamp.x - originX;
  particle.y = stamp.y - originY;
  particle.rotation = stamp.angle;
  particle.scaleX = stamp.sx / cell.unit;
  particle.scaleY = stamp.sy / cell.unit;
}

/** Sets the marks `from` … `to` (exclusive) anew where they are held. */
function change(holder: PartOnGpu, from: number, to: number, atlas: Atlas, detail: Detail, swell = 1): void {
  for (const held of holder.held.values()) {
    const first = Math.max(from, held.first);
    const end = Math.min(to, held.first + held.count);
    if (first >= end) continue;
    const { x, y } = held.container.position;
    for (let index = first; index < end; index++) {
      const particle = held.container.particleChildren[index - held.first] as Particle;
      setParticle(particle, holder.part, index, atlas, detail, swell, x, y);
    }
    held.container.update();
  }
}

/** Lets new marks grow, and sets those right that have stopped. */
function grow(holder: PartOnGpu, growth: Growth | null, atlas: Atlas, detail: Detail): void {
  const last = holder.growth;
  if (last !== null && last !== growth) change(holder, last.from, last.to, atlas, detail);
  if (growth !== null) change(holder, growth.from, growth.to, atlas, detail, growthScale(growth.share));
  holder.growth = growth;
}

/** Keys of `held` on a ribbon; chunks are numbered from 0. */
const RIBBON = -1;
const TELLING = -2;
const CORNERS = -3;

function buildRibbons(holder: PartOnGpu, atlas: Atlas, inks: Inks, px: number): void {
  const { x0, y0 } = holder.part.bounds;
  const lines = particleContainer(holder, x0, y0);
  const strokes = [...ribbonStrokes(holder.part, inks, px), ...tickStrokes(holder.part, inks, px)];
  fillLines(lines, strokes, atlas, px, x0, y0);
  holder.held.set(RIBBON, { container: lines, indices: [], first: 0, count: 0 });
  const put = (key: number, indices: readonly number[], leastPx: number) => {
    if (indices.length === 0) return;
    const container = particleContainer(holder, x0, y0);
    const swell = atLeast(leastPx, px);
    container.particleChildren = indices.map((index) => {
      const particle = new Particle({ texture: atlas.shape('box').texture });
      setParticle(particle, holder.part, index, atlas, 'small', swell, x0, y0);
      return particle;
    });
    container.texture = atlas.shape('box').texture;
    container.update();
    holder.held.set(key, { container, indices, first: 0, count: 0 });
  };
  put(CORNERS, holder.telling.corners, LEAST_CORNER_PX);
  put(TELLING, holder.telling.looks, LEAST_TELLING_PX);
}
