/** Loops on the hook: each is two strands, one behind the shaft and one before it, meeting on top. */
import { type Axes, add, between, from, heading, type Point, times } from './point.ts';
import type { Strand, Tool, YarnName } from './scene.ts';
import { SHAFT } from './tools.ts';

export const Z = {
  far: 10,
  behind: 30,
  back: 40,
  hook: 50,
  over: 60,
  near: 70,
  mark: 80,
  words: 90,
} as const;

export const hookAt = (tip: Point, angle: number): Tool => ({
  what: 'hook',
  key: 'hook',
  tip,
  angle,
  length: 420,
  z: Z.hook,
});

/** A hook's own frame, so far along its shaft from the tip: along it to the handle, and across to the upper side. */
function axes(hook: Tool, on: number, other = false): Axes {
  const along = heading(hook.angle);
  const up: Point = along[0] >= 0 !== other ? [along[1], -along[0]] : [-along[1], along[0]];
  return { origin: add(hook.tip, times(along, on)), along, across: up };
}

export type LoopSpec = {
  key: string;
  yarn: YarnName;
  /** Distance from the hook's tip along the shaft. */
  on: number;
  /** The ways its two strands come: the one passing before the hook and the one behind. */
  front: readonly Point[];
  back: readonly Point[];
  /** On a steep hook: the loop hangs from the other side. */
  other?: boolean;
};

/** A loop lying on the shaft. */
export function loopOn(hook: Tool, { key, yarn, on, front, back, other }: LoopSpec): Strand[] {
  const own = axes(hook, on, other);
  const spot = (u: number, v: number): Point => from(own, u, v);
  const top = SHAFT + 4;
  const round = (way: readonly Point[], side: 1 | -1): Point[] => [
    ...way,
    spot(side * 6, -SHAFT - 6),
    spot(side * 7.5, -2),
    spot(side * 5, top - 3),
    spot(-side * 1.5, top),
    spot(-side * 5, top - 4),
  ];
  return [
    { what: 'strand', key: `${key}-back`, yarn, z: Z.back, points: round(back, 1) },
    { what: 'strand', key: `${key}-front`, yarn, z: Z.over, points: round(front, -1) },
  ];
}

/**
 * The working yarn where a hook catches it: from where the work holds it, and away to the ball, straight where
 * `away` is one point, or through the points it names.
 */
export type WorkingYarn = { yarn: YarnName; held: readonly Point[]; away: readonly Point[] };

/** The yarn caught in the throat: it runs over the hook's head. */
export function caughtIn(hook: Tool, { yarn, held, away }: WorkingYarn): Strand[] {
  const throat = axes(hook, 25);
  const spot = (u: number, v: number): Point => from(throat, u, v);
  const out = spot(-30, -SHAFT - 8);
  const first = away[0] ?? out;
  return [
    {
      what: 'strand',
      key: 'caught-back',
      yarn,
      z: Z.back,
      points: [...held, spot(12, -SHAFT - 6), spot(10, 0), spot(6, SHAFT + 2), spot(0, SHAFT + 4)],
    },
    {
      what: 'strand',
      key: 'caught-front',
      yarn,
      z: Z.over,
      points: [
        spot(6, SHAFT + 1),
        spot(2, SHAFT + 4),
        spot(-3, SHAFT - 1),
        spot(-2, 0),
        spot(-8, -SHAFT - 3),
        ...(away.length > 1 ? [] : [out, add(between(out, first, 0.45), [6, 14])]),
        ...away,
      ],
    },
  ];
}

/** The hook drawn back along itself: out of the loops nearest its tip. */
export const drawnBack = (hook: Tool, by: number): Tool => ({
  ...hook,
  tip: add(hook.tip, times(heading(hook.angle), by)),
});
