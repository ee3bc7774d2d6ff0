/** Makings for the drawing's tests, from the real core. */
import {
  type Choices,
  type Corner,
  type EdgeInput,
  type Manner,
  type Mishap,
  pair,
  planBack,
  type Result,
  readEdge,
  steps,
  work,
} from '../../core/index.ts';
import { buildScene, positionToSpot, type SceneInput } from '../../src/drawing/scene.ts';
import type { Making, Settings } from '../../src/state/snapshot.ts';
import type { Scene } from '../../src/table/draw-list.ts';

export const CHAINS: Corner = { made: 'chain', size: 2 };

/** 58 and 36 stitches, two chains a corner, 196 positions. */
export const RECTANGLE: EdgeInput = { sides: [58, 36, 58, 36], corner: CHAINS, counted: 'stitches-only' };

export function valueFrom<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

export type MakingOptions = {
  choices?: Choices;
  mishaps?: Mishap[];
  manner?: Manner;
  easing?: 'end' | 'spread';
};

export function makingOf(input: EdgeInput, options: MakingOptions = {}): Making {
  const { choices = {}, mishaps = [], manner = 'corner-to-corner', easing = 'end' } = options;
  const edge = valueFrom(readEdge(input));
  const plan = valueFrom(planBack(edge, choices));
  const worked = work(plan, mishaps);
  const last = worked.edgings.at(-1)!;
  const pairing = pair(edge, last, { start: worked.join, manner, easing });
  return {
    edge,
    plan,
    acts: mishaps,
    worked,
    pairing,
    steps: steps(plan, mishaps, { manner }),
    seen: {},
  };
}

/** One treble missed on the foundation of back side 3, as the person counts. */
export const ONE_SHORT: Mishap = { kind: 'stitch-missed', round: 'foundation', side: 2, place: 20 };

type Given = Partial<Pick<Settings, 'hand' | 'arrangement'>>;

export function inputOf(making: Making, place: number, given: Given = {}): SceneInput {
  const settings = { hand: 'right', arrangement: 'together', ...given } as const;
  return { making, settings, step: making.steps.at(place), pointed: null };
}

export const sceneOf = (making: Making, place = 0, given: Given = {}) =>
  buildScene(inputOf(making, place, given));
export const wholeOf = (scene: Scene) => scene.views.find(({ id }) => id === 'whole')!;
export const closeOf = (scene: Scene) => scene.views.find(({ id }) => id === 'close')!;
export const partOf = (scene: Scene, key: string) => wholeOf(scene).parts.find((part) => part.key === key)!;

/** The place of the back's mark that meets a front stitch. */
export function partnerMark(making: Making, scene: Scene, side: number, index: number) {
  let front = index;
  for (let i = 0; i < side; i++) front += making.edge.sides[i]! + (making.edge.corners[i]?.size ?? 0);
  const run = making.pairing.runs.find(({ kind, front: from, count }) => {
    const along = (front - from + making.pairing.front) % making.pairing.front;
    return kind === 'joined' && along < count;
  })!;
  const along = (front - run.front + making.pairing.front) % making.pairing.front;
  const node = (run.back - along + 2 * making.pairing.back) % making.pairing.back;
  const spot = positionToSpot(scene, { round: 'edging', edging: making.worked.edgings.length - 1, node })!;
  const { marks } = partOf(scene, spot.part);
  return { part: spot.part, index: spot.index, x: marks.x[spot.index]!, y: marks.y[spot.index]! };
}
