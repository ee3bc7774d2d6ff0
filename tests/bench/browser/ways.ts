/**
 * Ways to draw the same stitches: ours, and the plain ways it is compared with. Every way gets the same view
 * and the same glyphs and shows the same place at the same size.
 */
import 'pixi.js/unsafe-eval';
import 'pixi.js/graphics';
import { Container, Graphics, GraphicsContext, GraphicsPath, Ticker, WebGLRenderer } from 'pixi.js';
import { Look, type Marks, type SceneView } from '../../../src/table/draw-list.ts';
import { paintLayers } from '../../../src/table/glyphs/brush.ts';
import { type CellKey, cellKey, cellLayers, cellPlan } from '../../../src/table/glyphs/cells.ts';
import { mixInks } from '../../../src/table/glyphs/inks.ts';
import type { Layer } from '../../../src/table/glyphs/layer.ts';
import { openTable } from '../../../src/table/table.ts';
import type { Camera } from '../../../src/table/view/camera.ts';
import { LIGHT } from '../../../src/theme/theme.ts';

export const SIZE = { width: 900, height: 600 };

export type Way = {
  name: string;
  /** Makes everything and asks for the first frame. */
  build(view: SceneView, camera: Camera): void;
  /** Moves the drawing by CSS px and draws. */
  pan(dx: number): void;
  /** Shows one more stitch of the first part as made. */
  step(): void;
  /** Takes geometry made anew, and draws it. */
  rebuild(view: SceneView): void;
  /** Frames drawn so far, where the way counts them. */
  frames?(): number;
  destroy(): void;
};

const inks = mixInks(LIGHT, LIGHT.yarns);
const keyOf = (marks: Marks, index: number, made: boolean): CellKey =>
  cellKey({ glyph: marks.glyph[index]!, tone: marks.tone[index]!, look: Look.plain, made, detail: 'small' });
const layersFor = (marks: Marks, index: number, made: boolean): { layers: Layer[]; tone: number } =>
  cellLayers(cellPlan(keyOf(marks, index, made)));

/** Ours. @param flat without the GPU: the same draw list on a 2D canvas */
export async function ours(host: HTMLElement, flat: boolean): Promise<Way> {
  const table = await openTable(host, { theme: 'light', yarns: LIGHT.yarns, flat });
  table.setRegions({ whole: { x: 0, y: 0, ...SIZE }, close: { x: 0, y: 0, width: 0, height: 0 } });
  let shown: SceneView;
  const show = (view: SceneView) => {
    shown = view;
    table.draw({ views: [view] });
  };
  return {
    name: flat ? 'ours, flat painter' : 'ours',
    build: (view, { x, y, px }) => show({ ...view, centre: { x, y }, px }),
    pan: (dx) => table.pan('whole', dx, 0),
    step() {
      const [first, ...rest] = shown.parts;
      show({ ...shown, parts: [{ ...first!, made: first!.made + 1 }, ...rest] });
    },
    rebuild: (view) => show({ ...view, centre: shown.centre!, px: shown.px! }),
    frames: table.frames,
    destroy: table.destroy,
  };
}

/** A picture of each kind of glyph, copied once for every stitch. */
export function canvasImages(host: HTMLElement): Way {
  const { canvas, context } = makeCanvas(host);
  const pictures = new Map<number, HTMLCanvasElement>();
  const unit = 32;
  let view: SceneView;
  let camera: Camera;
  const pictureOf = (marks: Marks, index: number, made: boolean): HTMLCanvasElement => {
    const key = keyOf(marks, index, made);
    let picture = pictures.get(key);
    if (picture === undefined) {
      picture = document.createElement('canvas');
      picture.width = picture.height = 4 * unit;
      const brush = picture.getContext('2d')!;
      brush.setTransform(unit, 0, 0, unit, 2 * unit, 2 * unit);
      const { layers, tone } = layersFor(marks, index, made);
      paintLayers(brush, layers, inks.tones[tone]!);
      pictures.set(key, picture);
    }
    return picture;
  };
  const draw = () =>
    eachMark(context, view, camera, (marks, index, made) => {
      context.drawImage(pictureOf(marks, index, made), -2, -2, 4, 4);
    });
  return canvasWay('canvas, a picture a stitch', canvas, draw, (nextView, nextCamera) => {
    view = nextView;
    camera = nextCamera ?? camera;
    return { view, camera };
  });
}

/** All stitches of a part in one path, filled at once: the fastest plain canvas. */
export function canvasBatched(host: HTMLElement): Way {
  const { canvas, context } = makeCanvas(host);
  let view: SceneView;
  let camera: Camera;
  let paths: { path: Path2D; colour: string }[] = [];
  const gather = () => {
    paths = view.parts.map((part) => {
      const path = new Path2D();
      const { marks } = part;
      for (let index = 0; index < marks.count; index++) {
        const place = new DOMMatrix()
          .translate(marks.x[index]!, marks.y[index]!)
          .rotate((marks.angle[index]! * 180) / Math.PI);
        for (const { d, fill } of layersFor(marks, index, true).layers) {
          if (fill !== undefined) path.addPath(new Path2D(d), place);
        }
      }
      return { path, colour: inks.tones[marks.tone[0]!]!.body };
    });
  };
  const draw = () => {
    clear(context);
    intoView(context, camera);
    for (const { path, colour } of paths) {
      context.fillStyle = colour;
      context.fill(path);
    }
  };
  const way = canvasWay('canvas, one path a part', canvas, draw, (nextView, nextCamera) => {
    view = nextView;
    camera = nextCamera ?? camera;
    gather();
    return { view, camera };
  });
  // One path cannot change in one place: a step gathers it anew.
  return {
    ...way,
    step() {
      gather();
      draw();
    },
  };
}

/** One retained object for every stitch, on the GPU. */
export async function objects(host: HTMLElement): Promise<Way> {
  const renderer = new WebGLRenderer();
  await renderer.init({ ...SIZE, backgroundColor: inks.paper, manageImports: false, gcActive: false });
  Ticker.system.autoStart = false;
  Ticker.system.stop();
  host.append(renderer.canvas as HTMLCanvasElement);
  const contexts = new Map<number, GraphicsContext>();
  let root = new Container();
  let first: Graphics[] = [];
  let made = 0;
  let view: SceneView;
  const contextOf = (marks: Marks, index: number, isMade: boolean): GraphicsContext => {
    const key = keyOf(marks, index, isMade);
    let shape = contexts.get(key);
    if (shape === undefined) {
      shape = new GraphicsContext();
      const { layers, tone } = layersFor(marks, index, isMade);
      for (const { d, fill } of layers) {
        if (fill !== undefined) shape.path(new GraphicsPath(d)).fill(inks.tones[tone]![fill]);
      }
      contexts.set(key, shape);
    }
    return shape;
  };
  const fill = () => {
    for (const [number, part] of view.parts.entries()) {
      for (let index = 0; index < part.marks.count; index++) {
        const graphic = new Graphics(contextOf(part.marks, index, index < part.made));
        graphic.position.set(part.marks.x[index]!, part.marks.y[index]!);
        graphic.rotation = part.marks.angle[index]!;
        root.addChild(graphic);
        if (number === 0) first.push(graphic);
      }
    }
    made = view.parts[0]!.made;
    renderer.render(root);
  };
  return {
    name: 'one object a stitch',
    build(nextView, camera) {
      view = nextView;
      root.scale.set(camera.px);
      root.position.set(SIZE.width / 2 - camera.x * camera.px, SIZE.height / 2 - camera.y * camera.px);
      fill();
    },
    pan(dx) {
      root.x += dx;
      renderer.render(root);
    },
    step() {
      first[made]!.context = contextOf(view.parts[0]!.marks, made, true);
      made++;
      renderer.render(root);
    },
    rebuild(nextView) {
      view = nextView;
      const { scale, position } = root;
      const next = new Container({ scale, position });
      root.destroy({ children: true });
      root = next;
      first = [];
      fill();
    },
    destroy() {
      root.destroy({ children: true });
      renderer.destroy({ removeView: true });
    },
  };
}

/** One SVG element for every stitch. */
export function svgElements(host: HTMLElement): Way {
  const space = 'http://www.w3.org/2000/svg';
  const make = (name: string, attributes: Record<string, string | number>) => {
    const element = document.createElementNS(space, name);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
    return element;
  };
  const svg = make('svg', SIZE);
  host.append(svg);
  let group = make('g', {});
  let first: Element[] = [];
  let made = 0;
  let view: SceneView;
  let camera: Camera;
  let shift = 0;
  const move = () => {
    const x = SIZE.width / 2 - camera.x * camera.px + shift;
    const y = SIZE.height / 2 - camera.y * camera.px;
    group.setAttribute('transform', `translate(${x} ${y}) scale(${camera.px})`);
  };
  const idOf = (marks: Marks, index: number, isMade: boolean): string => {
    const id = `g${keyOf(marks, index, isMade)}`;
    if (svg.querySelector(`#${id}`) === null) {
      const { layers, tone } = layersFor(marks, index, isMade);
      const symbol = make('g', { id });
      for (const { d, fill } of layers) {
        if (fill !== undefined) symbol.append(make('path', { d, fill: inks.tones[tone]![fill] }));
      }
      const definitions = make('defs', {});
      definitions.append(symbol);
      svg.append(definitions);
    }
    return id;
  };
  const fill = () => {
    group.remove();
    group = make('g', {});
    first = [];
    for (const [number, part] of view.parts.entries()) {
      const ids = [true, false].map((isMade) => (part.marks.count > 0 ? idOf(part.marks, 0, isMade) : ''));
      for (let index = 0; index < part.marks.count; index++) {
        const turn = (part.marks.angle[index]! * 180) / Math.PI;
        const use = make('use', {
          href: `#${index < part.made ? ids[0] : ids[1]}`,
          transform: `translate(${part.marks.x[index]} ${part.marks.y[index]}) rotate(${turn})`,
        });
        group.append(use);
        if (number === 0) first.push(use);
      }
    }
    made = view.parts[0]!.made;
    move();
    svg.append(group);
  };
  return {
    name: 'SVG, one element a stitch',
    build(nextView, nextCamera) {
      view = nextView;
      camera = nextCamera;
      fill();
    },
    pan(dx) {
      shift += dx;
      move();
    },
    step() {
      first[made]!.setAttribute('href', `#${idOf(view.parts[0]!.marks, made, true)}`);
      made++;
    },
    rebuild(nextView) {
      view = nextView;
      fill();
    },
    destroy: () => svg.remove(),
  };
}

// --- What the two plain canvases share ---------------------------------------------------------------

function makeCanvas(host: HTMLElement) {
  const canvas = document.createElement('canvas');
  Object.assign(canvas, SIZE);
  host.append(canvas);
  return { canvas, context: canvas.getContext('2d', { alpha: false })! };
}

function clear(context: CanvasRenderingContext2D): void {
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.fillStyle = inks.paper;
  context.fillRect(0, 0, SIZE.width, SIZE.height);
}

function intoView(context: CanvasRenderingContext2D, { x, y, px }: Camera): void {
  context.setTransform(px, 0, 0, px, SIZE.width / 2 - x * px, SIZE.height / 2 - y * px);
}

function eachMark(
  context: CanvasRenderingContext2D,
  view: SceneView,
  { x, y, px }: Camera,
  paint: (marks: Marks, index: number, made: boolean) => void,
): void {
  clear(context);
  for (const part of view.parts) {
    const { marks, made } = part;
    for (let index = 0; index < marks.count; index++) {
      const [cos, sin] = [Math.cos(marks.angle[index]!) * px, Math.sin(marks.angle[index]!) * px];
      const left = SIZE.width / 2 + (marks.x[index]! - x) * px;
      const top = SIZE.height / 2 + (marks.y[index]! - y) * px;
      context.setTransform(cos, sin, -sin, cos, left, top);
      paint(marks, index, index < made);
    }
  }
}

function canvasWay(
  name: string,
  canvas: HTMLCanvasElement,
  draw: () => void,
  take: (view: SceneView, camera?: Camera) => { view: SceneView; camera: Camera },
): Way {
  let now: { view: SceneView; camera: Camera };
  return {
    name,
    build(view, camera) {
      now = take(view, { ...camera });
      draw();
    },
    pan(dx) {
      now.camera.x -= dx / now.camera.px;
      draw();
    },
    step() {
      now.view.parts[0]!.made++;
      draw();
    },
    rebuild(view) {
      now = take(view);
      draw();
    },
    destroy: () => canvas.remove(),
  };
}
