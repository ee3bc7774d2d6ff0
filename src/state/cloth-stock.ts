/** What is to be bought and how long it takes: yarn by part, cloth by the length, a pad. */
import {
  type Ball,
  type ClothResult,
  type Enough,
  enoughFor,
  type Layout,
  layOut,
  type Pad,
  type PadRule,
  padFor,
  pieceBox,
  type Swatch,
  swatchByWeighing,
  type YarnNeed,
  yarnFor,
} from '../../core/index.ts';
import { clothFields as f, type YarnField } from './cloth-fields.ts';
import type { Cloth, Measures } from './cloth-types.ts';
import type { Making, Units } from './snapshot.ts';

/** The join is worked in the edging's yarn. */
export const ballOf = (part: YarnField): 'foundation' | 'edging' =>
  part === 'foundation' ? 'foundation' : 'edging';

export type PartStitches = { part: YarnField; stitches: number; rounds: number };

/** A front of cloth has a strip of its own, worked to the same counts. */
const stripsOf = ({ isMirrored }: Pick<Cloth, 'isMirrored'>): number => (isMirrored ? 2 : 1);

/** Every strip of the piece, and the 1 join. */
export function partsOf({ plan }: Pick<Making, 'plan'>, cloth: Pick<Cloth, 'isMirrored'>): PartStitches[] {
  const strips = stripsOf(cloth);
  const edging = plan.edgings.reduce((sum, { total }) => sum + total, 0);
  return [
    { part: 'foundation', stitches: strips * plan.foundation.total, rounds: strips },
    { part: 'edging', stitches: strips * edging, rounds: strips * plan.edgings.length },
    { part: 'join', stitches: plan.pairs, rounds: 1 },
  ];
}

export function ballFor(measures: Measures, part: YarnField): Ball | undefined {
  const grams = measures.value(f.ballGrams(ballOf(part)));
  const length = measures.value(f.ballLength(ballOf(part)));
  return grams === undefined || length === undefined ? undefined : { grams, metres: length / 1000 };
}

/** The maker's swatch; for the edging also what side 1 weighed, where nothing else was measured. */
function swatchFor(measures: Measures, part: YarnField, making: Making): Swatch | undefined {
  const stitches = measures.value(f.yarnStitches(part));
  const grams = measures.value(f.yarnGrams(part));
  const unravelled = measures.value(f.yarnLength(part));
  if (stitches !== undefined && grams !== undefined) return { stitches, grams };
  if (stitches !== undefined && unravelled !== undefined) return { stitches, unravelled };
  const before = measures.value(f.weighedBefore);
  const after = measures.value(f.weighedAfter);
  const side = making.plan.edgings[0]?.sides[0];
  if (part !== 'edging' || before === undefined || after === undefined || after >= before || !side)
    return undefined;
  return swatchByWeighing(before, after, side);
}

export function yarnNeeds(cloth: Cloth, making: Making, edge: number | null): YarnNeed[] {
  return partsOf(making, cloth).map(({ part, stitches, rounds }) => {
    const swatch = swatchFor(cloth.measures, part, making);
    const ball = ballFor(cloth.measures, part);
    // Without a measured edge there is nothing to multiply: then only a swatch tells.
    return yarnFor({
      part,
      stitches,
      rounds,
      edge: edge ?? 0,
      ...(swatch && { swatch }),
      ...(ball && { ball }),
    });
  });
}

/** What is left of the edging's yarn, over the parts that take it. */
export function yarnLeft(cloth: Cloth, needs: readonly YarnNeed[]): Enough[] | null {
  const left = cloth.measures.value(f.left);
  return left === undefined
    ? null
    : enoughFor(
        left,
        needs.filter(({ part }) => ballOf(part) === 'edging'),
      );
}

/** How many pieces are cut for one: the front too, where it is cloth. */
export const piecesOf = (cloth: Cloth): number => (cloth.measures.value(f.pieces) ?? 1) * stripsOf(cloth);

/** 1 cm not used along each selvedge: common practice. */
export const selvedge = 10;

export function layoutOf(cloth: Cloth): ClothResult<Layout> | null {
  const clothWidth = cloth.measures.value(f.clothWidth);
  if (!cloth.plan || clothWidth === undefined) return null;
  const repeat = cloth.measures.value(f.repeat);
  return layOut({
    piece: pieceBox(cloth.plan.cut),
    count: piecesOf(cloth),
    clothWidth,
    selvedge,
    hasWay: cloth.measures.chosen<'yes' | 'no'>(f.way, 'no') === 'yes',
    ...(repeat === undefined ? {} : { repeat }),
  });
}

/** A form is as large as its cover, a pad larger, where nothing else is chosen. */
export const padRuleOf = ({ measures, becomes }: Pick<Cloth, 'measures' | 'becomes'>): PadRule =>
  measures.chosen<PadRule>(f.padRule, becomes === 'cover' ? 'same' : 'usual');

export function padOf(cloth: Cloth, units: Units): { pad: Pad; rule: PadRule } | null {
  if (!cloth.plan || cloth.becomes === 'bag') return null;
  const rule = padRuleOf(cloth);
  return { pad: padFor(cloth.plan.finishedBack, rule, units), rule };
}
