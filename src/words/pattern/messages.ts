/** Every sentence of a written pattern. */
import type { Arm } from '../../../core/index.ts';
import type { Becomes } from '../../state/cloth-types.ts';
import type { Speaker } from '../speaker.ts';
import type { TermId } from '../terms.ts';
import type { LineWords } from './line-words.ts';
import type { SheetMessages } from './sheet-messages.ts';
import type { Amount, Counts, Writer, WrittenCorner } from './writing.ts';

type Message<Params = undefined> = [Params] extends [undefined]
  ? (writer: Writer) => string
  : (params: Params, writer: Writer) => string;

/** A run of foundation stitches, and the corner after it. `times`: so many of them on end. */
export type WrittenLeg = { count: Amount; corner: WrittenCorner | null; times: number };

export type PatternHeading =
  | 'sizes'
  | 'panel'
  | 'materials'
  | 'tension'
  | 'abbreviations'
  | 'special'
  | 'counting'
  | 'foundation'
  | 'edging'
  | 'front-strip'
  | 'sewing'
  | 'join'
  | 'notes';

export type PatternMessages = {
  heading: Message<{ of: PatternHeading }>;
  untitled: string;
  by: Message<{ designer: string }>;
  terms: Message;
  hand: Message;
  intro: Message;

  panel: Message<Counts>;
  panelOrder: Message<{ sides: number }>;

  materials: Message<{ markers: number; becomes: Becomes }>[];
  tension: Message;
  abbreviation: Message<{ id: TermId }>;

  /** How the foundation's stitch is made. `corner`: the foundation's first, where it has any. */
  special: Message<{ corner: WrittenCorner | null }>;

  countedApart: Message<{ made: WrittenCorner['made'] }>;
  /** What is called a place. */
  places: Message;
  startingChains: Message<{ count: 0 | 1 }>;
  closings: Message<{ foundation: 0 | 1; edging: 0 | 1 }>;
  /** `faces[j]`: the panel's side that side j faces. */
  faces: Message<{ faces: readonly number[] }>;

  /** `front`: the panel's side that side 0 faces; null without corners. */
  begin: Message<{ front: number | null; chains: number; counts: 0 | 1 }>;
  legs: Message<{ legs: readonly WrittenLeg[] }>;
  markers: Message<{ every: number; cornered: boolean }>;
  closeFoundation: Message<{ adds: 0 | 1; cornered: boolean }>;
  counts: Message<{ counts: Counts; of: 'foundation' | 'edging' }>;

  edgingRound: Message<{ round: number; rounds: number }>;
  joinYarn: Message<{ adds: 0 | 1; cornered: boolean }>;
  alongSides: Message;
  everyCorner: Message<{ arm: Arm; corner: WrittenCorner }>;
  oneCorner: Message<{ index: number; arm: Arm; corner: WrittenCorner }>;
  intoCorner: Message<{ arm: Arm; corner: WrittenCorner['made'] }>;
  increase: Message<{ count: Amount }>;
  closeEdging: Message<{ adds: 0 | 1; cornered: boolean }>;

  /** The strip of a front of cloth. `side`: the panel's side that its side 0 is. */
  frontSame: Message;
  frontMirrored: Message<{ side: number }>;
  frontSewn: Message;

  /** How large, and how that lies to the panel; null where it is not measured. */
  cut: Message<{ cut: { size: string; allowance: string } | null }>;

  sewing: Message<{ cornered: boolean }>[];

  layTogether: Message<{ first: { panel: number; back: number } | null }>;
  beginJoin: Message<{ side: number; back: number; fromCorner: Amount; corner: WrittenCorner | null }>;
  slipStitches: Message<{ pairs: Amount; cornered: boolean }>;
  padIn: Message<{ last: number | null; becomes: Becomes }>;
  /** A bag or pocket: one side of the panel stays open, and the join runs from one of its corners to the other. */
  beginOpen: Message<{ side: number }>;
  leaveOpen: Message<{ side: number }>;
  lastHole: Message;

  sizesKnown: Message<{ names: readonly string[] }>;
  sizeHead: { size: string; panel: string; foundation: string; edging: string; total: string };
  sizeName: Message<{ index: number }>;
};

/** The smallest change with which a written pattern agrees with itself. */
export type WrittenMend =
  | { kind: 'arm' | 'corner'; to: number }
  | { kind: 'takes-corners'; to: boolean }
  | { kind: 'count'; round: number; to: number };

type Say<Params> = (params: Params, speaker: Speaker) => string;

/** The place "Take along". */
export type TakeAlongMessages = Record<
  | 'heading'
  | 'intro'
  | 'yours'
  | 'title'
  | 'designer'
  | 'notes'
  | 'terms'
  | 'termsBoth'
  | 'copy'
  | 'saveText'
  | 'saveMarkdown'
  | 'saveHtml'
  | 'copied'
  | 'notCopied'
  | 'waits'
  | 'pattern'
  | 'sizes'
  | 'sizesIntro'
  | 'sizesField'
  | 'rule'
  | 'ruleField'
  | 'ruleCount'
  | 'ruleApply'
  | 'send'
  | 'sendAbout'
  | 'sendShow'
  | 'sendShowAbout'
  | 'sendShowLetter'
  | 'sendHelp'
  | 'sendHelpAbout'
  | 'sendHelpLetter'
  | 'sendHow'
  | 'sendAddress'
  | 'sendShare'
  | 'sendCopy'
  | 'sendCopied'
  | 'sendSelected'
  | 'sendLines'
  | 'sendLinesAbout'
  | 'sendCopyLines'
  | 'sendLinesCopied'
  | 'clip'
  | 'clipAbout'
  | 'clipFrom'
  | 'clipTo'
  | 'clipPace'
  | 'clipMake'
  | 'clipProgress'
  | 'clipStop'
  | 'clipStopped'
  | 'clipFailed'
  | 'opening'
  | 'openingAbout'
  | 'openingField'
  | 'openingOpen'
  | 'check'
  | 'checkIntro'
  | 'checkField'
  | 'checkSides'
  | 'checkCorner'
  | 'checkArm'
  | 'checkTakes'
  | 'checkNothing'
  | 'checkRead'
  | 'checkRight'
  | 'checkNumbers'
  | 'checkTooFew'
  | 'checkNoMend',
  string
> & {
  saved: Say<{ file: string }>;
  sizesMost: Say<{ most: number }>;
  ruleUnread: Say<{ most: number }>;
  sizeWorks: Say<{ name: string; total: number }>;
  sizeFails: Say<{ name: string; why: string }>;
  sizeUnread: Say<{ line: string; sides: number }>;
  sideOf: Say<{ side: number; name: string }>;
  ringOf: Say<{ name: string }>;
  sendLong: Say<{ signs: number }>;
  clipSeconds: Say<{ seconds: number }>;
  clipLength: Say<{ steps: number; seconds: number }>;
  clipTooLong: Say<{ steps: number; most: number }>;
  clipDone: Say<{ done: number; all: number }>;
  clipSaved: Say<{ file: string; seconds: number }>;
  clipSavedStills: Say<{ file: string; pictures: number }>;
  openingTroubles: Record<'cut' | 'newer' | 'unreadable' | 'nothing', string>;
  checkCount: Say<{ round: number; of: 'side' | 'all'; count: number }>;
  checkOpen: Say<{ round: number }>;
  checkAgrees: Say<{ rounds: number }>;
  checkMend: Say<WrittenMend>;
};

/** What is fetched with the place "Take along", and no sooner. */
export type TakeAlongCatalogue = {
  pattern: PatternMessages;
  takeAlong: TakeAlongMessages;
  sheets: SheetMessages;
  lines: LineWords;
};
