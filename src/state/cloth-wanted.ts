/** From a wanted size, or the pad at hand, to counts, with what the pattern needs. */
import {
  type ClothResult,
  countsFor,
  type PadRule,
  padRules,
  type SideCandidates,
} from '../../core/index.ts';
import { pitchOf } from './cloth.ts';
import { clothFields as f } from './cloth-fields.ts';
import { padRuleOf } from './cloth-stock.ts';
import type { Cloth } from './cloth-types.ts';
import type { Making } from './snapshot.ts';

type Known = Pick<Cloth, 'measures' | 'becomes'>;
type Planned = Pick<Making, 'plan'>;

/** mm. Of a round the size across; of other than four sides the length of each. */
export type FrontWanted = { width: number; height: number; isRound: boolean; rule: PadRule };

/** Only what is round or has four sides follows from the size of a pad. */
export const canStartFromPad = ({ becomes }: Pick<Cloth, 'becomes'>, { plan }: Planned): boolean =>
  becomes !== 'bag' && (plan.edge.corners.length === 0 || plan.edge.corners.length === 4);

/** The size that the front is to have: as typed, or smaller than the pad by the rule that has the pad larger. */
export function frontWanted(cloth: Known, making: Planned): FrontWanted | null {
  const { measures } = cloth;
  const width = measures.value(f.wantedWidth);
  if (width === undefined) return null;
  const rule = padRuleOf(cloth);
  const isFromPad =
    canStartFromPad(cloth, making) && measures.chosen<'size' | 'pad'>(f.wantedFrom, 'size') === 'pad';
  const less = isFromPad ? padRules[rule] : 0;
  return {
    width: width - less,
    height: (measures.value(f.wantedHeight) ?? width) - less,
    isRound: making.plan.edge.corners.length === 0,
    rule,
  };
}

/** Null until size and pitch are there. A round is as long as its circle, other sides are all alike. */
export function wantedCounts(cloth: Known, making: Planned): ClothResult<SideCandidates[]> | null {
  const { measures } = cloth;
  const wanted = frontWanted(cloth, making);
  const pitch = pitchOf(measures, 'front');
  if (wanted === null || pitch === undefined) return null;
  const { width, height, isRound } = wanted;
  const { plan } = making;
  const k = plan.edge.sides.length;
  const sides = isRound ? [Math.PI * width] : k === 4 ? [width, height, width, height] : Array(k).fill(width);
  const parity = measures.chosen<'any' | 'odd' | 'even'>(f.parity, 'any');
  const of = measures.value(f.multiple);
  const arms = plan.edgings.reduce(
    (sum, { arm, increase }) => sum + (isRound ? increase : arm[0] + arm[1]),
    0,
  );
  return countsFor({
    sides,
    pitch,
    arms,
    equalOpposite: k % 2 === 0,
    ...(of === undefined ? {} : { multiple: { of, plus: measures.value(f.plus) ?? 0 } }),
    ...(parity === 'any' ? {} : { parity }),
  });
}
