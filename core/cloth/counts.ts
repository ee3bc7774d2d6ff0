/**
 * From a wanted size to counts: a designer's first question.
 *
 * Rule: a side is count × pitch. The nearest counts that the pattern allows lie just below and just above what is
 * wanted; both are told with the size they give, and which is nearer is the only judgement.
 */
import { lengthProblems } from './shape.ts';
import type { ClothResult, Note } from './types.ts';

export type CountsWanted = {
  /** Lengths of the sides of the front's last round, mm. A round piece has one, all the way round. */
  sides: number[];
  /** mm a stitch, on the front's last round. */
  pitch: number;
  /** The pattern needs a multiple of `of`, and `plus` more. */
  multiple?: { of: number; plus: number };
  parity?: 'odd' | 'even';
  /** Sides that face each other have the same count; needs an even number of sides. */
  equalOpposite?: boolean;
  /** Stitches that the edging rounds of the back add to a side. */
  arms: number;
};

/** A count that the pattern allows: the side it gives, by how much that is off, and the strip's count below it. */
export type Candidate = { front: number; length: number; off: number; strip: number };

export type SideCandidates = {
  side: number;
  wanted: number;
  below: Candidate | null;
  above: Candidate;
  nearest: Candidate;
};

export function countsFor(wanted: CountsWanted): ClothResult<SideCandidates[]> {
  const { sides, pitch, multiple, parity, equalOpposite } = wanted;
  const problems: Note[] = [
    ...sides.flatMap((side, i) => lengthProblems(side, `sides[${i}]`)),
    ...lengthProblems(pitch, 'pitch', 0.1, 100),
  ];
  if (multiple && !(multiple.of >= 1)) problems.push({ at: 'multiple.of', code: 'multiple', params: {} });
  if (multiple && parity && neverOf(multiple, parity))
    problems.push({
      at: 'parity',
      code: 'parity-never',
      params: { of: multiple.of, plus: multiple.plus, parity },
    });
  if (equalOpposite && sides.length % 2 === 1)
    problems.push({ at: 'equalOpposite', code: 'no-opposite', params: { sides: sides.length } });
  if (problems.length > 0) return { ok: false, problems };
  const half = sides.length / 2;
  const lengths = sides.map((side, i) =>
    equalOpposite ? (side + (sides[(i + half) % sides.length] as number)) / 2 : side,
  );
  return { ok: true, value: lengths.map((length, side) => candidates(wanted, length, side)) };
}

/** An even multiple keeps the parity of what is added to it. */
const neverOf = ({ of, plus }: { of: number; plus: number }, parity: 'odd' | 'even'): boolean =>
  of % 2 === 0 && plus % 2 !== (parity === 'odd' ? 1 : 0);

function candidates(
  { pitch, multiple, parity, arms }: CountsWanted,
  wanted: number,
  side: number,
): SideCandidates {
  const isAllowed = (count: number): boolean =>
    (!multiple || (count >= multiple.plus && (count - multiple.plus) % multiple.of === 0)) &&
    (!parity || count % 2 === (parity === 'odd' ? 1 : 0));
  const least = arms + 1;
  const ideal = wanted / pitch;
  const give = (front: number): Candidate => ({
    front,
    length: front * pitch,
    off: front * pitch - wanted,
    strip: front - arms,
  });
  let down = Math.floor(ideal);
  while (down >= least && !isAllowed(down)) down--;
  let up = Math.max(least, Math.ceil(ideal));
  while (!isAllowed(up)) up++;
  const below = down >= least ? give(down) : null;
  const above = give(up);
  const nearest = below && -below.off <= above.off ? below : above;
  return { side, wanted, below, above, nearest };
}
