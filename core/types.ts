/**
 * The vocabulary of two rounds that must meet.
 *
 * Every value here is plain data. A side or corner index counts from 0 in the
 * working order of the piece it belongs to, right side facing; people are told
 * numbers from 1. Trade terms are UK terms.
 */

import type { Finding } from './finding.ts';

export type CornerMade = 'chain' | 'stitch';

/** A corner of a round: `size` positions, 0–9. Three stitches in one make one corner stitch: size 1. */
export type Corner = { made: CornerMade; size: number };

/** What the maker's number for a side took in. */
export type Counted = 'stitches-only' | 'one-corner' | 'both-corners';

export type EdgeInput = { sides: number[]; corner: Corner | Corner[]; counted: Counted };

/** The sides and corners of any round. `corners[i]` follows `sides[i]`; none on a round panel. */
export type Shape = { sides: number[]; corners: Corner[] };

/** Marks, for the compiler alone, what has been checked: only `readEdge` makes an edge, only `planBack` a plan. */
declare const checked: unique symbol;

/** The last round of the front: `sides[i]` holds ordinary stitches only, whatever was counted. */
export type Edge = Shape & {
  /** All positions: stitches and corner positions. */
  total: number;
  [checked]: 'edge';
};

export type Arm = [before: number, after: number];

export type EdgingChoice = {
  arm: number | [number, number];
  /** Default: the front's corners. */
  corner?: Corner | Corner[];
  /** Round panels only: stitches added, spread evenly. */
  increase?: number;
};

export type StartChoice = {
  /** The front side that back side 0 will face. */
  side: number;
  /** Trebles worked before the first corner. */
  lead?: number;
};

/** A place to begin the join: `fromCorner` positions in, the nearest corner position being the first. */
export type JoinStart = { side: number; fromCorner: number };

export type Choices = {
  edgings?: EdgingChoice[];
  foundationCorner?: Corner;
  start?: StartChoice;
  foundationStart?: { counts: 0 | 1 };
  foundationClosing?: { adds: 0 | 1 };
  edgingClosing?: { adds: 0 | 1 };
  joinStart?: { side: number; fromCorner?: number };
  /** A bag or pocket: the front side that is not joined. The join then begins and ends beside it. */
  open?: number;
  markerEvery?: number;
};

/** Choices with every default filled in. */
export type SettledChoices = {
  edgings: { arm: Arm; increase: number }[];
  foundationCorner: Corner;
  start: { side: number; lead: number };
  foundationStart: { counts: 0 | 1 };
  foundationClosing: { adds: 0 | 1 };
  edgingClosing: { adds: 0 | 1 };
  joinStart: JoinStart;
  /** The front side that stays open, where one does. */
  open?: number;
  markerEvery: number;
};

export type FoundationPlan = Shape & {
  /** Trebles before the first corner, and after the last. On a round panel all are `lead`. */
  lead: number;
  tail: number;
  total: number;
};

export type EdgingPlan = Shape & { arm: Arm; increase: number; total: number };

/** What to work, in the back's own working order (mirrored to the front). */
export type Plan = {
  edge: Edge;
  choices: SettledChoices;
  /** `faces[j]` = the front side that back side j faces. */
  faces: number[];
  /** `cornerFaces[j]` = the front corner that back corner j faces. */
  cornerFaces: number[];
  foundation: FoundationPlan;
  edgings: EdgingPlan[];
  /** Pairs of positions the join takes. */
  pairs: number;
  [checked]: 'plan';
};

/** What a node of the stitch graph is. The numbers are the codes in `Round.kinds`. */
export const NodeKind = {
  /** Ordinary stitch of a side: treble on the foundation, double crochet on an edging. */
  stitch: 0,
  /** Stitch worked into a corner beside the new corner. Counts with its side. */
  arm: 1,
  cornerChain: 2,
  cornerStitch: 3,
  /** The stitch that the closing makes. Counts with side 0. */
  closing: 4,
  /** Starting chains where they count as the first stitch. */
  start: 5,
} as const;
export type NodeCode = (typeof NodeKind)[keyof typeof NodeKind];

export type RoundName = 'front' | 'foundation' | 'edging';

/**
 * One worked round as a stitch graph in columns: node i is followed by node i + 1, the last by the first.
 * Node 0 is the first position worked, so side 0 lies at both ends.
 * 5 bytes a stitch.
 */
export type Round = {
  name: RoundName;
  /** Which edging, counted from 0; 0 on other rounds. */
  edging: number;
  length: number;
  /** Codes of `NodeKind`, one a node. */
  kinds: Uint8Array;
  /** The node of the round below that node i is worked into; on a foundation, the node whose base chain it uses; -1 for none. */
  into: Int32Array;
  /** Node at which each corner begins, in working order. A corner of size 0 is a turn only. */
  turns: number[];
  /** How each corner was made. */
  made: CornerMade[];
  /** The front side that side 0 faces. */
  faces: number;
  /** True if the foundation was closed twisted, and of every round worked on it. */
  twisted: boolean;
  /** Where the hand does otherwise: node index, index of the act in the list given, and whether it is asked for. */
  marks: { node: number; mishap: number; asked?: true }[];
};

/** When a hand can do otherwise: while planning, or in a round. */
export type ActRound = 'plan' | 'foundation' | 'edging' | 'join';

/** How the join was begun and what the hand did on the way. Feed it to `pair` as `start`. */
export type JoinMade = JoinStart & {
  /** Positions by which the back was begun further along in join order (+) or too soon (-). */
  offset?: number;
  /** Sides by which the back was turned from where it belongs. */
  turned?: number;
  /** Back corners of which one position was skipped. */
  skipped?: number[];
  /** The pair where the yarn was attached was never joined. */
  lastHoleOpen?: boolean;
  /** Pairs that take two of one piece with one of the other. */
  together?: Together[];
  /** Front side that stays open: nothing of it is joined, and nothing of it need meet. */
  open?: number;
};

/** The join while acts are put into it: all but the open side is told. */
export type Joining = Required<Omit<JoinMade, 'open'>> & Pick<JoinMade, 'open'>;

/**
 * Two of one piece are taken with one of the other: at stitch `place` of a front side, from 0 in join order, the first
 * of the two if they are the front's. `act`: the act that asks for it.
 */
export type Together = { side: number; place: number; of: 'front' | 'back'; act: number; asked?: true };

export type Worked = { foundation: Round; edgings: Round[]; join: JoinMade };

export type Manner = 'stitch-by-stitch' | 'corner-to-corner';

/**
 * A stretch of the join, in join order. `front` and `back` are position indices: the front's count
 * from the first stitch of side 0, the back's are node indices of its last round.
 * Along a run the front index goes up by one a pair and the back index down by one, both around the ring.
 * A run without partner holds only its own lane: `joined` false and the other index the neighbour it lies beside.
 */
export type PairRun = {
  /** `open`: both are there and belong together, but were left unjoined. */
  kind: 'joined' | 'open' | 'front-alone' | 'back-alone';
  /** Join index of the first: places along the join, whether joined or alone, counted from 0. */
  at: number;
  front: number;
  back: number;
  count: number;
  /** It lies alone in its lane, and is taken with the pair before it: no gap. `act`: what asks for it. */
  together?: { act: number; asked?: true };
};

/** A place without a partner. Indices as the person counts them from 0, on the lane that lacks a stitch. */
export type Gap = {
  /** The piece that lacks stitches here. */
  short: 'front' | 'back';
  /** Front side in which it lies (or, in a corner, the side before it in the front's order). */
  frontSide: number;
  backSide: number;
  /** Set where the gap lies in a corner. */
  frontCorner?: number;
  /** Join index. */
  at: number;
  /** Stitches of the short side worked (in its own order) before the gap. */
  after: number;
  count: number;
  /** Index into `runs`. */
  run: number;
};

export type SideMeeting = {
  frontSide: number;
  backSide: number;
  front: number;
  back: number;
  /** back - front, less what is taken two with one. */
  surplus: number;
  /** Positions by which the back's corner comes late (+) or early (-) at the end of this side, in join order. */
  drift: number;
};

export type Clash = { frontCorner: number; backCorner: number; late: number };

export type ReasonCode =
  | 'twisted'
  | 'corner-count'
  | 'wrong-order'
  | 'turned'
  | 'offset'
  | 'side-short'
  | 'side-long'
  | 'corner-size'
  | 'chain-skipped'
  | 'last-hole'
  | 'left-over';

export type Reason = {
  code: ReasonCode;
  frontSide?: number;
  backSide?: number;
  frontCorner?: number;
  backCorner?: number;
  /** Signed: back minus front. */
  by?: number;
};

export type Verdict = {
  kind: 'meets' | 'meets-with-easing' | 'does-not-meet';
  /** First cause first. */
  reasons: Reason[];
};

export type Pairing = {
  manner: Manner;
  /** Positions on the front and on the back's last round. */
  front: number;
  back: number;
  /** Joined pairs. */
  pairs: number;
  /** Places that are to be joined: of the longer round, less the side that stays open. */
  toJoin: number;
  runs: PairRun[];
  /** In join order. */
  sides: SideMeeting[];
  gaps: Gap[];
  /** Stitch by stitch: corners that fall on something else. */
  clashes: Clash[];
  /** back - front over the whole round, less what is taken two with one. */
  leftOver: number;
  /** Turning the back by this many sides fits better (0: as it is). */
  betterTurn: number;
  verdict: Verdict;
  /** The verdict's reasons as a person tells them: first cause first, then in join order. */
  findings: Finding[];
};

/** What was counted on a round of the back; null where it was not. `total`: all its stitches and corner positions. */
export type RoundSeen = { sides: (number | null)[]; corners?: (number | null)[]; total?: number };

/** What was counted on the work. */
export type Seen = {
  foundation?: RoundSeen;
  edgings?: RoundSeen[];
  front?: { sides: (number | null)[] };
  join?: { drift?: (number | null)[]; leftOver?: number };
};

/** How far the piece is: rounds made, strip sewn on, joined to the end of a front side, or all of it. */
export type Stand =
  | { at: 'foundation' | 'sewn' | 'finished' }
  | { at: 'edging'; edging: number }
  | { at: 'join'; side: number };

export type Stage =
  | 'front'
  | 'foundation'
  | 'foundation-closing'
  | 'edging'
  | 'edging-closing'
  | 'cloth'
  | 'join'
  | 'join-closing'
  | 'finished';

export type StepKind =
  // front: the edge is there; the maker counts along it
  | 'count-stitch'
  | 'count-corner'
  // foundation
  | 'slip-knot'
  | 'start-chains'
  | 'foundation-treble'
  | 'corner-chain'
  | 'corner-stitch'
  // closings
  | 'fasten-off'
  | 'tape-ends'
  | 'check-twist'
  | 'close-tops'
  | 'close-base'
  | 'close-round'
  | 'weave-ends'
  // edging
  | 'right-side'
  | 'attach'
  | 'attach-chain'
  | 'double-crochet'
  // cloth
  | 'lay-strip'
  | 'cloth-centres'
  | 'cloth-corners'
  | 'cloth-pins'
  | 'sew-out'
  | 'sew-back'
  | 'sew-fast'
  | 'pins-out'
  | 'turn-strip'
  // join
  | 'wrong-sides'
  | 'join-marker'
  | 'join-attach'
  | 'slip-stitch'
  | 'long-loop'
  | 'pad-in'
  | 'pin-last'
  | 'take-loop'
  | 'look-for-holes'
  | 'last-hole'
  | 'join-close'
  | 'ends-inside'
  | 'finished';

/** Where the hook goes. `node` is an index on the round named; `loop` which strands are taken. */
export type StepTarget = {
  on: 'front' | 'foundation' | 'edging' | 'nothing';
  edging: number;
  node: number;
  /** Second target of a join: the back's node. */
  backNode?: number;
  loop: 'first-chain' | 'base-chain' | 'both-loops' | 'back-loop' | 'corner-chain' | 'inner-loops' | 'none';
};

/** One act of the making. Everything the walk, the lessons and the drawing need; no words. */
export type Step = {
  index: number;
  stage: Stage;
  kind: StepKind;
  /** Which edging, from 0; 0 elsewhere. */
  edging: number;
  /** Side of the piece being worked (front's during front and join, back's elsewhere); -1 where none applies. */
  side: number;
  /** Corner being worked, else -1. */
  corner: number;
  /** Place within the side or corner from 0, in working order; -1 where none applies. */
  place: number;
  /** Positions of this side or corner when done. */
  of: number;
  /** The node this step makes on its round (join: the front position joined), else -1. */
  node: number;
  /** Join only: the back's node joined, else -1. */
  backNode: number;
  target: StepTarget;
  yarn: 'front' | 'foundation' | 'edging' | 'join' | 'thread' | 'none';
  /** Loops on the hook when the step begins and ends. */
  loopsBefore: number;
  loopsAfter: number;
  /** Positions made in this round (or joined) once this step is done, and in all. */
  done: number;
  ofRound: number;
  /** Stitches still to make after this one until the next marker and the next corner; -1 where none is ahead. */
  toMarker: number;
  toCorner: number;
  /** The next position's stitch is where a marker goes. */
  marker: boolean;
  /** A question that must be answered before going on. */
  asks?: 'twist' | 'pad';
  /** Index of the mishap this step carries out, if any. */
  mishap?: number;
  /** Indices of the acts asked for that it carries out, if any. */
  adjustments?: number[];
};

/** The whole making; nothing is built before it is asked for. */
export type Steps = {
  length: number;
  /** Throws nothing: an index outside gives the nearest end. */
  at(index: number): Step;
  /** First step of each stretch (stage, side or corner), ascending, with what it is. */
  stretches: readonly { from: number; stage: Stage; edging: number; side: number; corner: number }[];
  /** The step that makes a node of a round, or -1. */
  stepOf(round: RoundName | 'join', node: number, edging?: number): number;
};
