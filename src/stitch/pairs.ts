/**
 * Right and wrong in the same place. A closing can lie either way: there the two are named for what they do, and
 * the plan says which of them is right.
 */
import { html, type TemplateResult } from 'lit-html';
import type { ActKind } from '../../core/index.ts';
import { term } from '../words/terms.ts';
import type { Speech } from '../words/words.ts';
import { drawing, forHand } from './drawing.ts';
import { sceneAfter } from './frame.ts';
import { chainPassedOver, outerLoops, slipStitchScenes } from './frames/join.ts';
import { closed } from './frames/needle.ts';
import { doubleCrochetScenes } from './frames/short.ts';
import { afterCorner, postPicked } from './frames/tall.ts';
import type { Scene } from './scene.ts';
import { oneRing } from './stages/whole.ts';

export const PAIRS = [
  'both-loops',
  'hidden-missed',
  'post-picked',
  'twisted',
  'closing-adds',
  'closing-over',
  'outer-loops',
  'chain-skipped',
] as const;
export type PairId = (typeof PAIRS)[number];

const inserted = (scenes: ReturnType<typeof doubleCrochetScenes>): Scene => sceneAfter(scenes, 1);
const beside = (): Scene => closed({ adds: 1, yarn: 'foundation' });
const over = (): Scene => closed({ adds: 0, yarn: 'foundation' });

const SCENES: Record<PairId, [right: () => Scene, wrong: () => Scene]> = {
  'both-loops': [
    () => inserted(doubleCrochetScenes('along', false)),
    () => inserted(doubleCrochetScenes('along', true)),
  ],
  'hidden-missed': [
    () => inserted(doubleCrochetScenes('hidden')),
    () => inserted(doubleCrochetScenes('past-hidden')),
  ],
  'post-picked': [() => afterCorner(2), () => postPicked(2)],
  twisted: [() => oneRing(false), () => oneRing(true)],
  'closing-adds': [beside, over],
  'closing-over': [over, beside],
  'outer-loops': [() => inserted(slipStitchScenes()), outerLoops],
  'chain-skipped': [() => inserted(slipStitchScenes('corner', 1)), chainPassedOver],
};

/** The two scenes of a pair, for this hand. */
export const scenesOfPair = (id: PairId, hand: Speech['hand']): [right: Scene, wrong: Scene] => [
  forHand(SCENES[id][0](), hand),
  forHand(SCENES[id][1](), hand),
];

const SHOWS: Partial<Record<ActKind, PairId>> = {
  'both-loops': 'both-loops',
  'hidden-missed': 'hidden-missed',
  'closing-over-first': 'closing-adds',
  'closing-beside-first': 'closing-over',
  'join-chain-skipped': 'chain-skipped',
  twisted: 'twisted',
};

/** The pair that shows what a hand did otherwise, or null where no picture of a stitch tells it. */
export const pairOf = (kind: ActKind): PairId | null => SHOWS[kind] ?? null;

/** What each of the two does, in a few words. */
export function sayPair(id: PairId, { dialect }: Pick<Speech, 'dialect'>): [right: string, wrong: string] {
  const t = (name: Parameters<typeof term>[0], form?: Parameters<typeof term>[2]) =>
    term(name, dialect, form);
  switch (id) {
    case 'both-loops':
      return ['The back loop: the front loop stays free', 'Both loops: no free line of loops is left'];
    case 'hidden-missed':
      return ['The stitch tucked against the corner', `It is ${t('miss', 'done')}: the side is 1 short`];
    case 'post-picked':
      return ['The base chain: the base goes on', 'The post: the base ends, and it pulls'];
    case 'twisted':
      return ['The base stays inside all round', 'Turned over once: close it, and it stays'];
    case 'closing-adds':
      return ['Beside the first stitch: it makes 1', 'Over the first stitch: the side is 1 short'];
    case 'closing-over':
      return ['Over the first stitch: it makes none', 'Beside the first stitch: the side is 1 too long'];
    case 'outer-loops':
      return ['The inner 2: a fine line on each side', 'The outer 2: the seam lies on top'];
    case 'chain-skipped':
      return ['Every chain of the corner is joined', 'A chain is passed over: a hole, and 1 left over'];
  }
}

/** The mistake's name, and how one sees it on the work. */
export function sayMistake(id: PairId, { dialect }: Pick<Speech, 'dialect'>): { act: string; why: string } {
  const missed = term('miss', dialect, 'done');
  switch (id) {
    case 'both-loops':
      return {
        act: 'Both loops taken.',
        why: 'Seen by the line of front loops: it ends there. No count changes.',
      };
    case 'hidden-missed':
      return {
        act: `The hidden stitch ${missed}.`,
        why: 'Seen as a hole beside the corner. The side is 1 short.',
      };
    case 'post-picked':
      return {
        act: 'The post picked up instead of the base chain.',
        why: 'Seen by the base: it ends there, and a corner will not lie flat.',
      };
    case 'twisted':
      return {
        act: 'The ring twisted.',
        why: 'Seen by following the base: somewhere it changes to the outside.',
      };
    case 'closing-adds':
    case 'closing-over':
      return {
        act: 'Closing beside or over.',
        why: 'Count side 1: the one makes a stitch, the other makes none.',
      };
    case 'outer-loops':
      return {
        act: 'The outer loops joined.',
        why: 'Seen by the seam: it lies on top, and no line is left beside it.',
      };
    case 'chain-skipped':
      return {
        act: 'A corner chain passed over.',
        why: 'Seen as a hole in the corner, and 1 is left over at the end.',
      };
  }
}

/** Both pictures side by side, the right one first. */
export function rightAndWrong(id: PairId, speech: Speech): TemplateResult {
  const [right, wrong] = scenesOfPair(id, speech.hand);
  const [saysRight, saysWrong] = sayPair(id, speech);
  return html`<div class="right-wrong">
    <figure class="is-right">${drawing(right)}<figcaption><b>✓ Right</b> ${saysRight}</figcaption></figure>
    <figure class="is-wrong">${drawing(wrong)}<figcaption><b>✕ Not so</b> ${saysWrong}</figcaption></figure>
  </div>`;
}
