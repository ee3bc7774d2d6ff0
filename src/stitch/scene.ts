/**
 * A scene is what one still picture shows, as data: yarn, hook, needle, marks and words, each with a height
 * (`z`, low is farther from the eye). It is drawn for a right-handed maker; `mirror` gives the left-handed one.
 */
import { between, type Point } from './point.ts';

/** Width and height of every scene in its own units; one stitch is `STITCH` wide. */
export const WIDE = 400;
export const HIGH = 300;
export const STITCH = 60;

/** Whose yarn a strand is; `marked` strands are the ones the hook takes. */
export type YarnName = 'front' | 'edging' | 'foundation' | 'join' | 'thread';

export type Strand = {
  what: 'strand';
  key: string;
  points: readonly Point[];
  yarn: YarnName;
  z: number;
  /** The place where the hook goes: drawn lighter with a second outline. */
  marked?: boolean;
  /** Still to be made, or a pass of thread under the cloth: drawn as a broken line. */
  faint?: boolean;
  closed?: boolean;
  /** Both ends show: they are drawn round. */
  round?: boolean;
};

/** Hook or needle: the tip, and the angle in degrees from tip to handle, clockwise from +x. */
export type Tool = {
  what: 'hook' | 'needle';
  key: string;
  tip: Point;
  angle: number;
  length: number;
  z: number;
};

type Mark =
  /** Where the hook goes in: a ring. */
  | { what: 'place'; key: string; centre: Point; radius: number; z: number }
  | { what: 'arrow'; key: string; points: readonly Point[]; z: number }
  | {
      what: 'area';
      key: string;
      points: readonly Point[];
      fill: 'cloth' | 'strip' | 'pad' | 'paper' | 'tape' | 'front';
      z: number;
      smooth?: boolean;
    }
  | {
      what: 'line';
      key: string;
      points: readonly Point[];
      broken: boolean;
      z: number;
    }
  | { what: 'pin'; key: string; tip: Point; angle: number; z: number }
  | { what: 'knot'; key: string; centre: Point; yarn: YarnName; z: number }
  | {
      what: 'words';
      key: string;
      where: Point;
      words: string;
      size: number;
      align: 'start' | 'middle' | 'end';
      z: number;
    };

export type Item = Strand | Tool | Mark;

export type Scene = readonly Item[];

export const flip = ([x, y]: Point): Point => [WIDE - x, y];

const ALIGN = { start: 'end', middle: 'middle', end: 'start' } as const;

/** The same scene for the other hand: places are mirrored, words stay as they are read. */
export function mirror(scene: Scene): Scene {
  return scene.map(mirrorItem);
}

function mirrorItem(item: Item): Item {
  switch (item.what) {
    case 'hook':
    case 'needle':
    case 'pin':
      return { ...item, tip: flip(item.tip), angle: 180 - item.angle };
    case 'place':
    case 'knot':
      return { ...item, centre: flip(item.centre) };
    case 'words':
      return { ...item, where: flip(item.where), align: ALIGN[item.align] };
    default:
      return { ...item, points: item.points.map(flip) };
  }
}

/** Scene at t (0–1) on the way between two scenes; items with the same key move, others appear or go half way. */
function tween(before: Scene, after: Scene, t: number): Scene {
  if (t <= 0) return before;
  if (t >= 1) return after;
  const goals = new Map(after.map((item) => [item.key, item]));
  const origins = new Set(before.map((item) => item.key));
  const moving = before.flatMap((item) => {
    const goal = goals.get(item.key);
    if (goal === undefined) return t < 0.5 ? [item] : [];
    return [move(item, goal, t)];
  });
  const appearing = t < 0.5 ? [] : after.filter((item) => !origins.has(item.key));
  return [...moving, ...appearing];
}

function move(item: Item, goal: Item, t: number): Item {
  const base = t < 0.5 ? item : goal;
  if ('tip' in item && 'tip' in goal && 'tip' in base) {
    return {
      ...base,
      tip: between(item.tip, goal.tip, t),
      angle: item.angle + (goal.angle - item.angle) * t,
    };
  }
  if ('points' in item && 'points' in goal && 'points' in base && item.points.length === goal.points.length) {
    return { ...base, points: item.points.map((point, i) => between(point, goal.points[i] ?? point, t)) };
  }
  return base;
}

/** Runs through several scenes in a row, each stretch taking the same time, starting and ending gently. */
export function tweenAll(scenes: readonly Scene[], t: number): Scene {
  const stretches = scenes.length - 1;
  const first = scenes[0] ?? [];
  if (stretches < 1) return first;
  const place = Math.max(0, Math.min(1, t)) * stretches;
  const i = Math.min(stretches - 1, Math.floor(place));
  return tween(scenes[i] ?? first, scenes[i + 1] ?? first, gentle(place - i));
}

const gentle = (t: number): number => t * t * (3 - 2 * t);
