/**
 * Closed outlines with sides of given lengths and all corners on one circle.
 *
 * With `bow` 0 the sides are straight: the polygon inscribed in a circle, a rectangle for a b a b, regular for equal
 * sides, convex always. With `bow` 1 the outline is the circle itself. Between them every side is an arc that turns
 * by that share of its central angle: lengths stay true and corners get blunter, so that any sides close.
 */
export type Cyclic = {
  /** Of the circle through the corners. */
  radius: number;
  /** Central angles, a full turn together. */
  angles: number[];
  bow: number;
};

const TAU = 2 * Math.PI;
/** One side is at most this share of what the others could just hold: closer to it the circle grows without end. */
const FULLEST = 0.97;
/** Corners turn by this much at most: an inner angle of 32 degrees still holds the lanes. Two sides close in tips of 70. */
const SHARPEST = (148 * Math.PI) / 180;
const SHARPEST_LENS = (110 * Math.PI) / 180;
/** The most bow but where one side outgrows all others by far, and the least that is seen as one. */
const MOST_BOW = 0.9;
const LEAST_BOW = 0.02;

/** Root of an increasing-or-decreasing function between two ends of different sign. */
function bisect(low: number, high: number, value: (x: number) => number, steps = 60): number {
  let [a, b] = [low, high];
  const sign = Math.sign(value(a)) || -Math.sign(value(b)) || 1;
  for (let i = 0; i < steps; i++) {
    const middle = (a + b) / 2;
    if (Math.sign(value(middle)) === sign) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/** Length of a side over the circle's diameter, from half its central angle. */
function lengthOf(half: number, bow: number): number {
  const turn = bow * half;
  return turn < 1e-9 ? Math.sin(half) : (Math.sin(half) * turn) / Math.sin(turn);
}

/** Half the central angle, at most a quarter turn, of a side of this length over the diameter. */
function halfAngle(length: number, bow: number): number {
  if (bow === 0) return Math.asin(Math.min(1, length));
  if (lengthOf(Math.PI / 2, bow) <= length) return Math.PI / 2;
  // Newton's steps from below: the function rises and bends down, so they never pass the root.
  let half = length;
  for (let i = 0; i < 12; i++) {
    const turn = bow * half;
    const value = lengthOf(half, bow);
    const slope = value * (1 / Math.tan(half) + 1 / half - bow / Math.tan(turn));
    const step = (length - value) / slope;
    half += step;
    if (step < 1e-13) break;
  }
  return Math.min(half, Math.PI / 2);
}

/** How many times as long as the rest together one side may be at this bow. */
const reach = (bow: number) => (bow === 0 ? 1 : (bow * Math.PI) / Math.sin(bow * Math.PI));

/** The circle for sides of these lengths; with too little bow for them to close, the flattest that comes near. */
export function inscribe(lengths: readonly number[], bow = 0): Cyclic {
  const longest = Math.max(...lengths);
  const which = lengths.indexOf(longest);
  const anglesAt = (radius: number) =>
    lengths.map((length, i) => (i === which ? 0 : 2 * halfAngle(length / (2 * radius), bow)));
  // The longest takes what the others leave: the sum is a full turn exactly, so the outline closes.
  const left = (radius: number) => Math.max(0, TAU - anglesAt(radius).reduce((sum, angle) => sum + angle, 0));
  const surplus = (radius: number) => 2 * radius * lengthOf(left(radius) / 2, bow) - longest;
  let far = longest;
  while (surplus(far) < 0 && far < 1e9) far *= 2;
  const radius = bisect(longest / TAU / 2, far, surplus);
  const angles = anglesAt(radius);
  angles[which] = left(radius);
  return { radius, angles, bow };
}

/** By how much the outline turns at the sharpest of its corners. */
function sharpest({ angles, bow }: Cyclic): number {
  const turns = angles.map((angle, i) => ((1 - bow) * (angle + angles[(i + 1) % angles.length]!)) / 2);
  return Math.max(...turns);
}

/** The circle for sides of these lengths with the least bow that keeps corners from being too sharp. */
export function closeSides(lengths: readonly number[]): Cyclic {
  const most = lengths.length < 3 ? SHARPEST_LENS : SHARPEST;
  const longest = Math.max(...lengths);
  const others = lengths.reduce((sum, length) => sum + length, 0) - longest;
  if (longest < FULLEST * others) {
    const straight = inscribe(lengths);
    if (sharpest(straight) <= most) return straight;
  }
  const excess = (bow: number) => {
    if (longest >= FULLEST * others * reach(bow)) return 1;
    return sharpest(inscribe(lengths, bow)) - most;
  };
  let far = MOST_BOW;
  while (longest >= FULLEST * others * reach(far)) far = (1 + far) / 2;
  // The upper end always closes.
  let near = LEAST_BOW;
  for (let i = 0; i < 12 && excess(far) <= 0; i++) {
    const middle = (near + far) / 2;
    if (excess(middle) > 0) near = middle;
    else far = middle;
  }
  return inscribe(lengths, far);
}
