/** A clip's pictures: the whole panel, the close-up and the step's own words, in the colours that the page wears. */
import { buildScene } from './drawing/scene.ts';
import { themeName, wornYarns } from './page-theme.ts';
import type { Scene, SceneView } from './table/draw-list.ts';
import { type Inks, mixInks } from './table/glyphs/inks.ts';
import { paintView } from './table/painters/flat.ts';
import { fontOf } from './table/painters/words.ts';
import type { Rect } from './table/view/camera.ts';
import { wantedCamera } from './table/view/looking.ts';
import { clipSize, type DrawClip } from './take-along/clip/frames.ts';
import { THEMES } from './theme/theme.ts';
import { type Said, sayStep } from './words/walk/step.ts';

/** Clips are watched in small windows: everything is drawn larger than on the page. */
const DENSITY = 1.6;
const [width, height] = [clipSize.width / DENSITY, clipSize.height / DENSITY];
/** CSS px of the words' band; the whole panel stands left of the close-up. */
const BAND = 128;
const LEFT = 290;

const regions: Record<SceneView['id'], Rect> = {
  whole: { x: 0, y: 0, width: LEFT, height: height - BAND },
  close: { x: LEFT, y: 0, width: width - LEFT, height: height - BAND },
};

export const drawClip: DrawClip = (snapshot) => {
  const { making, settings, cloth } = snapshot;
  const canvas = document.createElement('canvas');
  canvas.width = clipSize.width;
  canvas.height = clipSize.height;
  const context = canvas.getContext('2d', { alpha: false }) as CanvasRenderingContext2D;
  const name = themeName(settings.theme);
  const inks = mixInks(THEMES[name], wornYarns(name, settings.yarns));
  let scene: Scene | undefined;
  const paint = (at: number): void => {
    const step = making.steps.at(at);
    scene = buildScene({ making, settings, step, pointed: null }, scene);
    context.setTransform(DENSITY, 0, 0, DENSITY, 0, 0);
    context.fillStyle = inks.paper;
    context.fillRect(0, 0, width, height);
    context.fillStyle = inks.raised;
    context.fillRect(LEFT, 0, width - LEFT, height - BAND);
    for (const view of scene.views) {
      const region = regions[view.id];
      const camera = wantedCamera(view, region);
      paintView({ context, inks }, { view, region, camera, signs: view.signs, growth: null }, DENSITY);
    }
    context.setTransform(DENSITY, 0, 0, DENSITY, 0, 0);
    paintWords(context, inks, sayStep(step, making, settings, cloth));
  };
  return { canvas, paint };
};

const MARGIN = 24;

/** The number large at the left, what to do beside it, and where that is. */
function paintWords(context: CanvasRenderingContext2D, inks: Inks, { act, where, count }: Said): void {
  const top = height - BAND;
  context.fillStyle = inks.paper;
  context.fillRect(0, top, width, BAND);
  context.fillStyle = inks.line;
  context.fillRect(0, top, width, 1);
  context.fillStyle = inks.ink;
  context.textBaseline = 'alphabetic';
  context.textAlign = 'left';
  context.font = fontOf(46, true);
  context.fillText(count, MARGIN, top + 62);
  const left = count === '' ? MARGIN : MARGIN + Math.max(72, context.measureText(count).width + 20);
  const room = width - left - MARGIN;
  const { lines, px } = fitted(context, act, room);
  lines.forEach((line, i) => {
    context.fillText(line, left, top + 40 + i * px * 1.25);
  });
  context.fillStyle = inks.muted;
  context.font = fontOf(15, false);
  context.fillText(where, left, top + BAND - 16, room);
}

/** Words in lines that fit, as large as two of them may be; what is longer is set smaller. */
function fitted(
  context: CanvasRenderingContext2D,
  text: string,
  room: number,
): { lines: string[]; px: number } {
  for (let px = 25; ; px -= 2) {
    context.font = fontOf(px, true);
    const lines = wrapped(context, text, room);
    if (lines.length <= (px > 19 ? 2 : 3) || px <= 13) return { lines, px };
  }
}

function wrapped(context: CanvasRenderingContext2D, text: string, room: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && context.measureText(longer).width <= room) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}
