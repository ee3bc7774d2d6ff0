import { describe, expect, it } from 'vitest';
import { type Mishap, mishapsOf, type Seen } from '../../core/index.ts';
import { chainCorner, planOf } from '../property/explain-panels.ts';

const plan = planOf([60, 42, 60, 42], chainCorner(2));

const cases: [says: string, seen: Seen, mishaps: Mishap[]][] = [
  ['nothing counted', {}, []],
  ["the recipe's own numbers", { foundation: { sides: [58, 40, 58, 40] } }, []],
  [
    'a foundation side 2 short',
    { foundation: { sides: [null, 38, null, null] } },
    [{ kind: 'stitch-missed', round: 'foundation', side: 1, place: 38, count: 2 }],
  ],
  [
    'an edging side 1 more than what lies below gives',
    { edgings: [{ sides: [null, null, 61, null] }] },
    [{ kind: 'stitch-doubled', round: 'edging', edging: 0, side: 2, place: 58, count: 1 }],
  ],
  [
    'an edging that follows a foundation 2 short needs nothing of its own',
    { foundation: { sides: [58, 38, 58, 40] }, edgings: [{ sides: [60, 40, 60, 42] }] },
    [{ kind: 'stitch-missed', round: 'foundation', side: 1, place: 38, count: 2 }],
  ],
  [
    '3 chains in a corner',
    { edgings: [{ sides: [null, null, null, null], corners: [null, 3, null, 2] }] },
    [{ kind: 'corner-chains', round: 'edging', edging: 0, corner: 1, count: 3 }],
  ],
  [
    'a corner too few',
    { foundation: { sides: [58, 98, 40] } },
    [{ kind: 'corner-forgotten', round: 'foundation', corner: 1 }],
  ],
];

describe('mishapsOf', () => {
  it.each(cases)('%s', (_, seen, mishaps) => {
    expect(mishapsOf(plan, seen)).toEqual(mishaps);
  });
});
