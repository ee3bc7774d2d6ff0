/**
 * A second reading of the join, for small panels only: every position is a name in a list, and the lists are walked
 * one by one. `S3.2` is the third stitch of side 3, `C1.0` the first position of corner 1, `T1` the turn of corner 1
 * (no position: a corner turns also where it has no chain).
 *
 * Written from the model's words, not from the code: slow, plain, and without arithmetic on indices.
 */
/** Ordinary stitches of each side and positions of the corner after it, in the piece's own working order. */
export type Piece = { sides: number[]; corners: number[] };

export type Begin = {
  side: number;
  fromCorner: number;
  offset: number;
  turned: number;
  skipped: number[];
  lastHoleOpen: boolean;
};

/** One place along the join: who lies there, and whether a slip stitch holds them. */
export type Place = { front: string | null; back: string | null; joined: boolean };

const isTurn = (name: string): boolean => name.startsWith('T');
const isPosition = (name: string): boolean => !isTurn(name);

const cyclicFrom = (ring: string[], name: string): string[] => [
  ...ring.slice(ring.indexOf(name)),
  ...ring.slice(0, ring.indexOf(name)),
];

function named(letter: string, of: number, count: number): string[] {
  return Array.from({ length: count }, (_, i) => `${letter}${of}.${i}`);
}

/** The front as its hand meets it: stitches of side 0, the turn, the corner, side 1 … */
export function frontNames({ sides, corners }: Piece): string[] {
  return sides.flatMap((count, i) => {
    const corner = corners[i];
    return [...named('S', i, count), ...(corner === undefined ? [] : [`T${i}`, ...named('C', i, corner)])];
  });
}

/** The back as the join meets it: against its own working order. */
export function backNames({ sides, corners }: Piece): string[] {
  const worked = sides.flatMap((count, i) => {
    const corner = corners[i];
    return [...named('S', i, count), ...(corner === undefined ? [] : [...named('C', i, corner), `T${i}`])];
  });
  return worked.toReversed();
}

/** Turns the list so that it begins with `steps` positions after `name`; turns that the start has behind it come last. */
function beginAt(names: string[], name: string, steps: number): string[] {
  let ring = cyclicFrom(names, name);
  for (let step = 0; step < Math.abs(steps); step++) ring = steps > 0 ? oneOn(ring) : oneBack(ring);
  return ring;
}

function oneOn(ring: string[]): string[] {
  const next = ring.findIndex((name, i) => i > 0 && isPosition(name));
  return next < 0 ? ring : [...ring.slice(next), ...ring.slice(0, next)];
}

function oneBack(ring: string[]): string[] {
  const before = ring.findLastIndex(isPosition);
  return [...ring.slice(before), ...ring.slice(0, before)];
}

/** The nearest position of the corner beside a side, or the side's own end where that corner has none. */
function nearestOn(ring: string[], side: number, corner: number | undefined): string {
  // Where the side has no stitches either, the join begins with what comes next.
  const end = cyclicFrom(ring, corner === undefined ? (ring[0] as string) : `T${corner}`);
  const own = end.filter((name) => name.startsWith(`C${corner}.`));
  const stitch = end.find((name) => name.startsWith(`S${side}.`));
  return own.at(-1) ?? stitch ?? (end.find(isPosition) as string);
}

/** Steps from the nearest position, never beyond the side itself. */
function stepsIn(ring: string[], side: number, corner: number | undefined, fromCorner: number): number {
  const stitches = ring.filter((name) => name.startsWith(`S${side}.`)).length;
  const inCorner = ring.some((name) => name.startsWith(`C${corner}.`)) ? 1 : 0;
  return Math.max(0, Math.min(fromCorner, stitches + inCorner) - 1);
}

/** Both pieces in join order from where the join begins. `faces`: the front side that back side 0 faces. */
export function inJoinOrder(
  front: Piece,
  back: Piece,
  faces: number,
  begin: Begin,
): { front: string[]; back: string[] } {
  const k = front.sides.length;
  const isRound = front.corners.length === 0;
  const cornerBefore = isRound ? undefined : (begin.side + k - 1) % k;
  const backSide = back.sides.findIndex((_, j) => (j + begin.side + begin.turned - faces) % k === 0);
  const frontRing = frontNames(front);
  const backRing = backNames(back);
  const backCorner = back.corners.length === 0 ? undefined : backSide;
  return {
    front: beginAt(
      frontRing,
      nearestOn(frontRing, begin.side, cornerBefore),
      stepsIn(frontRing, begin.side, cornerBefore, begin.fromCorner),
    ),
    back: beginAt(
      backRing,
      nearestOn(backRing, backSide, backCorner),
      stepsIn(backRing, backSide, backCorner, begin.fromCorner) + begin.offset,
    ),
  };
}

/** The position of a corner that the join comes to first and passes over; not the one the yarn is attached in. */
export function skippedNames(ring: string[], skipped: number[]): string[] {
  return skipped.flatMap((corner) => {
    const first = ring.slice(ring.indexOf(`T${corner}`)).find((name) => name.startsWith(`C${corner}.`));
    return first === undefined || first === ring[0] ? [] : [first];
  });
}

const alone = (which: 'front' | 'back', names: string[]): Place[] =>
  names.map((name) => ({ front: null, back: null, joined: false, [which]: name }));

/** Pair by pair until one list is used up; what is left lies alone. */
function zip(front: string[], back: string[], skipped: string[]): Place[] {
  const places: Place[] = [];
  const fronts = front.filter(isPosition);
  const backs = back.filter(isPosition);
  while (fronts.length > 0 && backs.length > 0) {
    const next = backs.shift() as string;
    if (skipped.includes(next)) places.push(...alone('back', [next]));
    else places.push({ front: fronts.shift() as string, back: next, joined: true });
  }
  return [...places, ...alone('front', fronts), ...alone('back', backs)];
}

const leaveOpen = (places: Place[], begin: Begin): Place[] =>
  places.map((place, i) => (i === 0 && begin.lastHoleOpen ? { ...place, joined: false } : place));

export function stitchByStitch(front: Piece, back: Piece, faces: number, begin: Begin): Place[] {
  const rings = inJoinOrder(front, back, faces, begin);
  const places = zip(rings.front, rings.back, skippedNames(rings.back, begin.skipped));
  return leaveOpen(places, begin);
}

/** Stretches between turns: what lies before the first turn, then every corner and the side after it. */
function cutAtTurns(ring: string[]): { corner: string; names: string[] }[] {
  const stretches = [{ corner: '', names: [] as string[] }];
  let corner = '';
  for (const name of ring) {
    if (isTurn(name)) {
      corner = name.slice(1);
      stretches.push({ corner, names: [] }, { corner: '', names: [] });
    } else if (corner !== '' && name.startsWith(`C${corner}.`)) stretches.at(-2)?.names.push(name);
    else stretches.at(-1)?.names.push(name);
  }
  return stretches;
}

/** Corners are pinned first; each stretch between pins is paired within itself, its surplus at its end. */
export function cornerToCorner(front: Piece, back: Piece, faces: number, begin: Begin): Place[] {
  const rings = inJoinOrder(front, back, faces, begin);
  const skipped = skippedNames(rings.back, begin.skipped);
  const fronts = cutAtTurns(rings.front);
  const backs = cutAtTurns(rings.back);
  const places = fronts.flatMap((stretch, i) => {
    const other = (backs[i] as { names: string[] }).names;
    const passedOver = other.filter((name) => skipped.includes(name));
    const held = other.filter((name) => !skipped.includes(name));
    return [...alone('back', passedOver), ...zip(stretch.names, held, [])];
  });
  return leaveOpen(places, begin);
}

/** Every choice of `count` of the names, in their order. */
function choicesOf(names: string[], count: number): string[][] {
  if (count === 0) return [[]];
  return names.flatMap((name, i) => choicesOf(names.slice(i + 1), count - 1).map((rest) => [name, ...rest]));
}

/** Lengths of what lies between the pinned turns and their corners; corners that are not pinned lie within. */
function lengthsBetween(ring: string[], pinned: string[]): number[] {
  const lengths = [0];
  let corner = '';
  for (const name of ring) {
    if (pinned.includes(name)) {
      corner = name.slice(1);
      lengths.push(0);
    } else if (isPosition(name) && !(corner !== '' && name.startsWith(`C${corner}.`))) {
      lengths.push((lengths.pop() as number) + 1);
    }
  }
  return lengths;
}

/**
 * Where one piece has fewer corners: the least sum of differences that any pinning of all of them can leave, with the
 * join begun `fromCorner` in from the corner before `begin.side` on the front, and from any corner of the back.
 */
export function leastDifference(front: Piece, back: Piece, begin: Begin): number {
  const k = front.sides.length;
  const cornerBefore = (begin.side + k - 1) % k;
  const frontRing = beginAt(
    frontNames(front),
    nearestOn(frontNames(front), begin.side, cornerBefore),
    stepsIn(frontNames(front), begin.side, cornerBefore, begin.fromCorner),
  );
  const turnsOf = (ring: string[]): string[] => ring.filter(isTurn);
  const count = Math.min(front.corners.length, back.corners.length);
  const differences = back.corners.flatMap((_, home) => {
    const names = backNames(back);
    const backRing = beginAt(
      names,
      nearestOn(names, home, home),
      stepsIn(names, home, home, begin.fromCorner),
    );
    return choicesOf(turnsOf(frontRing), count).flatMap((frontPins) =>
      choicesOf(turnsOf(backRing), count).map((backPins) => {
        const fronts = lengthsBetween(frontRing, frontPins);
        const backs = lengthsBetween(backRing, backPins);
        return fronts.reduce((all, length, i) => all + Math.abs(length - (backs[i] as number)), 0);
      }),
    );
  });
  return Math.min(...differences);
}
