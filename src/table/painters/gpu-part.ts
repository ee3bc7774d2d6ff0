/**
 * One part on the GPU. Only chunks that show are held; a step re-sends the chunks between the old and the
 * new place and nothing else.
 */
import { Container, Particle, type ParticleContainer, type PointData } from 'pixi.js';
import type { Box, Part } from '../draw-list.ts';
import type { Atlas } from '../glyphs/atlas.ts';
import type { Detail } from '../glyphs/cells.ts';
import type { Inks } from '../glyphs/inks.ts';
import { stampOf } from '../glyphs/stamps.ts';
import { overlaps, shownBox } from '../view/camera.ts';
import {
  type Level,
  levelOf,
  showsAt,
  sizeStep,
  swellOf,
  type Telling,
  tellingMarks,
} from '../view/detail.ts';
import { chunksOf, chunksWithin } from './chunks.ts';
import { fillLines } from './gpu-lines.ts';
import type { LineTexture } from './line-texture.ts';
import { type Growth, growthScale, type ViewFrame } from './painter.ts';
import type { Pool } from './pool.ts';
import { ribbonStrokes, tickStrokes } from './ribbons.ts';
import type { Stroke } from './strokes.ts';

/** What parts are drawn with. */
export type Tools = { atlas: Atlas; lines: LineTexture; pool: Pool; inks: Inks; density: number };

/** Particles of the marks `first` … `first + count`. */
type Held = { container: ParticleContainer; first: number; count: number };

export type PartOnGpu = {
  container: Container;
  part: Part;
  /** Chunks by number; on a ribbon the lines and the marks that stay on it, under keys below 0. */
  held: Map<number, Held>;
  telling: Telling;
  /** What `held` was built for: anything else here, and it is built anew. */
  built: { level: Level; px: number; step: number; generation: number } | null;
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
    held: new Map(),
    telling: tellingMarks(part.marks),
    built: null,
    growth: null,
  };
}

/** Brings the part up to date for a view: builds what has come into sight, changes what was made since. */
export function showPart(holder: PartOnGpu, part: Part, frame: ViewFrame, tools: Tools): void {
  const { px } = frame.camera;
  const before = holder.part.made;
  holder.part = part;
  const box = shownBox(frame, MARGIN_PX);
  const inSight = showsAt(part, px) && overlaps(part.bounds, box);
  holder.container.visible = inSight;
  // What changed unseen is built anew when it shows again.
  if (!inSight && before !== part.made) drop(holder, tools.pool);
  if (!inSight) return;
  const level = levelOf(part, px, tools.density);
  if (!isBuiltFor(holder, level, px, tools)) drop(holder, tools.pool);
  holder.built ??= { level, px, step: stepAt(holder, level, px), generation: tools.atlas.generation() };
  if (level === 'ribbon') {
    if (holder.held.size === 0) buildRibbons(holder, tools);
    else if (before !== part.made) changeRibbons(holder, before, tools);
    return;
  }
  if (before !== part.made) change(holder, spanOf(before, part.made), tools);
  holdChunks(holder, chunksWithin(chunksOf(part.marks), box), tools);
  grow(holder, frame.growth?.part === part.key ? frame.growth : null, tools);
}

/** Lets everything go that the part holds. */
export function drop(holder: PartOnGpu, pool: Pool): void {
  for (const held of holder.held.values()) pool.give(held.container);
  holder.held.clear();
  holder.built = null;
  holder.growth = null;
}

/** Zooming need not place anything anew where no mark changes its size; a ribbon is built anew all the same. */
const stepAt = ({ telling }: PartOnGpu, level: Level, px: number): number =>
  level !== 'ribbon' && telling.looks.length === 0 ? Infinity : sizeStep(px);

function isBuiltFor(holder: PartOnGpu, level: Level, px: number, { atlas }: Tools): boolean {
  const { built } = holder;
  if (built === null) return true;
  if (built.level !== level || built.generation !== atlas.generation()) return false;
  return level === 'ribbon' ? built.px === px : built.step === stepAt(holder, level, px);
}

// --- Marks -----------------------------------------------------------------------------------------

/** The marks `from` … `to`, the last not included. */
type MarkSpan = { from: number; to: number };

/** The marks made or taken back between two places of the walk. */
const spanOf = (before: number, now: number): MarkSpan => ({
  from: Math.min(before, now),
  to: Math.max(before, now),
});

/** What is the same for every mark of a part that is placed now. */
type Rendering = { part: Part; detail: Detail; step: number; onRibbon: boolean; grown: number; atlas: Atlas };

function renderingOf({ part, built }: PartOnGpu, { atlas }: Tools, grown = 1): Rendering {
  const { level, step } = built!;
  const onRibbon = level === 'ribbon';
  return { part, detail: onRibbon ? 'small' : level, step, onRibbon, grown, atlas };
}

/** Places a mark, counted from an origin: far out, single precision would tremble. */
function setParticle(particle: Particle, index: number, origin: PointData, rendering: Rendering): void {
  const { part, step, onRibbon, grown, atlas } = rendering;
  const swell = swellOf(part.marks, index, step, onRibbon) * grown;
  const stamp = stampOf(part, index, rendering.detail, swell);
  const cell = atlas.cell(stamp.cell);
  particle.texture = cell.texture;
  particle.anchorX = cell.anchorX;
  particle.anchorY = cell.anchorY;
  particle.x = stamp.x - origin.x;
  particle.y = stamp.y - origin.y;
  particle.rotation = stamp.angle;
  particle.scaleX = stamp.sx / cell.unit;
  particle.scaleY = stamp.sy / cell.unit;
}

/** Particles for some marks, counted from the corner of their bounds. */
function putMarks(
  holder: PartOnGpu,
  indices: readonly number[],
  { x0, y0 }: Box,
  tools: Tools,
): ParticleContainer {
  const container = tools.pool.take();
  const origin = { x: x0, y: y0 };
  const rendering = renderingOf(holder, tools);
  container.position.set(x0, y0);
  container.particleChildren = indices.map((index) => {
    const particle = new Particle(tools.lines.blank);
    setParticle(particle, index, origin, rendering);
    return particle;
  });
  container.texture = container.particleChildren[0]!.texture;
  container.update();
  holder.container.addChild(container);
  return container;
}

// --- Chunks ----------------------------------------------------------------------------------------

function holdChunks(holder: PartOnGpu, wanted: number[], tools: Tools): void {
  for (const number of wanted) {
    if (!holder.held.has(number)) holder.held.set(number, buildChunk(holder, number, tools));
  }
  if (holder.held.size <= wanted.length + SPARE_CHUNKS) return;
  const keep = new Set(wanted);
  for (const [number, held] of holder.held) {
    if (keep.has(number)) continue;
    tools.pool.give(held.container);
    holder.held.delete(number);
  }
}

function buildChunk(holder: PartOnGpu, number: number, tools: Tools): Held {
  const { first, count, bounds } = chunksOf(holder.part.marks)[number]!;
  const indices = Array.from({ length: count }, (_, index) => first + index);
  return { container: putMarks(holder, indices, bounds, tools), first, count };
}

/** Sets marks anew where they are held. */
function change(holder: PartOnGpu, { from, to }: MarkSpan, tools: Tools, grown = 1): void {
  const rendering = renderingOf(holder, tools, grown);
  for (const { container, first, count } of holder.held.values()) {
    const begin = Math.max(from, first);
    const end = Math.min(to, first + count);
    if (begin >= end) continue;
    for (let index = begin; index < end; index++) {
      const particle = container.particleChildren[index - first] as Particle;
      setParticle(particle, index, container.position, rendering);
    }
    container.update();
  }
}

/** Lets new marks grow, and sets those right that have stopped. */
function grow(holder: PartOnGpu, growth: Growth | null, tools: Tools): void {
  const last = holder.growth;
  const stopped = last !== null && (growth === null || growth.from !== last.from || growth.to !== last.to);
  if (stopped) change(holder, last, tools);
  if (growth !== null) change(holder, growth, tools, growthScale(growth.share));
  holder.growth = growth;
}

// --- Ribbons ---------------------------------------------------------------------------------------

const BAND = -1;
const TICKS = -2;
const CORNERS = -3;
const LOOKS = -4;

function buildRibbons(holder: PartOnGpu, tools: Tools): void {
  const { part, telling } = holder;
  const { px } = holder.built!;
  for (const key of [BAND, TICKS]) {
    const container = tools.pool.take();
    container.position.set(part.bounds.x0, part.bounds.y0);
    holder.container.addChild(container);
    holder.held.set(key, { container, first: 0, count: 0 });
  }
  fillRibbon(holder, BAND, ribbonStrokes(part, tools.inks, px), tools);
  fillRibbon(holder, TICKS, tickStrokes(part, tools.inks, px), tools);
  putTelling(holder, CORNERS, telling.corners, tools);
  putTelling(holder, LOOKS, telling.looks, tools);
}

function fillRibbon(holder: PartOnGpu, key: number, strokes: Stroke[], tools: Tools): void {
  const { x0: originX, y0: originY } = holder.part.bounds;
  const scale = { px: holder.built!.px, density: tools.density, originX, originY };
  fillLines(holder.held.get(key)!.container, strokes, tools.lines, scale);
}

function putTelling(holder: PartOnGpu, key: number, indices: readonly number[], tools: Tools): void {
  if (indices.length === 0) return;
  const container = putMarks(holder, indices, holder.part.bounds, tools);
  holder.held.set(key, { container, first: 0, count: 0 });
}

/** After a step only the cut between made and to come moves, and marks on the ribbon between the two places. */
function changeRibbons(holder: PartOnGpu, before: number, tools: Tools): void {
  const { part, telling } = holder;
  fillRibbon(holder, BAND, ribbonStrokes(part, tools.inks, holder.built!.px), tools);
  const { from, to } = spanOf(before, part.made);
  for (const [key, indices] of [
    [CORNERS, telling.corners],
    [LOOKS, telling.looks],
  ] as const) {
    if (!indices.some((index) => index >= from && index < to)) continue;
    tools.pool.give(holder.held.get(key)!.container);
    holder.held.delete(key);
    putTelling(holder, key, indices, tools);
  }
}
