/** Which pictures belong to a step: the stitch, and what about its surroundings changes them. */
import type { Step } from '../../core/index.ts';
import { armOf, isCornerStep } from '../words/walk/arms.ts';
import { neighbour, type Told } from '../words/walk/telling.ts';
import type { MoveScenes } from './frame.ts';
import { type SlipStitchAt, slipStitchScenes } from './frames/join.ts';
import { closingScenes, fastenOffScenes, runningScenes } from './frames/needle.ts';
import { type ChainAfter, chainScenes, type DoubleCrochetAt, doubleCrochetScenes } from './frames/short.ts';
import { tallScenes } from './frames/tall.ts';
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
  /** Corner chains in the picture: before a chain, beside a double crochet, joined before a slip stitch. */
  made: number;
  /** Where along the round a double crochet goes, and where along the join a slip stitch. */
  where: DoubleCrochetAt;
  joins: SlipStitchAt;
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
  where: 'along',
  joins: 'along',
  back: false,
});

/** The stitch inside a step, or null where there is none to open. `making` is the one the step belongs to. */
export function variantOf(step: Step, making: Told): Variant | null {
  const kind = kindOf(step);
  if (kind === null) return null;
  const where = kind === 'double-crochet' ? whereOf(step, making) : 'along';
  return {
    ...plain(kind),
    yarn: yarnOf(step),
    adds: closingAdds(step, making),
    intoCorner: step.target.loop === 'corner-chain',
    after: afterOf(step),
    made: shownChains(step, making, where),
    where,
    joins: kind === 'slip-stitch' ? joinsOf(step, making) : 'along',
    back: step.kind === 'sew-back',
  };
}

/** A closing that makes a stitch makes a node; the yarn is cut for the closing that comes. */
function closingAdds({ kind, stage, node }: Step, { plan }: Told): 0 | 1 {
  if (stage === 'join-closing') return 0;
  if (kind !== 'fasten-off') return node >= 0 ? 1 : 0;
  return (stage === 'foundation-closing' ? plan.choices.foundationClosing : plan.choices.edgingClosing).adds;
}

function afterOf({ kind, stage }: Step): ChainAfter {
  if (kind === 'start-chains') return 'knot';
  if (kind === 'attach-chain') return 'attach';
  return stage === 'edging' ? 'edging' : 'foundation';
}

function whereOf(step: Step, making: Told): DoubleCrochetAt {
  const before = neighbour({ step, making }, -1);
  if (before?.kind === 'attach-chain')
    return making.plan.choices.edgingClosing.adds === 1 ? 'first' : 'attach-place';
  if (before !== null && before.target.node === step.target.node && before.target.on === step.target.on)
    return 'same-place';
  const arm = armOf({ step, making });
  if (arm === 'after' && before?.kind === 'corner-chain') return 'past-corner';
  if (step.target.loop === 'corner-chain') return 'before-corner';
  const isHidden = arm === null && (isCornerStep(before) || armOf({ step, making }, -1) === 'after');
  return isHidden && before?.target.loop === 'corner-chain' ? 'hidden' : 'along';
}

/** The slip stitch right after attaching has nothing behind it; a corner's chains have no posts. */
function joinsOf(step: Step, making: Told): SlipStitchAt {
  if (step.kind === 'last-hole') return 'last-hole';
  if (step.corner >= 0) return making.plan.edge.corners[step.corner]?.made === 'stitch' ? 'along' : 'corner';
  return neighbour({ step, making }, -1)?.kind === 'join-attach' ? 'first' : 'along';
}

function shownChains(step: Step, making: Told, where: DoubleCrochetAt): number {
  if (step.kind === 'corner-chain' || step.kind === 'slip-stitch')
    return Math.min(Math.max(0, step.place), 2);
  if (where !== 'past-corner' && where !== 'hidden') return 0;
  const { corners } = making.plan.edgings[step.edging] ?? making.plan.foundation;
  const corner = corners[(step.side - 1 + corners.length) % Math.max(1, corners.length)];
  return corner?.made === 'chain' ? Math.min(corner.size, 2) : 0;
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

function build({ kind, adds, yarn, intoCorner, after, made, where, joins, back }: Variant): MoveScenes {
  switch (kind) {
    case 'chain':
      return chainScenes(after, made);
    case 'slip-stitch':
      return slipStitchScenes(joins, made);
    case 'double-crochet':
      return doubleCrochetScenes(where, intoCorner, made);
    case 'fasten-off':
      return fastenOffScenes({ adds, yarn });
    case 'needle-closing':
      return closingScenes({ adds, yarn });
    case 'running-stitch':
      return runningScenes(back);
    default:
      return tallScenes(kind);
  }
}
