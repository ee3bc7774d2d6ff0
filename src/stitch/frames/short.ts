/** The short stitches, move by move: double crochet on the foundation, and the chain. */
import { head, link, shortPost, treblePost, vee } from '../fabric.ts';
import { caught, drawnThrough, type Frame, type MoveScenes, still } from '../frame.ts';
import { hookAt, type LoopSpec } from '../loops.ts';
import { at, type Point } from '../point.ts';
import { type Item, STITCH, type Strand, type Tool, type YarnName } from '../scene.ts';

export const FAR = at(-20, 34);
export const BALL: readonly Point[] = [at(110, 70), at(50, 44), FAR];
export const LAST = 266;
export const NEW = LAST - STITCH;
export const COLUMNS = [3, 2, 1, 0, -1, -2, -3].map((back) => LAST + back * STITCH);

export const rest = (x: number, y: number): Tool => hookAt(at(x - 96, y), -7);
/** A loop on the hook that comes out of the work at a point. */
export const outOf = (loop: Omit<LoopSpec, 'front' | 'back'>, [x, y]: Point): LoopSpec => ({
  ...loop,
  front: [at(x - 3, y + 4)],
  back: [at(x + 4, y - 4)],
});
const ballFrom = (yarn: YarnName, start: Point): Frame['yarn'] => ({ name: yarn, path: [start, ...BALL] });

// --- double crochet, worked on the tops of the foundation ---

const FLOOR = 196;
const ROOF = 138;

/** A column of the floor that the hook goes into, and by which loops. */
type Marked = { x: number; loops: 'back' | 'both' } | null;

/** The foundation below; where corner chains lie instead of stitches there is no post. */
function floor(marked: Marked, chains: readonly number[] = []): Item[] {
  return COLUMNS.flatMap((x) => [
    ...(chains.includes(x)
      ? []
      : treblePost({
          key: `floor-post${x}`,
          yarn: 'foundation',
          top: at(x, FLOOR + 4),
          foot: at(x + 6, 330),
          z: 12,
        })),
    ...vee({
      key: `floor${x}`,
      x,
      y: FLOOR,
      yarn: 'foundation',
      z: 20,
      frontOver: 30,
      ...(x === marked?.x && { marked: marked.loops, z: 62 }),
      ...(x === marked?.x && marked.loops === 'both' && { frontOver: 62 }),
    }),
  ]);
}

/** A double crochet whose head lies at `x` and whose foot stands at `foot`. */
const short = (x: number, foot = x): Strand[] => [
  ...shortPost({ key: `short${x}`, yarn: 'edging', top: at(x, ROOF + 6), foot: at(foot + 2, FLOOR - 2) }),
  ...vee({ key: `roof${x}`, x, y: ROOF, yarn: 'edging', z: 32 }),
];

/** Corner chains in a small arch that ends over `x`; two at most are shown. */
const arch = (x: number, count: number): Strand[] =>
  count === 0
    ? []
    : count === 1
      ? link({ key: 'arch0', x: x + 26, y: 104, angle: 182, yarn: 'edging', z: 34 })
      : [
          ...link({ key: 'arch0', x: x + 42, y: 106, angle: -72, yarn: 'edging', z: 34 }),
          ...link({ key: 'arch1', x: x + 14, y: 96, angle: 118, yarn: 'edging', z: 36 }),
        ];

/** The yarn's end, and the chain that carries no stitch, standing where the round began. */
const begun = (): Strand[] => [
  {
    what: 'strand',
    key: 'end',
    yarn: 'edging',
    z: 14,
    round: true,
    points: [
      at(LAST + 2, FLOOR - 8),
      at(LAST + 34, FLOOR - 52),
      at(LAST + 58, FLOOR - 78),
      at(LAST + 66, 76),
    ],
  },
  ...link({ key: 'attach-chain', x: LAST + 3, y: FLOOR - 30, angle: -92, yarn: 'edging', z: 34 }),
];

/**
 * Where a double crochet goes: along a side; the first of the round, beside the attach place or into it; the
 * hidden one after a corner; a corner chain before the new corner, or past it; the stitch worked last.
 */
export type DoubleCrochetAt =
  | 'along'
  | 'first'
  | 'attach-place'
  | 'hidden'
  /** A mistake: the hidden stitch is passed over. */
  | 'past-hidden'
  | 'before-corner'
  | 'past-corner'
  | 'same-place';

type Ground = {
  /** Columns of the floor that are corner chains. */
  chains: readonly number[];
  /** What stands on it already. */
  made: readonly Strand[];
  live: Point;
  /** Where the new stitch's foot goes, and where its head will lie. */
  foot: number;
  head: number;
};

function groundFor(where: DoubleCrochetAt, chains: number): Ground {
  const upTo = (count: number): Strand[] => COLUMNS.slice(0, count).flatMap((x) => short(x));
  const along: Ground = { chains: [], made: upTo(4), live: head(LAST, ROOF), foot: NEW, head: NEW };
  switch (where) {
    case 'along':
      return along;
    case 'first':
      return { ...along, made: begun(), live: at(LAST + 2, FLOOR - 44) };
    case 'attach-place':
      return { ...along, made: begun(), live: at(LAST + 2, FLOOR - 44), foot: LAST, head: LAST };
    case 'hidden':
      return { ...along, chains: [LAST, LAST + STITCH], made: [...upTo(4), ...arch(LAST, chains)] };
    case 'past-hidden':
      return { ...groundFor('hidden', chains), foot: NEW - STITCH, head: NEW - STITCH };
    case 'before-corner':
      return { ...along, chains: [NEW, NEW - STITCH] };
    case 'past-corner':
      return {
        ...along,
        chains: [LAST, NEW],
        made: [...upTo(4), ...arch(NEW, chains)],
        live: chains === 1 ? at(NEW + 10, 108) : at(NEW + 7, 114),
      };
    case 'same-place':
      return { ...along, foot: LAST };
  }
}

/** @param chains corner chains of the new corner, where it is in the picture; @param both both loops are taken */
export function doubleCrochetScenes(
  where: DoubleCrochetAt = 'along',
  both = where === 'before-corner' || where === 'past-corner',
  chains = 2,
): MoveScenes {
  const ground = groundFor(where, chains);
  const { live, foot, made } = ground;
  const place = at(foot + 6, FLOOR - 6);
  const by = foot - NEW;
  const before: Frame = {
    hook: rest(live[0] + 26, live[1] - 46),
    work: [...floor(null, ground.chains), ...made],
    loops: [outOf({ key: 'live', yarn: 'edging', on: 64 }, live)],
    yarn: ballFrom('edging', live),
  };
  const inserted: Frame = {
    hook: both ? hookAt(at(168 + by, 164), 40) : hookAt(at(172 + by, 152), 37),
    work: [...floor({ x: foot, loops: both ? 'both' : 'back' }, ground.chains), ...made],
    loops: [outOf({ key: 'live', yarn: 'edging', on: 96, other: true }, live)],
    yarn: ballFrom('edging', live),
  };
  const up: Frame = {
    hook: hookAt(at(128 + by, 112), -9),
    work: before.work,
    loops: [
      outOf({ key: 'live', yarn: 'edging', on: 112 }, live),
      outOf({ key: 'up', yarn: 'edging', on: 62 }, place),
    ],
    yarn: ballFrom('edging', place),
  };
  const end: Frame = {
    hook: rest(ground.head, 92),
    work: [...before.work, ...short(ground.head, foot)],
    loops: [outOf({ key: 'live', yarn: 'edging', on: 64 }, head(ground.head, ROOF))],
    yarn: ballFrom('edging', head(ground.head, ROOF)),
  };
  return {
    start: still(before),
    moves: [
      [still(before), still(inserted)],
      [
        still(inserted),
        caught(inserted, { yarn: 'edging', held: [live], away: [FAR] }),
        drawnThrough(inserted, { yarn: 'edging', held: [live], away: [place, at(120 + by, 130), FAR] }, 62),
        still(up),
      ],
      [
        still(up),
        caught(up, { yarn: 'edging', held: [place], away: [FAR] }),
        drawnThrough(up, { yarn: 'edging', held: [place], away: [FAR] }, 128),
        still(end),
      ],
    ],
  };
}

// --- the chain ---

/** What the chain follows: a treble of the foundation, a double crochet, the slip knot, or yarn just attached. */
export type ChainAfter = 'foundation' | 'edging' | 'knot' | 'attach';

const chainYarn = (after: ChainAfter): YarnName =>
  after === 'edging' || after === 'attach' ? 'edging' : 'foundation';
const CHAIN_Y = 150;

function beforeChain(after: ChainAfter): Item[] {
  if (after === 'edging')
    return [...floor(null, [LAST, NEW]), ...COLUMNS.slice(0, 4).flatMap((x) => short(x))];
  if (after === 'attach') return [...floor(null), ...begun().filter(({ key }) => key === 'end')];
  if (after === 'knot') return knotAndChains();
  return COLUMNS.slice(0, 4).flatMap((x) => [
    ...treblePost({
      key: `post${x}`,
      yarn: 'foundation',
      top: at(x, CHAIN_Y + 4),
      foot: at(x + 8, 320),
      z: 16,
    }),
    ...vee({ key: `top${x}`, x, y: CHAIN_Y, yarn: 'foundation', z: 24 }),
  ]);
}

const knotAndChains = (): Strand[] => [
  {
    what: 'strand',
    key: 'end',
    yarn: 'foundation',
    z: 12,
    round: true,
    points: [at(352, 158), at(372, 196), at(360, 250)],
  },
  {
    what: 'strand',
    key: 'knot',
    yarn: 'foundation',
    z: 20,
    round: true,
    points: [at(334, 162), at(350, 172), at(366, 156)],
  },
  {
    what: 'strand',
    key: 'knot-top',
    yarn: 'foundation',
    z: 21,
    round: true,
    points: [at(332, 150), at(350, 158), at(368, 144)],
  },
  ...link({ key: 'first', x: 302, y: 156, angle: 184, yarn: 'foundation', z: 24 }),
  ...link({ key: 'second', x: 260, y: 152, angle: 186, yarn: 'foundation', z: 25 }),
];

/** One more chain where `made` lie already. */
export function chainScenes(after: ChainAfter, made = 0): MoveScenes {
  const yarn = chainYarn(after);
  if (after === 'attach') return attachChain();
  const y = after === 'edging' ? ROOF : CHAIN_Y;
  const first = head(LAST, y);
  const chainAt = (i: number) => ({ x: first[0] - 24 - 42 * i, y: y - 6 - 4 * i });
  const headOf = (count: number): Point =>
    count === 0 ? first : at(chainAt(count - 1).x - 17, chainAt(count - 1).y - 2);
  const frame = (count: number): Frame => ({
    hook: hookAt(at(headOf(count)[0] - 66, headOf(count)[1] - 46), -7),
    work: [
      ...beforeChain(after),
      ...Array.from({ length: count }, (_, i) =>
        link({ key: `chain${i}`, ...chainAt(i), angle: 187, yarn, z: 34 + i }),
      ).flat(),
    ],
    loops: [outOf({ key: 'live', yarn, on: 64 }, headOf(count))],
    yarn: ballFrom(yarn, headOf(count)),
  });
  const before = frame(made);
  const held = headOf(made);
  return {
    start: still(before),
    moves: [
      [
        still(before),
        caught(before, { yarn, held: [held], away: [FAR] }),
        drawnThrough(before, { yarn, held: [held], away: [FAR] }, 82),
        still(frame(made + 1)),
      ],
    ],
  };
}

/** The one chain after attaching: it stands up from the attach place and carries no stitch. */
function attachChain(): MoveScenes {
  const frame = (count: 0 | 1): Frame => {
    const live = count === 0 ? at(LAST + 4, FLOOR - 8) : at(LAST + 2, FLOOR - 44);
    return {
      hook: rest(live[0] + 26, live[1] - 50),
      work: count === 0 ? beforeChain('attach') : [...floor(null), ...begun()],
      loops: [outOf({ key: 'live', yarn: 'edging', on: 64 }, live)],
      yarn: ballFrom('edging', live),
    };
  };
  const before = frame(0);
  const held = at(LAST + 4, FLOOR - 8);
  return {
    start: still(before),
    moves: [
      [
        still(before),
        caught(before, { yarn: 'edging', held: [held], away: [FAR] }),
        drawnThrough(before, { yarn: 'edging', held: [held], away: [FAR] }, 82),
        still(frame(1)),
      ],
    ],
  };
}
