/**
 * Words painted on a 2D canvas with figures of one width, so that a number does not jump when it changes.
 * Both painters and the print use it.
 */
import type { Brush } from '../glyphs/brush.ts';
import type { Point } from '../view/camera.ts';
import { fontOf, plateRoom, type Words } from './words.ts';

/** Letters and their advance from the left, in CSS px. Figures all advance like the widest. */
type Setting = { pieces: { text: string; x: number }[]; width: number };

const isFigure = (text: string): boolean => text >= '0' && text <= '9' && text.length === 1;

/** Words are set once: measuring them at each frame takes longer than painting them. */
const kept = new Map<string, Setting>();
const MOST_KEPT = 2000;

/** Sets words with tabular figures. The typeface is there before anything is painted. */
function setWords(context: CanvasRenderingContext2D, { text, px, bold }: Words): Setting {
  const key = `${px} ${bold} ${text}`;
  const known = kept.get(key);
  if (known) return known;
  if (kept.size >= MOST_KEPT) kept.clear();
  context.font = fontOf(px, bold);
  const figure = Math.max(...'0123456789'.split('').map((digit) => context.measureText(digit).width));
  const pieces: Setting['pieces'] = [];
  let x = 0;
  for (const piece of text.match(/\d|\D+/g) ?? []) {
    const width = context.measureText(piece).width;
    const advance = isFigure(piece) ? figure : width;
    pieces.push({ text: piece, x: x + (advance - width) / 2 });
    x += advance;
  }
  const setting = { pieces, width: x };
  kept.set(key, setting);
  return setting;
}

/** Size of words with their plate, in CSS px. */
export function measureWords(
  context: CanvasRenderingContext2D,
  words: Words,
): { width: number; height: number } {
  const room = words.plate === undefined ? { x: 0, y: 0 } : plateRoom(words.px);
  return { width: setWords(context, words).width + 2 * room.x, height: words.px * 1.3 + 2 * room.y };
}

/** Left edge of words from their anchor, by alignment. */
export function leftOf(words: Words, width: number): number {
  if (words.align === 'left') return 0;
  return words.align === 'right' ? -width : -width / 2;
}

/** Paints words with the middle of their height on `y` and their left edge on `x`; returns nothing. */
export function paintWords({ context, inks }: Brush, words: Words, { x, y }: Point): void {
  const size = measureWords(context, words);
  const ink = inks.tones[words.tone]!;
  let left = x;
  if (words.plate !== undefined) {
    const room = plateRoom(words.px);
    context.beginPath();
    context.roundRect(x + 1, y - size.height / 2 + 1, size.width - 2, size.height - 2, room.radius);
    context.fillStyle = inks.raised;
    context.fill();
    context.strokeStyle = inks.tones[words.plate]!.line;
    context.lineWidth = 1.5;
    context.setLineDash([]);
    context.stroke();
    left += room.x;
  }
  context.font = fontOf(words.px, words.bold);
  context.textBaseline = 'alphabetic';
  context.textAlign = 'left';
  context.fillStyle = ink.text;
  // The face's figures are about 0.67 em high: this puts their middle on the line.
  const baseline = y + words.px * 0.335;
  for (const piece of setWords(context, words).pieces) context.fillText(piece.text, left + piece.x, baseline);
}
