/** The photo in a thread of its own: read there, straightened there, and compared there. */
import { lineThrough } from './line.ts';
import type { Answer, Ask, Question } from './messages.ts';
import { propose } from './propose.ts';
import { even, type Pixels, straightenedInColour } from './strip.ts';

/** Longest side of the photo as it is held, in pixels: twelve megapixels stay as they are. */
const mostHeld = 4096;
/** Longest side of the picture to look at. */
const mostShown = 2048;
/** Columns of the strip to look at, at most. */
const mostColumns = 6000;

let held: Pixels | null = null;

const tell = (answer: Answer, id: number, moved: Transferable[] = []): void =>
  postMessage({ ...answer, id }, { transfer: moved });

addEventListener('message', async ({ data }: MessageEvent<Question>) => {
  const { id } = data;
  try {
    await answer(data, id);
  } catch {
    tell({ kind: 'broken' }, id);
  }
});

async function answer(ask: Ask, id: number): Promise<void> {
  if (ask.kind === 'open') {
    const { picture, pixels } = await read(ask.photo);
    held = pixels;
    tell({ kind: 'opened', picture, width: pixels.width, height: pixels.height }, id, [picture]);
  } else if (!held) tell({ kind: 'broken' }, id);
  else if (ask.kind === 'strip') {
    const line = lineThrough(ask.through);
    const step = Math.max(1, line.length / mostColumns);
    const grid = {
      places: even(0, step, Math.max(1, Math.ceil(line.length / step))),
      rows: even(-ask.half, 1, 2 * ask.half + 1),
    };
    const picture = pictureOf(straightenedInColour(held, line, grid));
    tell({ kind: 'strip', picture, half: ask.half, step }, id, [picture]);
  } else {
    const work = propose({ ...ask, pixels: held, line: lineThrough(ask.through) });
    let turn = work.next();
    for (; !turn.done; turn = work.next()) tell({ kind: 'progress', done: turn.value }, id);
    tell({ kind: 'proposed', ...(turn.value ?? { places: [], isAlike: false }) }, id);
  }
}

/** The photo turned as the camera says (which `createImageBitmap` does by itself), and made smaller where it is huge. */
async function read(photo: Blob): Promise<{ picture: ImageBitmap; pixels: Pixels }> {
  const whole = await createImageBitmap(photo, { imageOrientation: 'from-image' });
  const own = scaled(whole, mostHeld);
  const pixels = own.getImageData(0, 0, own.canvas.width, own.canvas.height);
  const shown = scaled(whole, mostShown);
  whole.close();
  return { picture: shown.canvas.transferToImageBitmap(), pixels };
}

function scaled(picture: ImageBitmap, most: number): OffscreenCanvasRenderingContext2D {
  const scale = Math.min(1, most / Math.max(picture.width, picture.height));
  const width = Math.max(2, Math.round(picture.width * scale));
  const height = Math.max(2, Math.round(picture.height * scale));
  const context = contextOf(width, height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(picture, 0, 0, width, height);
  return context;
}

function pictureOf({ width, height, data }: Pixels): ImageBitmap {
  const context = contextOf(width, height);
  context.putImageData(new ImageData(data as Uint8ClampedArray<ArrayBuffer>, width, height), 0, 0);
  return context.canvas.transferToImageBitmap();
}

function contextOf(width: number, height: number): OffscreenCanvasRenderingContext2D {
  const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('No canvas can be had in a thread');
  return context;
}
