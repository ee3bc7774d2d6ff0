/**
 * What each candidate changes by itself, number by number.
 *
 * Rule: found by trying it; but of the same slip in several sizes only the smallest is tried, where there is room for
 * all of them: n stitches missed on a long side change n times what one does.
 */
import type { Candidate } from './candidate.ts';
import { isTight, type Touching } from './touch.ts';
import { type Rest, restOf, type Trying } from './trying.ts';

/** Null where it changes the shape, or where corners are forgotten: then nothing adds up. */
export function effectsOf(
  trying: Trying,
  candidates: readonly Candidate[],
  asRecipe: Rest,
  touching: Touching,
): (Int32Array | null)[] {
  const ofOne = new Map<string, Int32Array>();
  return candidates.map((candidate, one) => {
    if (asRecipe.over !== null || isShadow(touching, candidate)) return null;
    const size = sizeOf(candidate, touching, one);
    const unit = size ? ofOne.get(size.slip) : undefined;
    if (size && unit) return unit.map((by) => by * size.count);
    const rest = restOf(trying, [candidate]);
    if (rest.over !== null) return null;
    const effect = asRecipe.by.map((by, i) => by - (rest.by[i] as number));
    if (size?.count === 1) ofOne.set(size.slip, effect);
    return effect;
  });
}

/** Gives nothing of its own: the same mishap at another place of a side with room. */
export const isShadow = ({ tiny }: Touching, { elsewhere, settled }: Candidate): boolean =>
  elsewhere && ((tiny >>> (settled[0]?.side ?? 0)) & 1) === 0;

/** The slip without its size, and that; null where sizes do not simply add. */
function sizeOf(
  { cause, settled, elsewhere }: Candidate,
  touching: Touching,
  index: number,
): { slip: string; count: number } | null {
  const [one] = settled;
  const isAlone = one && settled.length === 1 && !cause.habit && !elsewhere && cause.backMadeFor !== 'front';
  if (!isAlone || one.count === undefined) return null;
  const isStitch = one.kind === 'stitch-missed' || one.kind === 'stitch-doubled';
  if (!isStitch && !(one.kind === 'corner-moved' && one.round === 'foundation')) return null;
  const { sides, most } = touching.reaches[index] as Touching['reaches'][number];
  if (isTight(touching, sides, 2 * most)) return null;
  const { kind, round, edging, side, corner, then, count } = one;
  return { slip: [kind, round, edging, side, corner, then, Math.sign(count)].join(), count: Math.abs(count) };
}
