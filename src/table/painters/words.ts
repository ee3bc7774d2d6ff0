/**
 * Words on the drawing, laid out but not yet painted. Sizes are CSS px, so that words stay as large and as
 * crisp whatever the zoom.
 */

import type { Label, ToneCode } from '../draw-list.ts';
import { type Point, toScreen, type Viewport } from '../view/camera.ts';
import { showsAt } from '../view/detail.ts';

export const FAMILY = 'Atkinson Hyperlegible Next Variable';
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

/** Labels that show at this zoom, as words. */
export function labelWords(labels: readonly Label[], px: number): Words[] {
  return labels
    .filter((label) => showsAt(label, px))
    .map((label) => ({
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
export function anchorOf(words: Words, viewport: Viewport): Point {
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
