/**
 * The strip of a front that is cloth too.
 *
 * Rule: it is the mirror image of the back's, so it is what would be planned for a front worked the other way round:
 * the same counts, its sides in the front's own order.
 */
import { readEdge } from '../front/edge.ts';
import type { Result } from '../problems.ts';
import type { Plan } from '../types.ts';
import { mod } from '../whole.ts';
import { planBack } from './plan.ts';

const backwards = <T>(list: readonly T[]): T[] => list.toReversed();

/** Side 0 stays, and the others go round the other way. */
const turnedRound = <T>(sides: readonly T[]): T[] => sides.map((_, i) => sides[mod(-i, sides.length)] as T);

/**
 * The front's strip beside the back's `plan`: side j of it is front side `plan.choices.start.side + j`. Its `edge` and
 * `faces` are of the front turned round, and its join is not that of the two pieces.
 */
export function planFrontStrip(plan: Plan): Result<Plan> {
  const { edge, choices, edgings } = plan;
  const { joinStart: _joined, open: _opened, ...alike } = choices;
  const cornered = edge.corners.length > 0;
  const turned = readEdge({
    sides: turnedRound(edge.sides),
    corner: backwards(edge.corners),
    counted: 'stitches-only',
  });
  if (!turned.ok) return turned;
  return planBack(turned.value, {
    ...alike,
    start: { ...choices.start, side: mod(-choices.start.side, edge.sides.length) },
    edgings: edgings.map(({ arm, increase, corners }) => ({
      arm,
      increase,
      ...(cornered && { corner: backwards(corners) }),
    })),
  });
}
