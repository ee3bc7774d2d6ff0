/** Every sentence of the sheets to print. */
import type { Hand, Units } from '../../state/snapshot.ts';
import type { Speaker } from '../speaker.ts';

export type SheetKind = 'pattern' | 'recipe' | 'ring' | 'ticks' | 'cloth' | 'stitch';

/** A stretch that is ticked off: a side (`part` of `parts`, where it is worked in several) or the whole round. */
export type TickedSide = {
  of: 'foundation' | 'edging' | 'join';
  /** Of the strip of a front of cloth: the side is the front's. */
  isFront: boolean;
  side: number | null;
  part: number;
  parts: number;
  /** Stitches or pairs of this stretch. */
  count: number;
};

export type TickedAct = 'closing' | 'pad-in' | 'last-pair';

type Say<Params> = (params: Params, speaker: Speaker) => string;

export type SheetMessages = Record<
  | 'heading'
  | 'intro'
  | 'which'
  | 'paper'
  | 'print'
  | 'trueSize'
  | 'untitled'
  | 'scan'
  | 'linkLong'
  | 'recipe'
  | 'foundation'
  | 'join'
  | 'ring'
  | 'saveSvg'
  | 'savePng'
  | 'pictureFailed'
  | 'coming'
  | 'counted'
  | 'clothWaits'
  | 'toCloth'
  | 'cut'
  | 'strip'
  | 'stitch'
  | 'begin'
  | 'form',
  string
> & {
  kinds: Record<SheetKind, string>;
  papers: Record<'a4' | 'letter', string>;
  hand: Record<Hand, string>;
  units: Record<Units, string>;
  date: Say<{ date: Date }>;
  page: Say<{ page: number; pages: number }>;
  pageOf: Say<{ of: string; page: number; pages: number }>;
  link: Say<{ link: string }>;
  edging: Say<{ round: number; rounds: number }>;
  frontStrip: (params: { heading: string }) => string;
  goesOn: Say<{ heading: string }>;
  boxes: Say<{ every: number }>;
  ticked: Say<TickedSide>;
  tickedCount: Say<TickedSide>;
  corner: Say<{ corner: number }>;
  act: Say<{ act: TickedAct; pad: string }>;
  atEnd: Say<{ sides: readonly number[]; corners: readonly number[]; total: number }>;
  pairs: Say<{ pairs: number }>;
  tooMany: Say<{ boxes: number; most: number }>;
  move: Say<{ move: number }>;
};
