/** The page that is timed: runs one way of drawing at one size when its driver asks. */

import type { SceneView } from '../../../src/table/draw-list.ts';
import { fitBounds } from '../../../src/table/view/camera.ts';
import { wholeView } from './scenes.ts';
import { canvasBatched, canvasImages, objects, ours, SIZE, svgElements, type Way } from './ways.ts';

/** Milliseconds a frame, all told (mean), and those the page's own script took (median). */
export type Cost = { frame: number; script: number };
export type Times = { name: string; build: number; pan: Cost; step: Cost; rebuild: Cost };
export type Look = 'whole' | 'near';

const host = document.querySelector<HTMLElement>('#host')!;
const nextFrame = (): Promise<number> =>
  new Promise((done) => requestAnimationFrame(() => done(performance.now())));

let scripted = 0;
const ask = window.requestAnimationFrame.bind(window);
window.requestAnimationFrame = (callback) =>
  ask((time) => {
    const begun = performance.now();
    callback(time);
    scripted += performance.now() - begun;
  });

/** The cost of a change and its frame, sustained over several; at most `limitMs` in all. */
async function perFrame(change: () => void, most = 40, limitMs = 3000): Promise<Cost> {
  await settle();
  const start = performance.now();
  const scripts: number[] = [];
  let now = start;
  let frames = 0;
  while (frames < most && now - start < limitMs) {
    scripted = 0;
    const begun = performance.now();
    change();
    const changed = performance.now() - begun;
    now = await nextFrame();
    scripts.push(changed + scripted);
    frames++;
  }
  const script = scripts.sort((a, b) => a - b)[scripts.length >> 1]!;
  // The last frame is still being painted: wait for it as well.
  now = await nextFrame();
  return { frame: (now - start) / frames, script };
}

async function settle(): Promise<void> {
  for (let frame = 0; frame < 3; frame++) await nextFrame();
}

/** Front round and edging with `positions` in all, a rectangle of three to two; half of the front is made. */
function viewOf(positions: number, revision = 1): SceneView {
  const around = positions / 2 / 2;
  const wide = Math.round(around * 0.6);
  const view = wholeView(wide, Math.round(around - wide) - 4);
  const [front, edging] = view.parts;
  front!.made = Math.round(front!.marks.count / 2);
  return { ...view, parts: [front!, edging!].map((part) => ({ ...part, revision })) };
}

const WAYS: Record<string, () => Way | Promise<Way>> = {
  ours: () => ours(host, false),
  flat: () => ours(host, true),
  images: () => canvasImages(host),
  batched: () => canvasBatched(host),
  objects: () => objects(host),
  svg: () => svgElements(host),
};

/** Times one way: `whole` shows everything at once, `near` some 75 stitches at 12 px. */
async function time(key: string, positions: number, look: Look): Promise<Times> {
  const way = await WAYS[key]!();
  const view = viewOf(positions);
  const { bounds } = view;
  const fitted = fitBounds(bounds, { x: 0, y: 0, ...SIZE }, 28);
  // At the lower side, where the first part goes from made to still to come as well.
  const near = { x: 0, y: bounds.y0 + 4, px: 12 };
  const camera = look === 'whole' ? fitted : near;
  await settle();
  const start = performance.now();
  way.build(view, camera);
  await nextFrame();
  const build = (await nextFrame()) - start;
  let turn = 0;
  const pan = await perFrame(() => way.pan(turn++ % 2 === 0 ? 3 : -3));
  const step = await perFrame(way.step);
  let revision = 1;
  const rebuild = await perFrame(() => way.rebuild(viewOf(positions, ++revision)), 8);
  way.destroy();
  await settle();
  return { name: way.name, build, pan, step, rebuild };
}

/** Frames asked for, and drawn, in `ms` without any input. */
async function idle(ms: number): Promise<{ asked: number; drawn: number }> {
  const way = await ours(host, false);
  way.build(viewOf(2000), fitBounds(viewOf(2000).bounds, { x: 0, y: 0, ...SIZE }, 28));
  await new Promise((done) => setTimeout(done, 600));
  const counted = window.requestAnimationFrame;
  let asked = 0;
  window.requestAnimationFrame = (callback) => {
    asked++;
    return counted(callback);
  };
  const before = way.frames!();
  await new Promise((done) => setTimeout(done, ms));
  window.requestAnimationFrame = counted;
  const drawn = way.frames!() - before;
  way.destroy();
  return { asked, drawn };
}

/** What draws: the GPU's name, or that of its stand-in. */
function drawsWith(): string {
  const gl = document.createElement('canvas').getContext('webgl2');
  const info = gl?.getExtension('WEBGL_debug_renderer_info');
  return gl && info ? String(gl.getParameter(info.UNMASKED_RENDERER_WEBGL)) : 'no WebGL';
}

const bench = { time, idle, drawsWith };
export type DrawingBench = typeof bench;
Object.assign(window, { bench });
