/**
 * Words on the drawing, laid out but not yet painted. Sizes are CSS px, so that words stay as large and as
 * crisp whatever the zoom.
 */

import { type Box, type Label, reachOf, type ToneCode } from '../draw-list.ts';
import { overlaps, type Point, toScreen, type Viewport } from '../view/camera.ts';
import { showsAt } from '../view/detail.ts';

const FAMILY = 'Atkinson Hyperlegible Next Variable';
export const FONT_STACK = `'${FAMILY}', 'Atkinson Hyperlegible Next', system-ui, sans-serif`;

export type Words = {
  text: string;
  /** Anchor in the world, and how far from it in CSS px. */
  x: number;
  y: number;
  dx: number;
  dy: number;
  px: number;
  bold: boolean;
  tone: ToneCode;
  align: 'left' | 'centre' | 'right';
  plate?: ToneCode;
  pin?: 'left' | 'right';
};

/** Distance of pinned words from the edge of their view, in CSS px. */
const PIN_PX = 14;

export const fontOf = (px: number, bold: boolean): string => `${bold ? 700 : 400} ${px}px ${FONT_STACK}`;

/** Labels that show in a view. Those that stand at its edge give way to what comes by, and to one another, the first first. */
export function labelsShown(labels: readonly Label[], viewport: Viewport): Label[] {
  const showing = labels.filter((label) => showsAt(label, viewport.camera.px));
  const taken = showing.filter(({ pin }) => pin === undefined).map((label) => boxOf(label, viewport));
  return showing.filter((label) => {
    if (label.pin === undefined) return true;
    const box = boxOf(label, viewport);
    if (taken.some((other) => overlaps(box, other))) return false;
    taken.push(box);
    return true;
  });
}

/** Where a label stands on the screen, in CSS px within the host. */
function boxOf(label: Label, viewport: Viewport): Box {
  const { x, y } = anchorOf({ ...label, dx: 0, dy: 0 }, viewport);
  const { left, right, up, down } = reachOf(label.pin === undefined ? label : { ...label, dx: 0 });
  return { x0: x + left, y0: y + up, x1: x + right, y1: y + down };
}

/** Labels that show in a view, as words. */
export function labelWords(labels: readonly Label[], viewport: Viewport): Words[] {
  return labelsShown(labels, viewport).map((label) => ({
    text: label.text,
    x: label.x,
    y: label.y,
    dx: label.dx ?? 0,
    dy: label.dy ?? 0,
    px: label.px,
    bold: label.bold ?? false,
    tone: label.tone,
    align: label.align,
    ...(label.plate === undefined ? {} : { plate: label.plate }),
    ...(label.pin === undefined ? {} : { pin: label.pin }),
  }));
}

/** Where the anchor of some words stands, in CSS px within the host. */
export function anchorOf(words: Pick<Words, 'x' | 'y' | 'dx' | 'dy' | 'pin'>, viewport: Viewport): Point {
  const at = toScreen(viewport, words);
  const { region } = viewport;
  const x =
    words.pin === undefined
      ? at.x + words.dx
      : region.x + (words.pin === 'left' ? PIN_PX : region.width - PIN_PX);
  return { x, y: at.y + words.dy };
}

/** Room around the letters on a plate, and its corner, in CSS px. */
export const plateRoom = (px: number) => ({ x: px * 0.5, y: px * 0.28, radius: px * 0.45 });
