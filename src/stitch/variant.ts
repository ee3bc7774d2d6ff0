/** Which pictures belong to a step: the stitch, and what about its surroundings changes them. */
import type { Step } from '../../core/index.ts';
import type { MoveScenes } from './frame.ts';
import { closingScenes, runningScenes } from './frames-needle.ts';
import { type ChainAfter, chainScenes, doubleCrochetScenes, slipStitchScenes } from './frames-short.ts';
import { tallScenes } from './frames-tall.ts';
import { kindOf, type StitchKind } from './moves.ts';
import type { YarnName } from './scene.ts';

export type Variant = {
  kind: StitchKind;
  yarn: YarnName;
  /** A closing: does it make a stitch of its own? */
  adds: 0 | 1;
  /** A double crochet: does it go into a corner chain? */
  intoCorner: boolean;
  /** A chain: what it follows, and how many lie there already (2 at most are shown). */
  after: ChainAfter;
  made: number;
  /** A running stitch: the second pass? */
  back: boolean;
};

/** A plain stitch of a kind, outside any step. */
export const plain = (kind: StitchKind): Variant => ({
  kind,
  yarn: 'foundation',
  adds: 1,
  intoCorner: false,
  after: 'foundation',
  made: 0,
  back: false,
});

/** The stitch inside a step, or null where there is none to open. */
export function variantOf(step: Step): Variant | null {
  const kind = kindOf(step);
  if (kind === null) return null;
  return {
    ...plain(kind),
    yarn: yarnOf(step),
    // A closing that makes a stitch makes a node.
    adds: step.node >= 0 && step.kind !== 'join-close' ? 1 : 0,
    intoCorner: step.target.loop === 'corner-chain',
    after: step.kind === 'start-chains' ? 'knot' : step.stage === 'edging' ? 'edging' : 'foundation',
    made: step.kind === 'corner-chain' ? Math.min(step.place, 2) : 0,
    back: step.kind === 'sew-back',
  };
}

const yarnOf = ({ yarn }: Step): YarnName => (yarn === 'none' ? 'foundation' : yarn);

const kept = new Map<string, MoveScenes>();

/** The pictures of a stitch; worked out once. */
export function scenesOf(variant: Variant): MoveScenes {
  const key = JSON.stringify(variant);
  const found = kept.get(key) ?? build(variant);
  kept.set(key, found);
  return found;
}

function build({ kind, adds, yarn, intoCorner, after, made, back }: Variant): MoveScenes {
  switch (kind) {
    case 'chain':
      return chainScenes(after, made);
    case 'slip-stitch':
      return slipStitchScenes();
    case 'double-crochet':
      return doubleCrochetScenes(intoCorner ? 'corner-chain' : 'back-loop');
    case 'needle-closing':
      return closingScenes({ adds, yarn });
    case 'running-stitch':
      return runningScenes(back);
    default:
      return tallScenes(kind);
  }
}
