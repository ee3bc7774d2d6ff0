/** The pictures as a video, made by the browser itself; fetched when a clip is asked for. */
import {
  BufferTarget,
  CanvasSource,
  getFirstEncodableVideoCodec,
  Mp4OutputFormat,
  Output,
  QUALITY_HIGH,
  WebMOutputFormat,
} from 'mediabunny';
import { type Clip, clipSize, type Wanted } from './frames.ts';

/** A picture stands for seconds; players like one every so often all the same. */
const MOST_SECONDS = 0.25;
/** Between pictures from which a player can begin. */
const KEY_SECONDS = 4;

/** Null where the browser makes no video, or where it was stopped. */
export async function filmOf({ frames, from, to, seconds, onStep, stop }: Wanted): Promise<Clip | null> {
  if (!('VideoEncoder' in globalThis)) return null;
  const codec = await getFirstEncodableVideoCodec(['avc', 'vp9', 'vp8'], clipSize);
  if (codec === null) return null;
  const isMp4 = codec === 'avc';
  const target = new BufferTarget();
  const format = isMp4 ? new Mp4OutputFormat({ fastStart: 'in-memory' }) : new WebMOutputFormat();
  const output = new Output({ format, target });
  const source = new CanvasSource(frames.canvas, {
    codec,
    bitrate: QUALITY_HIGH,
    keyFrameInterval: KEY_SECONDS,
  });
  const each = Math.ceil(seconds / MOST_SECONDS);
  output.addVideoTrack(source, { frameRate: each / seconds });
  await output.start();
  for (let step = from; step <= to; step++) {
    frames.paint(step);
    for (let i = 0; i < each; i++) {
      if (stop.aborted) {
        await output.cancel();
        return null;
      }
      await source.add(((step - from) * each + i) * (seconds / each), seconds / each);
    }
    onStep(step - from + 1);
    await aPause();
  }
  await output.finalize();
  return (
    target.buffer && {
      data: new Blob([target.buffer], { type: `video/${isMp4 ? 'mp4' : 'webm'}` }),
      ending: isMp4 ? 'mp4' : 'webm',
    }
  );
}

/** Lets the page draw its progress, and hear that it is to stop. */
const aPause = (): Promise<void> => new Promise((done) => setTimeout(done));
