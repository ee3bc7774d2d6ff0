/** Picks and draws: the picture of a move on its way, and the one picture that shows a whole step. */
import type { SVGTemplateResult } from 'lit-html';
import type { Step } from '../../core/index.ts';
import { term } from '../words/terms.ts';
import { neighbour, type Told } from '../words/walk/telling.ts';
import type { Speech } from '../words/words.ts';
import { sceneAfter } from './frame.ts';
import { closed } from './frames/needle.ts';
import { afterCorner, tallScenes } from './frames/tall.ts';
import { picture } from './render.ts';
import { mirror, type Scene, tweenAll } from './scene.ts';
import * as cushion from './stages/cushion.ts';
import * as edge from './stages/edge.ts';
import { rings } from './stages/whole.ts';
import { plain, scenesOf, type Variant, variantOf } from './variant.ts';

/** The scene after `done` moves, for this hand. */
export function stillScene(variant: Variant, done: number, hand: Speech['hand']): Scene {
  return forHand(sceneAfter(scenesOf(variant), done), hand);
}

/** The scene on the way of move `index` (from 0), `t` from 0 (before) to 1 (after). */
export function movingScene(variant: Variant, index: number, t: number, hand: Speech['hand']): Scene {
  return forHand(tweenAll(scenesOf(variant).moves[index] ?? [], t), hand);
}

/** The scene on the way through the whole stitch, `t` from 0 (before) to 1 (made). */
export function wholeScene(variant: Variant, t: number, hand: Speech['hand']): Scene {
  const { start, moves } = scenesOf(variant);
  if (t <= 0) return forHand(start, hand);
  const place = Math.min(1, t) * moves.length;
  const index = Math.min(moves.length - 1, Math.floor(place));
  return forHand(tweenAll(moves[index] ?? [], place - index), hand);
}

export const forHand = (scene: Scene, hand: Speech['hand']): Scene =>
  hand === 'left' ? mirror(scene) : scene;

/** A scene drawn; `says` describes it in words. */
export const drawing = (scene: Scene, says?: string): SVGTemplateResult => picture(scene, says);

/** The picture that belongs to a step of a making: where the hook or needle goes, or what to look at. */
export function stepDrawing(step: Step, making: Told, speech: Speech, says?: string): SVGTemplateResult {
  return picture(stepScene(step, making, speech), says);
}

export function stepScene(step: Step, making: Told, speech: Speech): Scene {
  return forHand(stageScene(step, making, speech) ?? inStitch(step, making), speech.hand);
}

/** In a stitch, the picture with the hook gone in says most; a chain shows the yarn drawn through. */
function inStitch(step: Step, making: Told): Scene {
  const variant = variantOf(step, making);
  if (variant === null) return [];
  const scenes = scenesOf(variant);
  const insert = variant.kind.startsWith('foundation') || variant.kind === 'treble' ? 2 : 1;
  return sceneAfter(scenes, variant.kind === 'chain' ? 1 : insert);
}

/** Steps that are no stitch, and stitches whose place says more than their moves; null for the rest. */
function stageScene(step: Step, making: Told, { dialect }: Speech): Scene | null {
  const { edge: front, choices, foundation } = making.plan;
  const lying = front.corners.length > 0 ? 'square' : 'round';
  switch (step.kind) {
    case 'count-stitch':
      return edge.counting(
        step.place === 0 && front.corners.at(step.side - 1)?.made === 'chain' ? 'first' : 'along',
        // Of a round panel, the first V is marked to find the end again.
        step.marker || (front.corners.length === 0 && step.place === 0),
      );
    case 'count-corner':
      return edge.counting(
        front.corners[step.corner]?.made === 'stitch' ? 'stitch' : step.place === 0 ? 'chain' : 'next-chain',
      );
    case 'slip-knot':
      return edge.slipKnot();
    case 'start-chains':
      return tallScenes('foundation-start').start;
    case 'foundation-treble': {
      // A leg's first treble after a corner goes below its chains.
      const before = neighbour({ step, making }, -1);
      if (before?.kind !== 'corner-chain') return null;
      return afterCorner(foundation.corners[before.corner]?.size ?? 2);
    }
    case 'fasten-off':
      return sceneAfter(scenesOf(variantOf(step, making) ?? plain('fasten-off')), 1);
    case 'tape-ends':
      return edge.taped();
    case 'check-twist':
      return rings('flat', 'twisted', lying === 'round');
    case 'close-tops':
    case 'close-round':
    case 'join-close':
      return closed(variantOf(step, making) ?? { adds: 1, yarn: 'foundation' });
    case 'close-base':
      return edge.closingBase();
    case 'weave-ends':
      return edge.weaving(step.stage === 'edging-closing' ? 'edging' : 'foundation');
    case 'right-side':
      return edge.twoSides('right side', 'wrong side');
    case 'attach':
      return edge.attaching();
    case 'lay-strip':
      return cushion.laid(lying);
    case 'pins-out':
      return cushion.sewn(lying);
    case 'sew-fast':
      return edge.weaving('thread');
    case 'cloth-centres':
      return cushion.pinned('middles', lying);
    case 'cloth-corners':
      return cushion.pinned('corners', lying);
    case 'cloth-pins':
      return cushion.pinned('all', lying);
    case 'turn-strip':
      return cushion.turning(lying);
    case 'wrong-sides':
      return cushion.together('front', 'back', lying);
    case 'join-marker':
      return edge.markedPair(
        // Beside a side that stays open the pair is the last one: nothing is counted to it.
        lying === 'round' || choices.open !== undefined ? 0 : choices.joinStart.fromCorner,
        front.corners[step.side]?.made !== 'stitch',
      );
    case 'join-attach':
      return edge.attachingJoin();
    case 'long-loop':
      return edge.longLoop();
    case 'pad-in':
      return cushion.padding(making.becomes === 'cover' ? 'form' : term('cushion-pad', dialect), lying);
    case 'pin-last':
      return cushion.lastSide(lying);
    case 'take-loop':
      return edge.shortLoop();
    case 'look-for-holes':
      return edge.hole();
    case 'ends-inside':
      return edge.endsInside();
    case 'finished':
      return cushion.whole(lying, {
        sides: front.sides.map(String),
        all: `${neighbour({ step, making }, -1)?.done ?? making.plan.pairs}`,
        open: choices.open,
      });
    default:
      return null;
  }
}
