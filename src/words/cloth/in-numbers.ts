/** The cloth stage in the maker's own numbers: what a step says more, once the cloth is measured. */
import type { Pin, StepKind } from '../../../core/index.ts';
import type { Cloth } from '../../state/cloth-types.ts';
import type { Units } from '../../state/snapshot.ts';
import { many, ordinal } from '../numbers.ts';
import type { Sentences } from '../walk/telling.ts';
import { sayCut, sayPiece } from './cut.ts';
import { listed, sayLength } from './lengths.ts';

type More = (cloth: Cloth & { pins: readonly Pin[] }, units: Units) => Partial<Sentences>;

/** Sides of which the same is said, said once: "Sides 1 and 3: 16.8 cm from the corner, …". */
function bySides(pins: readonly Pin[], say: (own: readonly Pin[]) => string): string {
  const said = new Map<string, number[]>();
  for (const side of new Set(pins.map((pin) => pin.side))) {
    const words = say(pins.filter((pin) => pin.side === side));
    said.set(words, [...(said.get(words) ?? []), side + 1]);
  }
  return [...said]
    .map(([words, sides]) =>
      sides.length > 1 ? `Sides ${listed(sides)}: ${words}.` : `Side ${sides[0]}: ${words}.`,
    )
    .join(' ');
}

const stitchOf = ({ stitch, isBetween }: Pin): string =>
  isBetween ? `between stitches ${stitch} and ${stitch + 1}` : `the ${ordinal(stitch)} stitch`;

const ofKind = (pins: readonly Pin[], ...kinds: Pin['kind'][]): Pin[] =>
  pins.filter(({ kind }) => kinds.includes(kind));

const MORE: Partial<Record<StepKind, More>> = {
  'lay-strip': ({ plan }, units) =>
    plan
      ? {
          check: `The cloth is cut ${sayCut(plan, units).size}. Base chains on the raw edge, edging towards the middle.`,
        }
      : {},
  'cloth-centres': ({ pins, shape }, units) => ({
    check:
      shape === 'round'
        ? `Every ${sayLength(quarterOf(pins), units)} along the edge.`
        : bySides(ofKind(pins, 'centre'), ([pin]) =>
            pin ? `${sayLength(pin.distance, units)} from the corner, ${stitchOf(pin)}` : '',
          ),
    caution: `${many(pins.length, 'pin')} in all. Count them in.`,
  }),
  'cloth-pins': ({ pins, shape, spacing }, units) => {
    const between = ofKind(pins, 'between');
    if (between.length === 0)
      return {
        act: 'No more pins are needed: the sides are short.',
        check: 'Pat any looseness flat, evenly between the pins.',
      };
    const act = 'Pin between those pins, all the way round.';
    if (shape === 'round') return { act, check: `${many(between.length, 'pin')} more, evenly between.` };
    const says = bySides(
      between,
      (own) => `stitches ${listed(own.map(({ stitch }) => stitch).sort((a, b) => a - b))}`,
    );
    return { act, check: `About every ${sayLength(spacing, units)}. ${says}` };
  },
  'sew-out': (cloth, units) => {
    const { sewing, depth = 0 } = cloth;
    if (!sewing) return {};
    const line = `The line runs ${sayLength(depth, units)} from the raw edge, just below the edging.`;
    if (cloth.isByMachine) return { act: 'Sew all round by machine, just below the edging.', check: line };
    return {
      check: `${line} The thread lies over ${sidesSaid(sewing.over.out)}. ${many(sewing.lengths, 'length')} of thread.`,
    };
  },
  'sew-back': (cloth) => {
    if (cloth.isByMachine)
      return {
        act: 'Sew a second row over the first where it takes strain.',
        check: 'By machine 1 row may do.',
      };
    return cloth.sewing
      ? { check: `The thread lies over ${sidesSaid(cloth.sewing.over.back)}. No gap is left on either side.` }
      : {};
  },
  'pins-out': ({ pins }) => ({ check: `There were ${many(pins.length, 'pin')}. Count them.` }),
  'turn-strip': ({ plan }, units) =>
    plan
      ? { check: `The back is now ${sayPiece(plan.finishedBack, units)}, edging outside, right side up.` }
      : {},
};

const quarterOf = (pins: readonly Pin[]): number => ofKind(pins, 'quarter')[1]?.distance ?? 0;

const sidesSaid = (over: readonly number[]): string =>
  over.length === 1 ? many(over[0] ?? 0, 'stitch', 'stitches') : `${listed(over)} stitches, side after side`;

/** A front of cloth is made once the back is: there is nothing to count before, and the join goes on with both. */
const FRONT_OF_CLOTH: Partial<Record<StepKind, Partial<Sentences>>> = {
  'count-stitch': { check: 'The front is not made yet, and will have these counts: jump to the next round.' },
  'turn-strip': {
    act: 'Turn the strip outwards. Then make the front the same way: the recipe has its strip.',
  },
};

/** Nothing where nothing is known of the cloth yet, or the step is of another stage. */
export function inNumbers(kind: StepKind, cloth: Cloth | null, units: Units): Partial<Sentences> {
  if (!cloth) return {};
  const more = cloth.pins ? MORE[kind]?.({ ...cloth, pins: cloth.pins }, units) : {};
  return cloth.isMirrored ? { ...more, ...FRONT_OF_CLOTH[kind] } : { ...more };
}
