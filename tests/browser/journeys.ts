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
    panel: { sides: [24, 24, 24] },
    counts: { 'worked.edging.0.1': '23' },
    stands: 'Strip sewn on',
    cure: 'Ease it in the join',
    costs: [/Nothing comes off\./],
    says: [/Take 2 of the front with 1 of the back\./],
    piece: {
      rounds: [
        [22, 22, 22],
        [24, 23, 24],
      ],
      sewn: true,
    },
  },
  {
    name: 'the same once all is joined: the seam comes out as far as that side, and is made again',
    panel: { sides: [24, 24, 24] },
    counts: { 'worked.edging.0.1': '23' },
    stands: 'Finished',
    cure: 'Ease it in the join',
    costs: [/Undo \d+ slip stitches\. The sewing stays\. \d+ to make again\./],
    says: [/Take 2 of the front with 1 of the back\./],
    piece: {
      rounds: [
        [22, 22, 22],
        [24, 23, 24],
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
    panel: { sides: [14, 14, 14] },
    counts: { 'worked.foundation.1': '2' },
    stands: 'Foundation made',
    first: 'A marker miscounted',
    cure: 'Unravel to the place',
    says: [],
    piece: { rounds: [[12, 2, 12]] },
  },
  {
    name: 'every corner worked over with nothing in it, unravelled',
    panel: { sides: [10, 10, 10] },
    counts: { 'worked.edging.0.0': '8', 'worked.edging.0.1': '8', 'worked.edging.0.2': '8' },
    stands: 'Edging made',
    cause: 'A corner worked over, at every corner',
    cure: 'Unravel to the place',
    says: [],
    piece: {
      rounds: [
        [8, 8, 8],
        [8, 8, 8],
      ],
    },
  },
  {
    name: 'a treble missed on one side and a double crochet doubled on the next',
    panel: { sides: [24, 24, 24] },
    counts: {
      'worked.foundation.0': '22',
      'worked.foundation.1': '21',
      'worked.foundation.2': '22',
      'worked.edging.0.0': '24',
      'worked.edging.0.1': '23',
      'worked.edging.0.2': '25',
    },
    stands: 'Strip sewn on',
    cause: 'A stitch missed and a stitch worked twice',
    cure: 'Ease it in the join',
    says: [/Take 2 of the front with 1 of the back\./, /Take 2 of the back with 1 of the front\./],
    piece: {
      rounds: [
        [22, 21, 22],
        [24, 23, 25],
      ],
      sewn: true,
    },
  },
];
