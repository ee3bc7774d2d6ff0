/** What the page holds while a side is counted on a photo. */
import type { Field, Send, Snapshot } from '../state/snapshot.ts';
import type { Counting, CountingEvent } from './counting.ts';
import { alongOf, lineOf, openStretch } from './counting.ts';
import type { FileProblem } from './file.ts';
import type { Point } from './line.ts';
import { pitchOf } from './propose.ts';

type ShownPhoto = { picture: ImageBitmap; width: number; height: number };
type ShownStrip = { picture: ImageBitmap; half: number; step: number };

export type View = {
  field: Field;
  /** The field's name in full. */
  name: string;
  snapshot: Snapshot;
  send: Send;
  photo: ShownPhoto | null;
  isReading: boolean;
  problem: FileProblem | null;
  counting: Counting;
  strip: ShownStrip | null;
  /** The point of the line that keys move. */
  inHand: number | null;
  /** Where keys put the next point, in pixels of the photo. */
  cross: Point | null;
  /** Where keys mark, in pixels along the line. */
  place: number;
  /** The strip: pixels of the screen for one of the photo (0: as the marks ask), and what stands at its left end. */
  zoom: number;
  left: number;
  /** How wide the strip is shown, in pixels of the screen. */
  width: number;
  /** How far the comparing is, from 0 to 1; null where nothing is compared. */
  progress: number | null;
  /** The last thing that was said. */
  said: string;
  counted: string | null;
  panel: string;
};

export type Acts = {
  act(event: CountingEvent): void;
  /** Takes over a part of the view and draws it. */
  change(part: Partial<View>): void;
};

/** Between two Vs on the strip, in pixels of the screen: wide enough for a thumb. */
const wideForThumb = 46;
/** And no closer together than this. */
const leastWide = 26;
/** Vs of a side, as long as nothing is marked. */
const usualCount = 60;

/** Pixels of the photo from V to V, guessed until two are marked. */
export function pitchIn({ counting: { now } }: Pick<View, 'counting'>): number {
  const line = lineOf(now);
  const marks = alongOf(now);
  return marks.length > 1 ? Math.max(2, pitchOf(marks)) : Math.max(2, (line?.length ?? 0) / usualCount);
}

/** As large as a thumb asks; smaller where a stretch that is to be looked over would else not be seen at once. */
export function zoomOf(view: View): number {
  if (view.zoom > 0) return view.zoom;
  const pitch = pitchIn(view);
  const stretch = openStretch(view.counting.now);
  const along = alongOf(view.counting.now);
  if (!stretch) return wideForThumb / pitch;
  const long = (along[stretch.to] ?? 0) - (along[stretch.from] ?? 0) + 1.6 * pitch;
  return Math.min(wideForThumb / pitch, Math.max(leastWide / pitch, view.width / long));
}

/** A tap on the strip as near as this to a mark is about that mark, in pixels of the photo. */
export const reachOf = (view: View): number =>
  alongOf(view.counting.now).length > 1 ? 0.38 * pitchIn(view) : 16 / zoomOf(view);

/** The left end of the strip, kept so that the line is in sight. */
export function heldLeft(view: View, left: number, width: number): number {
  const length = lineOf(view.counting.now)?.length ?? 0;
  const shown = width / zoomOf(view);
  const over = Math.min(shown / 2, pitchIn(view) * 2);
  return Math.min(Math.max(left, -over), Math.max(-over, length + over - shown));
}
