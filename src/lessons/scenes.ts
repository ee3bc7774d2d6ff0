/** The pictures of the questions, with the places that can be tapped. Right-handed; mirrored for the left hand. */

import { forHand, stepScene } from '../stitch/drawing.ts';
import { sceneAfter } from '../stitch/frame.ts';
import { slipStitchScenes } from '../stitch/frames/join.ts';
import { closingScenes } from '../stitch/frames/needle.ts';
import { doubleCrochetScenes } from '../stitch/frames/short.ts';
import { cornerMade, tallScenes } from '../stitch/frames/tall.ts';
import { at, type Point } from '../stitch/point.ts';
import { flip, type Scene, WIDE } from '../stitch/scene.ts';
import * as whole from '../stitch/stages/whole.ts';
import type { Speech } from '../words/words.ts';
import type { Item } from './lesson.ts';
import type { PlaceId, Question } from './questions.ts';

/** What part of the scene is shown, so that places near each other can be tapped apart. */
type Frame = { x: number; y: number; width: number; height: number };

export type Spot = { option: string; centre: Point };

export type Asked = { scene: Scene; frame: Frame; spots: readonly Spot[] };

const MIDDLE_BAND: Frame = { x: 0, y: 44, width: WIDE, height: 220 };
const FULL: Frame = { x: 0, y: 0, width: WIDE, height: 300 };
/** A closer look, three by four, about a middle. */
const close = (x: number, y: number, width: number): Frame => ({
  x: x - width / 2,
  y: y - width * 0.375,
  width,
  height: width * 0.75,
});

type Places = Partial<Record<PlaceId, Point>>;

/** Where the places lie in the scenes of `src/stitch`. */
function placeScene(item: Item): { scene: Scene; frame: Frame; places: Places } {
  const { question, step } = item;
  if (question?.kind !== 'place') return { scene: [], frame: FULL, places: {} };
  switch (question.about) {
    case 'first-treble':
      return {
        scene: sceneAfter(tallScenes('foundation-start'), 1),
        frame: close(250, 190, 230),
        places: { 'first-chain': at(240, 246), 'next-chain': at(284, 214), 'last-chain': at(262, 142) },
      };
    case 'foundation':
      return {
        scene: sceneAfter(tallScenes('foundation-treble'), 1),
        frame: FULL,
        places: { 'base-chain': at(238, 246), post: at(276, 180), top: at(278, 108) },
      };
    case 'corner':
      return {
        scene: cornerMade(2),
        frame: FULL,
        places: { 'base-chain': at(238, 246), post: at(276, 180), 'corner-chain': at(216, 102) },
      };
    case 'chain-or-on':
      return {
        scene: step.place > 0 ? cornerMade(1) : tallScenes('foundation-treble').start,
        frame: FULL,
        places: {
          loop: step.place > 0 ? at(196, 52) : at(236, 52),
          'base-chain': at(238, 246),
          top: at(278, 108),
        },
      };
    case 'stitch':
      return {
        scene: doubleCrochetScenes().start,
        frame: close(206, 196, 120),
        places: { 'back-loop': at(206, 183), 'front-loop': at(206, 211), 'both-loops': at(172, 197) },
      };
    case 'hidden':
      return {
        scene: doubleCrochetScenes('hidden').start,
        frame: close(190, 180, 250),
        places: { 'hidden-stitch': at(204, 196), 'second-stitch': at(144, 196) },
      };
    case 'arms': {
      // Before the new corner both chains are free; past it, the first holds a stitch already.
      const isBefore = question.right[0] === 'first-corner-chain';
      const first = isBefore ? 204 : 264;
      return {
        scene: doubleCrochetScenes(isBefore ? 'before-corner' : 'past-corner').start,
        frame: close(isBefore ? 160 : 208, 176, 270),
        places: {
          'first-corner-chain': at(first, 196),
          'second-corner-chain': at(first - 60, 196),
          'next-stitch': at(first - 120, 196),
        },
      };
    }
    case 'join':
      return {
        scene: slipStitchScenes().start,
        frame: close(200, 175, 170),
        places: { 'inner-loops': at(190, 175), 'front-loops': at(162, 202), 'back-loops': at(162, 148) },
      };
    case 'corner-pair': {
      // The front's chain lies at the hook; its partner lies beyond it, the corner's other chain a stitch on or back.
      const first = step.place === 0 ? 206 : 266;
      return {
        scene: slipStitchScenes('corner', step.place).start,
        frame: close(step.place === 0 ? 206 : 230, 170, 270),
        places: {
          'first-place': at(first, 146),
          'second-place': at(first - 60, 146),
          'stitch-before': at(first + 60, 146),
        },
      };
    }
    case 'needle': {
      const adds = step.node >= 0 ? 1 : 0;
      const first = adds === 1 ? 158 : 218;
      return {
        scene: closingScenes({ adds, yarn: 'foundation' }).start,
        frame: close(170, 160, 260),
        places: { 'first-stitch': at(first, 168), 'second-stitch': at(first - 60, 168) },
      };
    }
  }
}

/** How it lies before the step that is asked about: the step's own picture would tell. */
const sceneBefore = ({ step, making }: Item, speech: Speech): Scene =>
  stepScene(making.steps.at(step.index - 1), making, speech);

/** Which way both pieces run; the view is named under each. */
export const bothWays = (): Scene =>
  whole.mirrored("the front's / right side", "the back's / right side", 'the back, seen / from the front');

/** The picture for an item's question. */
export function askedScene(item: Item, speech: Speech): Asked {
  const { question } = item;
  if (question === null) return { scene: [], frame: FULL, spots: [] };
  if (question.kind === 'choice') return { scene: sceneBefore(item, speech), frame: FULL, spots: [] };
  const { scene, frame, spots } =
    question.kind === 'place' ? placeQuestion(item, question) : otherQuestion(question, item);
  if (speech.hand === 'right') return { scene, frame, spots };
  return {
    scene: forHand(scene, 'left'),
    frame: { ...frame, x: WIDE - frame.x - frame.width },
    spots: spots.map((spot) => ({ ...spot, centre: flip(spot.centre) })),
  };
}

function placeQuestion(item: Item, question: Extract<Question, { kind: 'place' }>): Asked {
  const { scene, frame, places } = placeScene(item);
  const spots = question.options.flatMap((option): Spot[] => {
    const centre = places[option];
    return centre === undefined ? [] : [{ option, centre }];
  });
  return { scene, frame, spots };
}

function otherQuestion(question: Exclude<Question, { kind: 'place' | 'choice' }>, { step }: Item): Asked {
  if (question.kind === 'count') {
    const adds = step.node >= 0 ? 1 : 0;
    return { scene: sceneAfter(closingScenes({ adds, yarn: 'foundation' }), 3), frame: FULL, spots: [] };
  }
  if (question.kind === 'faces')
    return {
      scene: bothWays(),
      frame: MIDDLE_BAND,
      spots: [],
    };
  return { scene: [], frame: FULL, spots: [] };
}
