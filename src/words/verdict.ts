/** The verdict on two rounds, said in two short sentences: what is the matter, and where. */
import type { Gap, Pairing, Reason } from '../../core/index.ts';
import type { Making } from '../state/snapshot.ts';
import { many } from './numbers.ts';
import type { Speech } from './words.ts';

export type SaidVerdict = {
  kind: Pairing['verdict']['kind'];
  /** The answer: "One gap." */
  head: string;
  /** Where, or what to do: "Back side 3 is 1 stitch short, after stitch 54." Empty where the head says all. */
  body: string;
  /** For the middle of the drawing: "187 of 188 meet". */
  count: string;
};

/** First cause first; further causes are counted, not told, so that the sentence stays short. */
export function sayVerdict(making: Pick<Making, 'pairing' | 'plan'>, speech: Speech): SaidVerdict {
  const { pairing } = making;
  const count = sayCount(pairing);
  const { kind, reasons } = pairing.verdict;
  const [first] = reasons;
  if (kind === 'meets') return { kind, head: `All ${pairing.pairs} meet.`, body: '', count };
  const body = first ? sayReason(first, pairing, making.plan.edge.sides.length, speech) : '';
  if (kind === 'meets-with-easing')
    return { kind, head: sayGaps(pairing.gaps), body: `${body} It meets with easing.`, count };
  return {
    kind,
    head: sayGaps(pairing.gaps),
    body: [body, sayFurther(reasons)].filter(Boolean).join(' '),
    count,
  };
}

export function sayCount(pairing: Pick<Pairing, 'pairs' | 'front' | 'back'>): string {
  const all = Math.max(pairing.front, pairing.back);
  return pairing.pairs === all ? `${all} meet` : `${pairing.pairs} of ${all} meet`;
}

/** One sentence for one cause. Sides and corners are told from 1. */
export function sayReason(reason: Reason, pairing: Pairing, sideCount: number, _speech: Speech): string {
  const by = Math.abs(reason.by ?? 1);
  const side = sideCount === 1 ? 'The back' : `Back side ${(reason.backSide ?? 0) + 1}`;
  const corner = `Back corner ${(reason.backCorner ?? 0) + 1}`;
  switch (reason.code) {
    case 'twisted':
      return 'The foundation is twisted. It cannot lie flat.';
    case 'corner-count':
      return `The back has ${many(by, 'corner')} ${(reason.by ?? 0) < 0 ? 'too few' : 'too many'}.`;
    case 'wrong-order':
      return "The back's sides run in the front's order. They run the other way round.";
    case 'turned':
      return `The back is turned by ${many(by, 'side')}.`;
    case 'offset':
      return `The join begins ${many(by, 'stitch', 'stitches')} ${(reason.by ?? 0) < 0 ? 'early' : 'late'} on the back.`;
    case 'side-short':
      return `${side} is ${many(by, 'stitch', 'stitches')} short${sayPlace(reason, pairing.gaps)}.`;
    case 'side-long':
      return `${side} is ${many(by, 'stitch', 'stitches')} too long.`;
    case 'corner-size':
      return `${corner} is ${by} too ${(reason.by ?? 0) < 0 ? 'small' : 'large'}.`;
    case 'chain-skipped':
      return `The join misses a chain. ${corner} is where.`;
    case 'last-hole':
      return 'The last hole is open, where the yarn was attached.';
    case 'left-over':
      return `${many(by, 'stitch is', 'stitches are')} left over on the ${(reason.by ?? 0) < 0 ? 'front' : 'back'}.`;
  }
}

/** ", after stitch 54": where the person finds the hole, on the side that lacks a stitch. */
function sayPlace(reason: Reason, gaps: readonly Gap[]): string {
  const gap = gaps.find((candidate) => candidate.short === 'back' && candidate.backSide === reason.backSide);
  if (!gap || gap.frontCorner !== undefined) return '';
  return gap.after === 0 ? ', at its first stitch' : `, after stitch ${gap.after}`;
}

function sayGaps(gaps: readonly Gap[]): string {
  const count = gaps.reduce((sum, gap) => sum + gap.count, 0);
  if (count === 0) return 'Does not meet.';
  return count === 1 ? 'One gap.' : `${count} gaps.`;
}

function sayFurther(reasons: readonly Reason[]): string {
  const more = reasons.length - 1;
  return more < 1 ? '' : `${more} more to see.`;
}
