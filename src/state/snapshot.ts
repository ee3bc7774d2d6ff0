/**
 * The one state. Events go in, a snapshot comes out; panels and the drawing are functions of it.
 * Everything a person typed is kept as typed in `texts`; numbers are read from it anew each time.
 */

import type {
  Act,
  Adjustment,
  Choices,
  CornerMade,
  Counted,
  Edge,
  Manner,
  Mishap,
  Pairing,
  Plan,
  Seen,
  Stand,
  Step,
  Steps,
  Worked,
} from '../../core/index.ts';
import type { Becomes, Cloth } from './cloth-types.ts';
import type { AppProblem } from './problem.ts';

export type Dialect = 'uk' | 'us';
export type Hand = 'right' | 'left';
export type Units = 'cm' | 'inch';
type ThemeChoice = 'auto' | 'light' | 'dark';
/** The places of the app, in the order of their tabs. */
export const tabs = ['edge', 'cloth', 'walk', 'wrong', 'take-along'] as const;
export type Tab = (typeof tabs)[number];

/**
 * Name of a text field: `side.0` (front side as counted), `corner` (size of every corner), `corner.0` (where
 * corners differ), `lead`, `start-side`, `marker-every`, `arm.0`, `arm.0.after`, `increase.0`, `join-from-corner`,
 * `worked.foundation.0` (back side as really worked), `worked.foundation-corner.0`, `worked.edging.0.2` (edging 0, side 2),
 * `worked.edging-corner.0.2`, `seen.front.0` (a recount), `seen.drift.0`, `seen.left-over`.
 */
export type Field = string;

/** What the person has told us; the part that undo, saving and links carry. */
export type Project = {
  name: string;
  /** 0 = a round panel without corners. */
  sideCount: number;
  counted: Counted;
  cornerMade: CornerMade;
  cornersDiffer: boolean;
  /** Edging rounds, 1–12. */
  edgingCount: number;
  /** Choices made by pressing, not typing. Numbers typed are in `texts`. */
  choices: Pick<Choices, 'foundationStart' | 'foundationClosing' | 'edgingClosing'>;
  /** Every text field, exactly as typed. Absent = never touched: the plan's own number shows. */
  texts: Readonly<Record<Field, string>>;
  /** Mishaps put in on purpose, to see what they do. */
  mishaps: readonly Mishap[];
  /** What is to be worked otherwise than the recipe has it, from here on. */
  adjustments: readonly Adjustment[];
  /** How far the piece is, where the person has said so. */
  stands?: Stand;
};

/** How it is shown. Kept, but no part of undo. */
export type Settings = {
  dialect: Dialect;
  /** The other dialect's word stands beside each of the person's own. */
  bothTerms?: boolean;
  hand: Hand;
  units: Units;
  theme: ThemeChoice;
  manner: Manner;
  /** Where a surplus is eased in: at the end of the side or spread along it (corner to corner only). */
  easing: 'end' | 'spread';
  /** One ring inside the other, front and back as two panels, or the foundation as a diagram. */
  arrangement: 'together' | 'apart' | 'diagram';
  /** Hex colours `#rrggbb`. */
  yarns: { front: string; edging: string; foundation: string };
  /** Milliseconds a stitch while playing. */
  pace: number;
  readAloud: boolean;
  stayAwake: boolean;
};

/** All that follows from the project: the last good one where the texts cannot be read just now. */
export type Making = {
  edge: Edge;
  plan: Plan;
  /** What the hand does beside the recipe: mishaps, adjustments, and what the numbers really worked come to. */
  acts: readonly Act[];
  /** How many of these, from the first, are known: put in or asked for. The others only make the numbers typed. Default: all. */
  known?: number;
  worked: Worked;
  pairing: Pairing;
  steps: Steps;
  /** What the person wrote over the plan's numbers, if anything. */
  seen: Seen;
  /** What it is to be, where it was said: its words follow. */
  becomes?: Becomes;
};

export type Snapshot = {
  project: Project;
  settings: Settings;
  /** Problems in the texts as they stand; `isChecked` says whether the person asked to be told. */
  problems: readonly AppProblem[];
  isChecked: boolean;
  /** Mishaps that were put in and cannot happen on this panel: the making goes on without them. */
  unfit: readonly AppProblem[];
  /** The making is the last good one, and not of the numbers as they stand. */
  isStale: boolean;
  making: Making;
  /** Mishaps that are looked at in place of the project's, and the walk as it stood before; kept nowhere. */
  preview: { mishaps: readonly Mishap[]; place: number; answered: Snapshot['answered'] } | null;
  /** Choices that the last change took the ground from: they fell back. */
  settled: readonly { field: Field; side: number }[];
  tab: Tab;
  /** Index into `making.steps`, and that step. */
  place: number;
  step: Step;
  /** State of the making's machine, like `foundation.leg`. */
  stage: string;
  /** Questions answered so far. */
  answered: readonly ('twist' | 'pad')[];
  playing: boolean;
  canUndo: boolean;
  canRedo: boolean;
  /** What follows for the cloth; null until its arithmetic is fetched, which is after the first look. */
  cloth: Cloth | null;
  /** Place on the drawing pointed at: a round's node, or a pair of the join. */
  pointed: Pointed | null;
  /** Which of the pairing's findings the drawing shows, outside the walk. */
  finding: number;
};

export type Pointed = { round: 'front' | 'foundation' | 'edging'; edging: number; node: number };

export type AppEvent =
  | { type: 'TYPE'; field: Field; text: string }
  | { type: 'CHANGE'; project: Partial<Omit<Project, 'texts'>> }
  /** Back to the recipe's numbers: the back's own counts go. */
  | { type: 'CLEAR_WORKED' }
  /** All that was counted goes: the back, the front again, the join. */
  | { type: 'CLEAR_COUNTS' }
  /** Shows what mishaps would do, in place of those that are in; null ends it. Any other change ends it too. */
  /** Looked at in place of what is in; `project`: all of it, where more than its mishaps is another. */
  | { type: 'PREVIEW'; mishaps: readonly Mishap[] | null; project?: Project }
  /** Take over what was really worked, whole; used by the cures. */
  | { type: 'TAKE_SEEN'; seen: Seen }
  | { type: 'CHECK' }
  /** `anew`: another panel, so that no undo leads back into it. */
  | { type: 'OPEN'; project: Project; place?: number; answered?: Snapshot['answered']; anew?: boolean }
  | { type: 'UNDO' }
  | { type: 'REDO' }
  | { type: 'SETTLE'; settings: Partial<Settings> }
  | { type: 'SHOW'; tab: Tab }
  | { type: 'POINT'; at: Pointed | null }
  /** Takes a project of other choices, as one step that can be undone. */
  | { type: 'CHOOSE'; project: Project }
  /** Shows one of the pairing's findings. */
  | { type: 'LOOK_AT'; finding: number }
  | WalkEvent
  | { type: 'PLAY' }
  | { type: 'STOP' };

export type Unit = 'stitch' | 'marker' | 'corner' | 'side' | 'round';

export type WalkEvent =
  | { type: 'NEXT'; by?: Unit }
  | { type: 'BACK'; by?: Unit }
  | { type: 'JUMP'; to: number }
  | { type: 'ANSWER'; asks: 'twist' | 'pad' };

export type Send = (event: AppEvent) => void;
