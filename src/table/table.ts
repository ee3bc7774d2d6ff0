/**
 * The table: draws any scene on one canvas in two views, and tells what a hand does on it. It knows shapes,
 * tones and places; what they mean is its caller's.
 *
 * Frames are drawn only when something has changed, at most one an animation frame. The canvas is clear: the
 * paper beneath the views is the host's.
 */
import { THEMES } from '../theme/theme.ts';
import type { Scene, SceneView, Spot } from './draw-list.ts';
import { type Inks, mixInks } from './glyphs/inks.ts';
import { pngOf, svgOf } from './painters/export.ts';
import { openFlatPainter } from './painters/flat.ts';
import type { GpuCanvas, Painter } from './painters/painter.ts';
import { fontOf } from './painters/words.ts';
import type { Table, TableOptions, ViewId } from './table-face.ts';
import { contains, isEmpty, middleOf, type Point, type Rect, toScreen, type Zoom } from './view/camera.ts';
import { type Gestures, listen } from './view/gestures.ts';
import { follow, type Looking, panned, wantedCamera, zoomed } from './view/looking.ts';
import { isOver } from './view/motion.ts';
import { boxIn, spotIn } from './view/spots.ts';
import { frameOf, NOWHERE, settle, startMotion, type ViewState } from './view/view-state.ts';

export type { Table, TableOptions, ViewId } from './table-face.ts';

const VIEWS: readonly ViewId[] = ['whole', 'close'];

/**
 * Opens a table in `host`, which it fills. Waits for the typeface, so that no number changes its shape.
 * Draws with the GPU where there is one and on a 2D canvas where there is none.
 */
export async function openTable(host: HTMLElement, options: TableOptions): Promise<Table> {
  const wants = {
    contrast: matchMedia('(prefers-contrast: more)'),
    forced: matchMedia('(forced-colors: active)'),
  };
  let worn = { theme: options.theme, yarns: options.yarns };
  let inks = mix();
  let drawn = 0;
  let request = 0;
  let pointed: Spot | null = null;
  let closed = false;
  await Promise.allSettled([document.fonts.load(fontOf(16, false)), document.fonts.load(fontOf(16, true))]);
  const painter = await openPainter();
  place(painter.canvas);
  painter.canvas.setAttribute('aria-hidden', 'true');
  if (getComputedStyle(host).position === 'static') host.style.setProperty('position', 'relative');
  host.append(painter.canvas);

  const states = new Map<ViewId, ViewState>(VIEWS.map((id) => [id, makeState(id)]));
  const stopListening = VIEWS.map((id) => listen(stateOf(id).pad, id, () => stateOf(id).region, gestures()));
  const stopped = new AbortController();
  const sizes = new ResizeObserver(resize);
  sizes.observe(host);
  watchDensity();
  layPaper();
  for (const query of Object.values(wants))
    query.addEventListener('change', dress, { signal: stopped.signal });
  painter.canvas.addEventListener('webglcontextrestored', schedule, { signal: stopped.signal });
  if (options.names !== undefined) setNames(options.names);
  resize();

  async function openPainter(): Promise<Painter> {
    const gpu = options.flat === true ? null : gpuCanvas();
    if (gpu === null) return openFlatPainter(inks);
    try {
      const { openGpuPainter } = await import('./painters/gpu.ts');
      return await openGpuPainter(gpu, inks, devicePixelRatio);
    } catch (error) {
      console.warn('The drawing goes on without the GPU.', error);
      return openFlatPainter(inks);
    }
  }

  function mix(): Inks {
    return mixInks(THEMES[worn.theme], worn.yarns, wants.contrast.matches || wants.forced.matches);
  }

  function dress(): void {
    inks = mix();
    painter.setInks(inks);
    layPaper();
    schedule();
  }

  /** Forced colours take the page's paper away; the drawing needs the one its inks were mixed for. */
  function layPaper(): void {
    const { style } = painter.canvas;
    style.setProperty('forced-color-adjust', 'none');
    style.setProperty('background-color', wants.forced.matches ? inks.paper : 'transparent');
  }

  function stateOf(id: ViewId): ViewState {
    return states.get(id)!;
  }

  function makeState(id: ViewId): ViewState {
    const pad = document.createElement('div');
    place(pad);
    pad.dataset.view = id;
    pad.style.setProperty('touch-action', 'pan-y');
    pad.hidden = true;
    host.append(pad);
    return {
      id,
      pad,
      region: NOWHERE,
      scene: null,
      looking: null,
      from: null,
      growth: null,
      motion: null,
      held: null,
    };
  }

  // --- Frames --------------------------------------------------------------------------------------

  function schedule(): void {
    if (request === 0 && !closed) request = requestAnimationFrame(paint);
  }

  function paint(now: number): void {
    request = 0;
    const frames = VIEWS.flatMap((id) => frameOf(stateOf(id), now));
    painter.paint(frames);
    drawn++;
    for (const id of VIEWS) {
      const state = stateOf(id);
      if (state.motion === null) continue;
      if (isOver(state.motion, now)) settle(state);
      schedule();
    }
  }

  // --- Scenes --------------------------------------------------------------------------------------

  function draw(scene: Scene): void {
    for (const view of scene.views) {
      const state = stateOf(view.id);
      const before = state.scene;
      const shownNow = frameOf(state, performance.now())[0];
      state.scene = view;
      if (isEmpty(state.region)) continue;
      state.looking = follow(state.looking, before, view, state.region);
      touchAction(state);
      startMotion(state, before, shownNow);
    }
    schedule();
  }

  function setRegions(regions: Record<ViewId, Rect>): void {
    for (const id of VIEWS) {
      const state = stateOf(id);
      state.region = regions[id];
      state.pad.hidden = isEmpty(state.region);
      const { x, y, width, height } = state.region;
      for (const [name, value] of Object.entries({ left: x, top: y, width, height })) {
        state.pad.style.setProperty(name, `${value}px`);
      }
      refit(state);
    }
    schedule();
  }

  /** Looks anew after the region changed; what a hand chose stays. */
  function refit(state: ViewState): void {
    if (state.scene === null || isEmpty(state.region)) return;
    settle(state);
    state.looking = follow(state.looking, state.scene, state.scene, state.region);
    touchAction(state);
  }

  /** A view that shows all of itself lets a finger scroll the page; one that is zoomed in keeps it. */
  function touchAction({ pad, id, looking }: ViewState): void {
    const own = id === 'whole' && looking?.zoomed === true;
    pad.style.setProperty('touch-action', own ? 'none' : 'pan-y');
  }

  // --- Gestures ------------------------------------------------------------------------------------

  function byHand(id: ViewId, change: (looking: Looking, view: SceneView, region: Rect) => Looking): void {
    const state = stateOf(id);
    if (state.scene === null || state.looking === null || isEmpty(state.region)) return;
    settle(state);
    state.looking = change(state.looking, state.scene, state.region);
    touchAction(state);
    schedule();
    const { x, y, px } = state.looking.camera;
    options.onMoved?.(id, { x, y }, px);
  }

  function pan(id: ViewId, dx: number, dy: number): void {
    byHand(id, (looking, view) => panned(looking, view, dx, dy));
  }

  function zoomBy(id: ViewId, zoom: Zoom): boolean {
    const before = stateOf(id).looking?.camera.px;
    byHand(id, (looking, view, region) => zoomed(looking, view, region, zoom));
    return stateOf(id).looking?.camera.px !== before;
  }

  function zoom(id: ViewId, factor: number): void {
    zoomBy(id, { factor, about: middleOf(stateOf(id).region) });
  }

  function fit(id: ViewId): void {
    byHand(id, (_looking, view, region) => ({
      camera: wantedCamera(view, region),
      panned: false,
      zoomed: false,
    }));
  }

  function lookAt(id: ViewId, x: number, y: number): void {
    const { looking, region } = stateOf(id);
    // What is in sight on the whole panel needs no moving.
    if (id === 'whole' && looking !== null) {
      const at = toScreen({ camera: looking.camera, region }, { x, y });
      if (contains(region, at)) return;
    }
    byHand(id, (looking) => ({
      ...looking,
      camera: { ...looking.camera, x, y: id === 'close' ? looking.camera.y : y },
      panned: true,
    }));
  }

  function point(spot: Spot | null): void {
    if (sameSpot(spot, pointed)) return;
    pointed = spot;
    options.onPoint?.(spot);
  }

  function gestures(): Gestures {
    return {
      pan,
      zoom: zoomBy,
      fit,
      choose(_view, at) {
        const spot = spotAt(at);
        if (spot !== null) options.onChoose?.(spot);
      },
      point: (_view, at) => point(at === null ? null : spotAt(at)),
      begin(id) {
        stateOf(id).held = stateOf(id).looking;
      },
      cancel(id) {
        const { held } = stateOf(id);
        if (held !== null) byHand(id, () => held);
      },
    };
  }

  function spotAt(at: Point): Spot | null {
    for (const id of VIEWS) {
      const { scene, looking, region } = stateOf(id);
      if (scene === null || looking === null || !contains(region, at)) continue;
      return spotIn(scene, { camera: looking.camera, region }, at);
    }
    return null;
  }

  function boxOf(spot: Spot): Rect | null {
    const { scene, looking, region } = stateOf(spot.view);
    if (scene === null || looking === null) return null;
    return boxIn(scene, { camera: looking.camera, region }, spot);
  }

  // --- Host ----------------------------------------------------------------------------------------

  function resize(): void {
    painter.resize(host.clientWidth, host.clientHeight, devicePixelRatio);
    // Resizing clears a canvas: paint at once, or it would flash.
    if (request !== 0) cancelAnimationFrame(request);
    paint(performance.now());
  }

  function watchDensity(): void {
    const query = matchMedia(`(resolution: ${devicePixelRatio}dppx)`);
    const changed = () => {
      resize();
      watchDensity();
    };
    query.addEventListener('change', changed, { once: true, signal: stopped.signal });
  }

  function setNames(names: Record<ViewId, string>): void {
    for (const id of VIEWS) {
      const { pad } = stateOf(id);
      pad.tabIndex = 0;
      pad.setAttribute('role', 'group');
      pad.setAttribute('aria-label', names[id]);
    }
  }

  return {
    draw,
    setTheme(theme, yarns) {
      worn = { theme, yarns };
      dress();
    },
    setRegions,
    setNames,
    zoom,
    pan,
    fit,
    lookAt,
    spotAt: (x, y) => spotAt({ x, y }),
    boxOf,
    exportSvg: (id, title) => svgOf(stateOf(id).scene, inks, title),
    exportPng: (id, widthPx) => pngOf(stateOf(id).scene, inks, widthPx),
    painter: painter.kind,
    frames: () => drawn,
    destroy() {
      closed = true;
      cancelAnimationFrame(request);
      sizes.disconnect();
      stopped.abort();
      for (const stop of stopListening) stop();
      for (const id of VIEWS) stateOf(id).pad.remove();
      painter.destroy();
      painter.canvas.remove();
    },
  };
}

/** A canvas with its GPU context, or null where the browser gives none: then nothing of the GPU is fetched. */
function gpuCanvas(): GpuCanvas | null {
  const canvas = document.createElement('canvas');
  // Lines are smoothed by their texture, so no multisampling is asked for.
  const context = canvas.getContext('webgl2', {
    alpha: true,
    antialias: false,
    depth: false,
    stencil: true,
  });
  return context === null ? null : { canvas, context };
}

/** Puts an element at the top left of the host, out of the flow. */
function place(element: HTMLElement): void {
  for (const [name, value] of Object.entries({ position: 'absolute', left: '0', top: '0' })) {
    element.style.setProperty(name, value);
  }
}

const sameSpot = (one: Spot | null, other: Spot | null): boolean =>
  one === other ||
  (one !== null && one.view === other?.view && one.part === other.part && one.index === other.index);
