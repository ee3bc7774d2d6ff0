/** The verdict on two rounds in words. All who speak of it speak from the pairing's findings, first cause first. */
import type { CornerCount, CornerMoved, Finding, Pairing, Severity, SideOff } from '../../core/index.ts';
import type { Making } from '../state/snapshot.ts';
import { many } from './numbers.ts';
import type { Speech } from './words.ts';

export type SaidVerdict = {
  kind: Pairing['verdict']['kind'];
  /** The first cause: "Back side 3 is 1 stitch short." */
  head: string;
  /** What comes of it: "Its count tells the side, not the stitch. It meets with easing." Empty where the head says all. */
  body: string;
  /** For the middle of the drawing: "187 of 188 meet". */
  count: string;
  /** How bad it is, where something does not meet. */
  severity?: Severity;
};

/** One finding in words. */
export type SaidFinding = {
  /** Where it is, as short as it goes: "back side 3", "back corner 2", "the whole back". */
  place: string;
  /** What is the matter there, as short as it goes: "1 short", "2 late". */
  off: string;
  /** The sentence: "Back side 3 is 1 stitch short." */
  says: string;
  /** What comes of it, or how sure it is. */
  more: string;
};

export function sayVerdict(
  { pairing, plan }: Pick<Making, 'pairing' | 'plan'>,
  _speech: Speech,
): SaidVerdict {
  const { findings, verdict, pairs } = pairing;
  const { kind } = verdict;
  const count = sayCount(pairing);
  const [first] = findings;
  if (!first) return { kind, head: `All ${pairs} meet.`, body: '', count };
  const sides = plan.edge.sides.length;
  const alike = sayAllAlike(findings, sides);
  const said = alike ?? sayFinding(first, sides);
  const body = [said.more, alike ? '' : sayFurther(findings), sayKind(kind)].filter(Boolean).join(' ');
  const severity = worstOf(findings);
  return { kind, head: said.says, body, count, ...(severity ? { severity } : {}) };
}

/** The place where all sides are off by as much. */
export const EVERY_SIDE = 'every side';

/** The first cause as it is told first: all sides at once where each is off by as much, else the first finding. */
export const sayCause = (findings: readonly Finding[], sideCount: number): SaidFinding | undefined =>
  sayAllAlike(findings, sideCount) ?? (findings[0] && sayFinding(findings[0], sideCount));

function sayAllAlike(findings: readonly Finding[], sideCount: number): SaidFinding | null {
  const sides = findings.filter((one) => one.code === 'side-off');
  const [first] = sides;
  const isAlike =
    first !== undefined &&
    sideCount > 1 &&
    findings.length === sideCount &&
    sides.length === sideCount &&
    sides.every(({ by, taken, follows }) => by === first.by && taken === 0 && !follows);
  if (!isAlike) return null;
  const off = Math.abs(first.by);
  const way = first.by < 0 ? 'short' : 'too long';
  return {
    place: EVERY_SIDE,
    off: `${off} ${way}`,
    says: `Every side of the back is ${many(off, 'stitch', 'stitches')} ${way}.`,
    more: 'A count tells the side, not the stitch.',
  };
}

export const sayCount = ({ pairs, toJoin }: Pick<Pairing, 'pairs' | 'toJoin'>): string =>
  pairs === toJoin ? `${toJoin} meet` : `${pairs} of ${toJoin} meet`;

/** What follows from the first cause is no further cause. */
function sayFurther(findings: readonly Finding[]): string {
  const further = findings.slice(1).filter(({ follows }) => !follows).length;
  return further === 0 ? '' : `And ${further} more.`;
}

function sayKind(kind: Pairing['verdict']['kind']): string {
  return kind === 'meets-with-easing' ? 'It meets with easing.' : 'It does not meet.';
}

/** One finding. Sides and corners are the back's, told from 1. */
export function sayFinding(finding: Finding, sideCount: number): SaidFinding {
  switch (finding.code) {
    case 'twisted':
      return ofWhole('twisted', 'The foundation is twisted.', 'It cannot lie flat.');
    case 'corner-count':
      return sayCornerCount(finding);
    case 'wrong-order':
      return ofWhole(
        'the wrong way round',
        "The back's sides run in the front's order.",
        'They must run the other way round.',
      );
    case 'turned': {
      // The shorter way round.
      const off = `turned by ${many(Math.min(finding.by, sideCount - finding.by), 'side')}`;
      return ofWhole(off, `The back is ${off}.`, 'Turned back by as much, its sides fit better.');
    }
    case 'offset': {
      const off = `${many(Math.abs(finding.by), 'stitch', 'stitches')} ${timeOf(finding.by)}`;
      return {
        place: 'the start of the join',
        off,
        says: `The join begins ${off} on the back.`,
        more: 'Every corner after it is off by as much.',
      };
    }
    case 'corner-moved':
      return sayMoved(finding.corners, finding.sides);
    case 'side-off':
      return saySide(finding, sideCount, finding.follows);
    case 'corner-size': {
      const off = `${Math.abs(finding.by)} too ${finding.by < 0 ? 'small' : 'large'}`;
      const place = `back corner ${finding.backCorner + 1}`;
      return {
        place,
        off,
        says: `${capital(place)} is ${off}.`,
        more: `It meets front corner ${finding.frontCorner + 1}.`,
      };
    }
    case 'chain-skipped': {
      const place = `back corner ${finding.backCorner + 1}`;
      return { place, off: 'a chain missed', says: `The join misses a chain of ${place}.`, more: '' };
    }
    case 'last-hole':
      return {
        place: 'the last hole',
        off: 'open',
        says: 'The last hole is open.',
        more: 'It is where the yarn was attached.',
      };
  }
}

const ofWhole = (off: string, says: string, more: string): SaidFinding => ({
  place: 'the whole back',
  off,
  says,
  more,
});

/** Which corner is lacking is said where the counts tell it; where they do not, that is said. */
function sayCornerCount({ by, leftOut }: CornerCount): SaidFinding {
  const [only, ...others] = leftOut;
  if (only !== undefined && others.length === 0) {
    const place = `back corner ${only + 1}`;
    return {
      place,
      off: 'left out',
      says: `${capital(place)} is left out.`,
      more: 'So the two sides beside it are one.',
    };
  }
  const off = `${many(Math.abs(by), 'corner')} ${by < 0 ? 'too few' : 'too many'}`;
  const which =
    only === undefined || others.length > 2
      ? `The counts do not tell which ${Math.abs(by) === 1 ? 'one' : 'ones'}.`
      : `It is corner ${oneOf(leftOut.map((corner) => `${corner + 1}`))}: the counts do not tell which.`;
  return ofWhole(off, `The back has ${off}.`, which);
}

const oneOf = (names: readonly string[]): string => `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const timeOf = (by: number): string => (by < 0 ? 'early' : 'late');

/** "Back corner 2 comes 2 late." "Back corner 2 comes 2 late, corner 3 1 late." What comes late is counted in the back's own order. */
function sayMoved(corners: readonly CornerMoved[], sides: readonly SideOff[]): SaidFinding {
  const names = corners.map(({ backCorner, by }) => ({
    name: `corner ${backCorner + 1}`,
    off: `${Math.abs(by)} ${timeOf(by)}`,
  }));
  const [first, ...rest] = names;
  const others = rest.map(({ name, off }) => `, ${name} ${off}`).join('');
  const lengths = sides.map(
    ({ backSide, by }) => `side ${backSide + 1} is ${Math.abs(by)} ${by < 0 ? 'short' : 'too long'}`,
  );
  return {
    place: `back ${names.map(({ name }) => name).join(', ')}`,
    off: names.map(({ off }) => off).join(', '),
    says: `Back ${first?.name} comes ${first?.off}${others}.`,
    more: `So ${lengths.slice(0, -1).join(', ')} and ${lengths.at(-1)}.`,
  };
}

function saySide(side: SideOff, sideCount: number, follows: boolean): SaidFinding {
  const { backSide, by, taken } = side;
  if (taken !== 0 && by === -taken) return sayTaken(side, sideCount);
  const isRound = sideCount === 1;
  const off = Math.abs(by);
  const stitches = many(off, 'stitch', 'stitches');
  const place = isRound ? 'the back' : `back side ${backSide + 1}`;
  const unsure = isRound
    ? 'The count does not tell where along it.'
    : 'The count tells the side, not the stitch.';
  return {
    place,
    off: `${off} ${by < 0 ? 'short' : 'too long'}`,
    says: `${capital(place)} is ${stitches} ${by < 0 ? 'short' : 'too long'}.`,
    more: follows ? 'That comes of the cause above.' : unsure,
  };
}

/** Both sides have the same count: only the join is wrong there. */
function sayTaken({ frontSide, taken }: SideOff, sideCount: number): SaidFinding {
  const place = sideCount === 1 ? 'the join' : `front side ${frontSide + 1}`;
  const [two, one] = taken > 0 ? ['back', 'front'] : ['front', 'back'];
  const times = Math.abs(taken) === 1 ? '' : `, ${Math.abs(taken)} times`;
  return {
    place,
    off: `2 of the ${two} with 1${times}`,
    says: `Along ${place}, 2 of the ${two} are taken with 1 of the ${one}${times}.`,
    more: 'Both sides have the same count.',
  };
}

export const SCALE: readonly Severity[] = ['eases-in', 'shows', 'puckers', 'cannot-join'];

/** The worst of all; nothing where a hole is open: that must be closed, however little the rest is off. */
function worstOf(findings: readonly Finding[]): Severity | undefined {
  const steps = findings.map(({ severity }) => (severity === null ? -1 : SCALE.indexOf(severity)));
  return steps.includes(-1) ? undefined : SCALE[Math.max(...steps)];
}

/** What the choice of where a surplus goes does. */
export const sayEasing = (easing: 'end' | 'spread'): string =>
  easing === 'end'
    ? 'Where one side has more than the other, the gap is drawn at the end of that side, beside the next corner.'
    : 'Where one side has more than the other, the gaps are drawn spread evenly along that side, so that each is eased in alone.';

const SEVERITIES: Record<Severity, string> = {
  'eases-in': 'eases in unseen',
  shows: 'shows when looked at',
  puckers: 'puckers',
  'cannot-join': 'cannot be joined',
};

export const saySeverity = (severity: Severity): string => SEVERITIES[severity];
