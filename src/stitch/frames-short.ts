/** The short stitches, move by move: double crochet on the foundation, the chain, the slip stitch of the join. */
import { head, link, shortPost, treblePost, vee } from './fabric.ts';
import { caught, drawnThrough, type Frame, type MoveScenes, still } from './frame.ts';
import { hookAt, type LoopSpec } from './loops.ts';
import { at, type Point } from './point.ts';
import { type Item, STITCH, type Strand, type Tool, type YarnName } from './scene.ts';

const FAR = at(-20, 34);
const BALL: readonly Point[] = [at(110, 70), at(50, 44), FAR];
const LAST = 266;
const NEW = LAST - STITCH;
const COLUMNS = [3, 2, 1, 0, -1, -2, -3].map((back) => LAST + back * STITCH);

const rest = (x: number, y: number): Tool => hookAt(at(x - 96, y), -7);
const outOf = (key: string, yarn: YarnName, on: number, [x, y]: Point, other = false): LoopSpec => ({
  key,
  yarn,
  on,
  front: [at(x - 3, y + 4)],
  back: [at(x + 4, y - 4)],
  ...(other && { other }),
});
const ballFrom = (yarn: YarnName, start: Point): Frame['yarn'] => ({ name: yarn, path: [start, ...BALL] });

// --- double crochet, worked on the tops of the foundation ---

const FLOOR = 196;
const ROOF = 138;

/** The foundation below; where corner chains lie instead of stitches there is no post. */
function floor(marked: 'back' | 'both' | null, chains: readonly number[] = []): Item[] {
  return COLUMNS.flatMap((x) => [
    ...(chains.includes(x)
      ? []
      : treblePost(`floor-post${x}`, 'foundation', at(x, FLOOR + 4), at(x + 6, 330), 12)),
    ...vee({
      key: `floor${x}`,
      x,
      y: FLOOR,
      yarn: 'foundation',
      z: 20,
      frontOver: 30,
      ...(x === NEW && marked !== null && { marked, z: 62 }),
      ...(x === NEW && marked === 'both' && { frontOver: 62 }),
    }),
  ]);
}

const short = (x: number): Strand[] => [
  ...shortPost(`short${x}`, 'edging', at(x, ROOF + 6), at(x + 2, FLOOR - 2)),
  ...vee({ key: `roof${x}`, x, y: ROOF, yarn: 'edging', z: 32 }),
];
const shorts = COLUMNS.slice(0, 4).flatMap(short);

/** Where corner chains lie below, instead of stitches. */
const CORNERS: Record<Into, number[]> = {
  'back-loop': [],
  'after-corner': [LAST, LAST + STITCH],
  'corner-chain': [NEW, NEW - STITCH],
};

/** The back loop of a stitch, the hidden one after a corner, or a corner chain (under both its loops). */
export type Into = 'back-loop' | 'after-corner' | 'corner-chain';

export function doubleCrochetScenes(into: Into = 'back-loop'): MoveScenes {
  const marked = into === 'corner-chain' ? 'both' : 'back';
  const chains = CORNERS[into];
  const live = head(LAST, ROOF);
  const place = at(NEW + 6, FLOOR - 6);
  const before: Frame = {
    hook: rest(LAST, 92),
    work: [...floor(null, chains), ...shorts],
    loops: [outOf('live', 'edging', 64, live)],
    yarn: ballFrom('edging', live),
  };
  const inserted: Frame = {
    hook: into === 'corner-chain' ? hookAt(at(168, 164), 40) : hookAt(at(172, 152), 37),
    work: [...floor(marked, chains), ...shorts],
    loops: [outOf('live', 'edging', 96, live, true)],
    yarn: ballFrom('edging', live),
  };
  const up: Frame = {
    hook: hookAt(at(128, 112), -9),
    work: before.work,
    loops: [outOf('live', 'edging', 112, live), outOf('up', 'edging', 62, place)],
    yarn: ballFrom('edging', place),
  };
  const end: Frame = {
    hook: rest(NEW, 92),
    work: [...before.work, ...short(NEW)],
    loops: [outOf('live', 'edging', 64, head(NEW, ROOF))],
    yarn: ballFrom('edging', head(NEW, ROOF)),
  };
  return {
    start: still(before),
    moves: [
      [still(before), still(inserted)],
      [
        still(inserted),
        caught(inserted, 'edging', [live], [FAR]),
        drawnThrough(inserted, 'edging', [live], [place, at(120, 130), FAR], 62),
        still(up),
      ],
      [
        still(up),
        caught(up, 'edging', [place], [FAR]),
        drawnThrough(up, 'edging', [place], [FAR], 128),
        still(end),
      ],
    ],
  };
}

// --- the chain ---

/** What the chain follows: a treble of the foundation, a double crochet, or the slip knot. */
export type ChainAfter = 'foundation' | 'edging' | 'knot';

const chainYarn = (after: ChainAfter): YarnName => (after === 'edging' ? 'edging' : 'foundation');
const CHAIN_Y = 150;

function beforeChain(after: ChainAfter): Item[] {
  if (after === 'edging') return [...floor(null, [NEW, NEW - STITCH]), ...shorts];
  if (after === 'knot') return knotAndChains();
  return COLUMNS.slice(0, 4).flatMap((x) => [
    ...treblePost(`post${x}`, 'foundation', at(x, CHAIN_Y + 4), at(x + 8, 320), 16),
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
  ...link('first', 302, 156, 184, 'foundation', 24),
  ...link('second', 260, 152, 186, 'foundation', 25),
];

/** One more chain where `made` lie already. */
export function chainScenes(after: ChainAfter, made = 0): MoveScenes {
  const yarn = chainYarn(after);
  const y = after === 'edging' ? ROOF : CHAIN_Y;
  const first = head(LAST, y);
  const chainAt = (i: number): Point => at(first[0] - 24 - 42 * i, y - 6 - 4 * i);
  const headOf = (count: number): Point =>
    count === 0 ? first : at(chainAt(count - 1)[0] - 17, chainAt(count - 1)[1] - 2);
  const frame = (count: number): Frame => ({
    hook: hookAt(at(headOf(count)[0] - 66, headOf(count)[1] - 46), -7),
    work: [
      ...beforeChain(after),
      ...Array.from({ length: count }, (_, i) => link(`chain${i}`, ...chainAt(i), 187, yarn, 34 + i)).flat(),
    ],
    loops: [outOf('live', yarn, 64, headOf(count))],
    yarn: ballFrom(yarn, headOf(count)),
  });
  const before = frame(made);
  const held = headOf(made);
  return {
    start: still(before),
    moves: [
      [
        still(before),
        caught(before, yarn, [held], [FAR]),
        drawnThrough(before, yarn, [held], [FAR], 82),
        still(frame(made + 1)),
      ],
    ],
  };
}

// --- the slip stitch of the join: front near, back beyond, four loops side by side ---

const NEAR = 198;
const BEYOND = 152;
const BETWEEN = (NEAR + BEYOND) / 2;

/** The two edges as they lie together, seen from above; with `marked` the inner two loops are picked out. */
export function edges(marked: boolean, made: number): Item[] {
  const inner = (x: number): boolean => marked && x === NEW;
  return [
    ...COLUMNS.flatMap((x) => [
      ...shortPost(`near-post${x}`, 'front', at(x, NEAR + 8), at(x + 2, 270), 12),
      ...vee({
        key: `near${x}`,
        x,
        y: NEAR,
        yarn: 'front',
        z: 20,
        frontOver: 22,
        ...(inner(x) && { marked: 'back' as const, z: 62 }),
      }),
    ]),
    ...[...COLUMNS].reverse().flatMap((x) => [
      ...shortPost(`beyond-post${x}`, 'edging', at(x, BEYOND - 8), at(x - 2, 80), 12),
      ...vee({
        key: `beyond${x}`,
        x,
        y: BEYOND,
        yarn: 'edging',
        z: 20,
        facing: 'away',
        ...(inner(x) && { marked: 'front' as const, frontOver: 62 }),
      }),
    ]),
    ...COLUMNS.slice(0, made).flatMap((x) => vee({ key: `joined${x}`, x, y: BETWEEN, yarn: 'join', z: 36 })),
  ];
}

export function slipStitchScenes(): MoveScenes {
  const live = head(LAST, BETWEEN);
  const before: Frame = {
    hook: rest(LAST, 128),
    work: edges(false, 4),
    loops: [outOf('live', 'join', 64, live)],
    yarn: ballFrom('join', live),
  };
  const inserted: Frame = {
    hook: hookAt(at(158, 132), 40),
    work: edges(true, 4),
    loops: [outOf('live', 'join', 100, live, true)],
    yarn: ballFrom('join', live),
  };
  const end: Frame = {
    hook: rest(NEW, 128),
    work: edges(false, 5),
    loops: [outOf('live', 'join', 64, head(NEW, BETWEEN))],
    yarn: ballFrom('join', head(NEW, BETWEEN)),
  };
  return {
    start: still(before),
    moves: [
      [still(before), still(inserted)],
      [
        still(inserted),
        caught(inserted, 'join', [live], [FAR]),
        drawnThrough(inserted, 'join', [live], [at(NEW, BETWEEN), at(110, 130), FAR], 70),
        drawnThrough(inserted, 'join', [live], [at(NEW, BETWEEN), at(110, 130), FAR], 118),
        still(end),
      ],
    ],
  };
}
