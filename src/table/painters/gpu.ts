/**
 * The painter on the GPU: one canvas, one context, each view in its own viewport. Panning changes one
 * transform a view; a step changes a few particles; nothing runs between two paintings.
 */
import 'pixi.js/unsafe-eval';
import 'pixi.js/particle-container';
import {
  Container,
  type ParticleContainer,
  Rectangle,
  type RenderOptions,
  Ticker,
  WebGLRenderer,
} from 'pixi.js';
import type { Part, SceneView } from '../draw-list.ts';
import { openAtlas } from '../glyphs/atlas.ts';
import { type Inks, paperOf } from '../glyphs/inks.ts';
import { isEmpty, type Rect } from '../view/camera.ts';
import { fillLines } from './gpu-lines.ts';
import { drop, holdPart, type PartOnGpu, showPart, type Tools } from './gpu-part.ts';
import { holdWords, type WordsOnGpu } from './gpu-words.ts';
import { openLineTexture } from './line-texture.ts';
import type { GpuCanvas, Painter, ViewFrame } from './painter.ts';
import { openPool, type Pool } from './pool.ts';
import { signShape } from './signs.ts';
import { labelWords, type Words } from './words.ts';

type ViewOnGpu = {
  root: Container;
  world: Container;
  parts: Map<string, PartOnGpu>;
  signs: ParticleContainer;
  wordsLayer: Container;
  words: WordsOnGpu;
  /** What `signs` was filled from. */
  filled: { signs: unknown; px: number; words: Words[] } | null;
};

/** Texture px a stitch width of the near drawing, by density of the screen. */
const fullUnit = (density: number): number => (density > 1.4 ? 160 : 112);

/**
 * Opens the painter on a canvas that has its context already.
 * @throws where the context cannot do what the renderer needs.
 */
export async function openGpuPainter(
  gpu: GpuCanvas,
  firstInks: Inks,
  firstDensity: number,
): Promise<Painter> {
  let inks = firstInks;
  let density = firstDensity;
  const renderer = new WebGLRenderer();
  await renderer.init({
    ...gpu,
    resolution: density,
    autoDensity: true,
    backgroundAlpha: 0,
    manageImports: false,
    gcActive: false,
    clearBeforeRender: false,
  });
  // The renderer's own housekeeping would ask for a frame for ever.
  Ticker.system.autoStart = false;
  Ticker.system.stop();

  let atlas = openAtlas(inks, fullUnit(density));
  const lines = openLineTexture();
  const pool = openPool();
  const tools = (): Tools => ({ atlas, lines, pool, inks, density });
  const views = new Map<SceneView['id'], ViewOnGpu>();
  const empty = new Container();

  function viewFor(id: SceneView['id']): ViewOnGpu {
    const known = views.get(id);
    if (known !== undefined) return known;
    const root = new Container();
    const world = new Container();
    const signs = pool.take();
    const wordsLayer = new Container();
    root.addChild(world, wordsLayer);
    const words = holdWords(
      wordsLayer,
      () => inks,
      () => density,
    );
    const view = { root, world, parts: new Map(), signs, wordsLayer, words, filled: null };
    world.addChild(signs);
    views.set(id, view);
    return view;
  }

  function show(frame: ViewFrame): void {
    const view = viewFor(frame.view.id);
    const { camera, region } = frame;
    view.world.scale.set(camera.px);
    view.world.position.set(
      region.width / 2 - camera.x * camera.px,
      region.height / 2 - camera.y * camera.px,
    );
    matchParts(view, frame.view.parts, pool);
    for (const part of frame.view.parts) showPart(view.parts.get(part.key)!, part, frame, tools());
    showSigns(view, frame);
    const labels = labelWords(frame.view.labels, frame);
    view.words.show([...labels, ...view.filled!.words], frame);
  }

  function showSigns(view: ViewOnGpu, { signs, camera, view: scene }: ViewFrame): void {
    const { filled } = view;
    if (filled?.signs === signs && filled.px === camera.px) return;
    const paper = paperOf(scene, inks);
    const shapes = signs.map((sign) => signShape(sign, inks, camera.px, paper));
    const strokes = shapes.flatMap((shape) => shape.strokes);
    // Counted from where the view looks, so that single precision is enough.
    const { x: originX, y: originY, px } = camera;
    view.signs.position.set(originX, originY);
    fillLines(view.signs, strokes, lines, { px, density, originX, originY });
    view.filled = {
      signs,
      px: camera.px,
      words: shapes.flatMap((shape) => shape.words),
    };
  }

  function render(container: Container, region: Rect): void {
    // A frame sets the viewport, and what lies outside a viewport is clipped: no mask is needed.
    const frame = new Rectangle(region.x, region.y, region.width, region.height);
    renderer.render({ container, frame, clear: false } as RenderOptions);
  }

  function forget(): void {
    for (const view of views.values()) {
      view.words.clear();
      view.filled = null;
      for (const part of view.parts.values()) drop(part, pool);
    }
  }

  return {
    kind: 'gpu',
    canvas: gpu.canvas,
    resize(width, height, nextDensity) {
      if (nextDensity !== density) {
        density = nextDensity;
        forget();
        atlas.destroy();
        atlas = openAtlas(inks, fullUnit(density));
      }
      renderer.resize(Math.max(1, width), Math.max(1, height), density);
    },
    setInks(next) {
      inks = next;
      forget();
      atlas.setInks(next);
    },
    paint(frames) {
      // It is painted once it is given back; what is compiled on a lost one stays broken.
      if (renderer.context.isLost) return;
      const shown = frames.filter((frame) => !isEmpty(frame.region));
      let generation: number;
      do {
        generation = atlas.generation();
        for (const frame of shown) show(frame);
      } while (generation !== atlas.generation());
      atlas.upload();
      renderer.render({ container: empty, clear: true });
      for (const frame of shown) render(views.get(frame.view.id)!.root, frame.region);
    },
    destroy() {
      forget();
      for (const view of views.values()) view.root.destroy({ children: true });
      views.clear();
      atlas.destroy();
      lines.destroy();
      pool.destroy();
      renderer.destroy({ removeView: true });
    },
  };
}

/** Keeps the holders of parts that have not changed, in paint order, and lets go of the others. */
function matchParts(view: ViewOnGpu, parts: readonly Part[], pool: Pool): void {
  const wanted = new Map(parts.map((part) => [part.key, part]));
  for (const [key, holder] of view.parts) {
    const part = wanted.get(key);
    if (part !== undefined && part.revision === holder.part.revision) continue;
    drop(holder, pool);
    holder.container.destroy();
    view.parts.delete(key);
  }
  const ordered = [...parts].sort((one, other) => one.layer - other.layer);
  let changed = false;
  for (const part of ordered) {
    if (view.parts.has(part.key)) continue;
    view.parts.set(part.key, holdPart(part));
    changed = true;
  }
  if (!changed) return;
  for (const part of ordered) view.world.addChild(view.parts.get(part.key)!.container);
  view.world.addChild(view.signs);
}
