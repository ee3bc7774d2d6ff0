/** The pictures one by one in an archive, for browsers that make no video. */
import { downloadZip } from 'client-zip';
import type { Clip, Wanted } from './frames.ts';

/** Null where it was stopped. */
export async function stillsOf({ frames, from, to, onStep, stop }: Wanted): Promise<Clip | null> {
  const digits = `${to - from + 1}`.length;
  async function* pictures() {
    for (let step = from; step <= to; step++) {
      stop.throwIfAborted();
      frames.paint(step);
      const input = await png(frames.canvas);
      const nth = `${step - from + 1}`.padStart(digits, '0');
      yield { name: `${nth}.png`, input: await input.arrayBuffer(), lastModified: new Date() };
      onStep(step - from + 1);
    }
  }
  try {
    return { data: await downloadZip(pictures()).blob(), ending: 'zip' };
  } catch (error) {
    if (stop.aborted) return null;
    throw error;
  }
}

const png = (canvas: HTMLCanvasElement): Promise<Blob> =>
  new Promise((done, fail) =>
    canvas.toBlob(
      (blob) => (blob ? done(blob) : fail(new Error('The picture could not be made.'))),
      'image/png',
    ),
  );
