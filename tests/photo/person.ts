/**
 * A maker at the screen, as far as taps go: sets the line, marks the first three Vs, has the rest proposed, and looks
 * it over in stretches of ten, in order, putting right what is wrong. Every tap is counted; the line is the same for
 * all ways and is not.
 */
import { savesNothing, stretchSize } from '../../src/photo/counting.ts';
import { type Line, lineThrough, nearestOn } from '../../src/photo/line.ts';
import type { Pixels } from '../../src/photo/strip.ts';
import { type Chance, chanceOf } from './chance.ts';
import type { Point } from './edge.ts';
import type { Picture } from './render.ts';

/** What a way of proposing answers: places in pixels along the line, and whether they look like the marks. */
export type Way = (asked: { pixels: Pixels; line: Line; marks: readonly number[]; lookedTo: number }) => {
  places: number[];
  isAlike: boolean;
};

export type Outcome = {
  /** The first proposals were right: as many as there are Vs, each at its V. */
  exact: boolean;
  /** The first proposals looked like the marks. */
  isAlike: boolean;
  /** A stretch took as many taps as marking it, so that the rest was marked by hand. */
  gaveUp: boolean;
  taps: number;
  byHand: number;
};

/** How far a mark may be from its V, in distances from V to V. */
const near = 0.35;
export const marksFirst = 3;

/** The line as a hand sets it: ends on the first and the last V, and as many points between as the bow needs. */
export function lineByHand({ vees, look }: Picture, chance: Chance): Line {
  const bends = look.bend > 0.08 ? 5 : look.bend > 0.03 ? 3 : look.bend > 0.005 ? 1 : 0;
  const shaky = ({ x, y }: Point): Point => ({
    x: x + 0.08 * look.pitch * chance.normal(),
    y: y + 0.08 * look.pitch * chance.normal(),
  });
  const through = Array.from({ length: bends + 2 }, (_, i) =>
    shaky(vees[Math.round((i * (vees.length - 1)) / (bends + 1))] ?? { x: 0, y: 0 }),
  );
  return lineThrough(through);
}

export function workWith(picture: Picture, way: Way, seed: number): Outcome {
  const chance = chanceOf(seed + 31);
  const line = lineByHand(picture, chance);
  const truth = picture.vees.map((vee) => nearestOn(line, vee).along);
  const stepAt = (i: number): number =>
    ((truth[Math.min(truth.length - 1, i + 1)] ?? 0) - (truth[Math.max(0, i - 1)] ?? 0)) /
    (Math.min(truth.length - 1, i + 1) - Math.max(0, i - 1));
  const tapped = (i: number): number => (truth[i] ?? 0) + 0.07 * stepAt(i) * chance.normal();
  const marks = Array.from({ length: marksFirst }, (_, i) => tapped(i));
  const byHand = truth.length;
  const asked = (lookedTo: number) => way({ pixels: picture, line, marks, lookedTo });
  const first = asked(marks.at(-1) ?? 0);
  let open = first.places;
  const rest = truth.slice(marksFirst);
  const exact =
    open.length === rest.length &&
    open.every((place, i) => Math.abs(place - (rest[i] ?? 0)) <= near * stepAt(i + marksFirst));
  // The marks, and the button that proposes.
  let taps = marksFirst + 1;
  let gaveUp = false;
  let next = marksFirst;
  while (next < truth.length) {
    const looked = open.slice(0, stretchSize);
    const to =
      open.length <= stretchSize ? Number.POSITIVE_INFINITY : (looked.at(-1) ?? 0) + near * stepAt(next);
    const left = new Set(looked);
    let lacking = 0;
    while (next < truth.length && (truth[next] ?? 0) <= to) {
      const at = truth[next] ?? 0;
      const found = [...left].find((place) => Math.abs(place - at) <= near * stepAt(next));
      if (found === undefined) lacking++;
      else left.delete(found);
      marks.push(found ?? tapped(next));
      next++;
    }
    // One that is off is moved; one that lacks is added; one too many is taken away.
    const wrong = Math.max(lacking, left.size);
    taps += wrong + 1;
    if (next >= truth.length) break;
    gaveUp = savesNothing(wrong, looked.length);
    if (gaveUp) open = [];
    else if (wrong > 0) open = asked(marks.at(-1) ?? 0).places;
    else open = open.slice(stretchSize);
    if (open.length === 0) {
      // Nothing more is proposed: the rest is marked by hand.
      taps += truth.length - next;
      next = truth.length;
    }
  }
  return { exact, isAlike: first.isAlike, gaveUp, taps, byHand };
}
