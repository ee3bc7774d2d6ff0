/** Invented mistakes of a realistic kind, with the counts that their makers have, and what they choose. */
import type { Panel } from './curing.ts';

export type Journey = {
  name: string;
  panel: Panel;
  /** What is typed, by field. */
  counts: Record<string, string>;
  /** How far the piece is, as it stands in the list. */
  stands: string;
  /** The cause that must be named first. */
  first?: string;
  /** The cause that is opened, where it is not the first. */
  cause?: string;
  cure: string;
  /** What the cure must say of what it costs. */
  costs?: RegExp[];
  /** What the walk must say on the way. */
  says: RegExp[];
  /** The piece as its maker has it; the last round may be unravelled to the place where the walk goes on. */
  piece: { rounds: number[][]; sewn?: boolean; passedOver?: number };
};

export const JOURNEYS: Journey[] = [
  {
    name: 'two foundation sides 1 too long and 1 short, made up on the way',
    panel: { sides: [12, 12, 12, 12] },
    counts: { 'worked.foundation.1': '11', 'worked.foundation.2': '9' },
    stands: 'Foundation made',
    cure: 'Make it up on the way',
    costs: [/Nothing comes off\./],
    says: [/Miss the next stitch/, /Work 2 in this stitch\./],
    piece: { rounds: [[10, 11, 9, 10]] },
  },
  {
    name: 'an edging side 1 short, the strip sewn on, eased in the join',
    panel: { sides: [32, 32, 32, 32] },
    counts: { 'worked.edging.0.1': '31' },
    stands: 'Strip sewn on',
    cure: 'Ease it in the join',
    costs: [/Nothing comes off\./],
    says: [/Take 2 of the front with 1 of the back\./],
    piece: {
      rounds: [
        [30, 30, 30, 30],
        [32, 31, 32, 32],
      ],
      sewn: true,
    },
  },
  {
    name: 'the same once all is joined: the seam comes out as far as that side, and is made again',
    panel: { sides: [32, 32, 32, 32] },
    counts: { 'worked.edging.0.1': '31' },
    stands: 'Finished',
    cure: 'Ease it in the join',
    costs: [/Undo \d+ slip stitches\. The sewing stays\. \d+ to make again\./],
    says: [/Take 2 of the front with 1 of the back\./],
    piece: {
      rounds: [
        [30, 30, 30, 30],
        [32, 31, 32, 32],
      ],
      sewn: true,
    },
  },
  {
    name: 'a corner forgotten in the foundation, one side counted twice as long, unravelled',
    panel: { sides: [10, 10, 10, 10] },
    counts: { 'worked.foundation.1': '16' },
    stands: 'Foundation made',
    first: 'A corner forgotten',
    cure: 'Unravel to the place',
    says: [],
    piece: { rounds: [[8, 16, 8, 8]] },
  },
  {
    name: 'a marker of ten too few on the foundation, unravelled',
    panel: { sides: [16, 16, 16, 16] },
    counts: { 'worked.foundation.1': '4' },
    stands: 'Foundation made',
    first: 'A marker miscounted',
    cure: 'Unravel to the place',
    says: [],
    piece: { rounds: [[14, 4, 14, 14]] },
  },
  {
    name: 'every corner worked over with nothing in it, unravelled',
    panel: { sides: [10, 10, 10, 10] },
    counts: {
      'worked.edging.0.0': '8',
      'worked.edging.0.1': '8',
      'worked.edging.0.2': '8',
      'worked.edging.0.3': '8',
    },
    stands: 'Edging made',
    cause: 'A corner worked over, at every corner',
    cure: 'Unravel to the place',
    says: [],
    piece: {
      rounds: [
        [8, 8, 8, 8],
        [8, 8, 8, 8],
      ],
    },
  },
  {
    name: 'a treble missed on one side and a double crochet doubled on the next',
    panel: { sides: [28, 28, 28, 28] },
    counts: {
      'worked.foundation.0': '26',
      'worked.foundation.1': '25',
      'worked.foundation.2': '26',
      'worked.foundation.3': '26',
      'worked.edging.0.0': '28',
      'worked.edging.0.1': '27',
      'worked.edging.0.2': '29',
      'worked.edging.0.3': '28',
    },
    stands: 'Strip sewn on',
    cause: 'A stitch missed and a stitch worked twice',
    cure: 'Ease it in the join',
    says: [/Take 2 of the front with 1 of the back\./, /Take 2 of the back with 1 of the front\./],
    piece: {
      rounds: [
        [26, 25, 26, 26],
        [28, 27, 29, 28],
      ],
      sewn: true,
    },
  },
];
