/**
 * What the hand does inside one stitch: moves, and how many loops lie on the hook before and after each.
 *
 * Rule: a yarn round the hook or a loop drawn up adds one; drawing through n loops takes n and leaves one;
 * going in changes nothing. Where the yarn is drawn through, it is first laid round the hook: one move.
 * Stitch makings: Craft Yarn Council terms (read); needle and running stitch: common practice.
 */
import type { Step } from '../../core/index.ts';

export const STITCH_KINDS = [
  'chain',
  'slip-stitch',
  'double-crochet',
  'treble',
  'foundation-start',
  'foundation-treble',
  'fasten-off',
  'needle-closing',
  'running-stitch',
] as const;
export type StitchKind = (typeof STITCH_KINDS)[number];

type MoveName =
  | 'yarn-round'
  | 'insert'
  | 'draw-up'
  | 'draw-through'
  | 'pull-out'
  | 'needle-under'
  | 'needle-back'
  | 'snug'
  | 'needle-down'
  | 'needle-up'
  | 'thread-through';

/** Where hook or needle goes. */
export type MoveTarget =
  | 'first-chain'
  | 'base-chain'
  | 'back-loop'
  | 'both-loops'
  | 'inner-loops'
  | 'first-stitch'
  | 'last-stitch'
  | 'strip';

export type Move = {
  move: MoveName;
  loopsBefore: number;
  loopsAfter: number;
  /** How many loops on the hook the yarn is drawn through. */
  through?: number;
  target?: MoveTarget;
};

/** What a move does to the loops on the hook. */
function after(loops: number, { move, through = 0 }: Pick<Move, 'move' | 'through'>): number {
  if (move === 'yarn-round' || move === 'draw-up') return loops + 1;
  if (move === 'draw-through') return loops - through + 1;
  return move === 'pull-out' ? loops - 1 : loops;
}

function run(loops: number, moves: readonly Pick<Move, 'move' | 'through' | 'target'>[]): Move[] {
  let before = loops;
  return moves.map((move) => {
    const made = { ...move, loopsBefore: before, loopsAfter: after(before, move) };
    before = made.loopsAfter;
    return made;
  });
}

const through = (n: number): Pick<Move, 'move' | 'through'> => ({ move: 'draw-through', through: n });

const foundation = (target: MoveTarget): Move[] =>
  run(1, [
    { move: 'yarn-round' },
    { move: 'insert', target },
    { move: 'draw-up' },
    through(1),
    through(2),
    through(2),
  ]);

const MOVES: Record<StitchKind, Move[]> = {
  chain: run(1, [through(1)]),
  'slip-stitch': run(1, [{ move: 'insert', target: 'inner-loops' }, through(1)]),
  'double-crochet': run(1, [{ move: 'insert', target: 'back-loop' }, { move: 'draw-up' }, through(2)]),
  treble: run(1, [
    { move: 'yarn-round' },
    { move: 'insert', target: 'both-loops' },
    { move: 'draw-up' },
    through(2),
    through(2),
  ]),
  'foundation-start': foundation('first-chain'),
  'foundation-treble': foundation('base-chain'),
  'fasten-off': run(1, [{ move: 'pull-out' }]),
  'needle-closing': run(0, [
    { move: 'needle-under', target: 'first-stitch' },
    { move: 'needle-back', target: 'last-stitch' },
    { move: 'snug' },
  ]),
  'running-stitch': run(0, [
    { move: 'needle-down', target: 'strip' },
    { move: 'needle-up', target: 'strip' },
    { move: 'thread-through' },
  ]),
};

/** The moves of a stitch, in order. */
export const movesOf = (kind: StitchKind): readonly Move[] => MOVES[kind];

/** Which stitch a step makes, so that it can be opened; null where there is nothing inside. */
export function kindOf(step: Pick<Step, 'kind' | 'target'>): StitchKind | null {
  switch (step.kind) {
    case 'foundation-treble':
      return step.target.loop === 'first-chain' ? 'foundation-start' : 'foundation-treble';
    case 'start-chains':
    case 'corner-chain':
    case 'attach-chain':
      return 'chain';
    case 'corner-stitch':
      return step.target.loop === 'base-chain' ? 'foundation-treble' : 'double-crochet';
    case 'double-crochet':
    case 'slip-stitch':
      return step.kind;
    case 'last-hole':
      return 'slip-stitch';
    case 'fasten-off':
      return step.kind;
    case 'close-tops':
    case 'close-round':
    case 'join-close':
      return 'needle-closing';
    case 'sew-out':
    case 'sew-back':
      return 'running-stitch';
    default:
      return null;
  }
}
