/** Needle work, move by move: closing a round, and the running stitch that holds the strip to the cloth. */
import { head, link, shortPost, treblePost, vee } from '../fabric.ts';
import { type MoveScenes, still } from '../frame.ts';
import { hookAt, Z } from '../loops.ts';
import { at, type Point } from '../point.ts';
import {
  type Item,
  mirror,
  type Scene,
  STITCH,
  type Strand,
  type Tool,
  WIDE,
  type YarnName,
} from '../scene.ts';

export const needleAt = (tip: Point, angle: number, length = 120, z: number = Z.hook): Tool => ({
  what: 'needle',
  key: 'needle',
  tip,
  angle,
  length,
  z,
});

/** Where the needle's eye is. */
function eye({ tip, angle, length }: Tool): Point {
  const radians = (angle * Math.PI) / 180;
  return at(tip[0] + Math.cos(radians) * (length - 16), tip[1] + Math.sin(radians) * (length - 16));
}

// --- closing a round ---

const EDGE = 168;
const END = 278;

export type Closing = { adds: 0 | 1; yarn: YarnName };

/** The round's end on the right and its beginning on the left; a closing that adds leaves room for its stitch. */
const beginning = ({ adds }: Closing): number => END - STITCH * (adds + 1);

function ring(closing: Closing, over: 'beginning' | 'end' | null): Item[] {
  const { yarn, adds } = closing;
  const first = beginning(closing);
  const under = adds === 1 ? first : first - STITCH;
  const ends = [END + 2 * STITCH, END + STITCH, END];
  const starts = [first, first - STITCH, first - 2 * STITCH, first - 3 * STITCH];
  const tops = [...ends, ...starts].flatMap((x) => {
    const marked = (over === 'beginning' && x === under) || (over === 'end' && x === END);
    return vee({ key: `top${x}`, x, y: EDGE, yarn, ...(marked && { marked: 'both' as const, z: 62 }) });
  });
  // The edging's closing covers the place where its yarn was attached.
  const attached =
    yarn === 'edging' && adds === 1
      ? link({ key: 'attach-chain', x: first + STITCH + 3, y: EDGE + 30, angle: -92, yarn, z: 16 })
      : [];
  return [...standing(yarn, [...ends, ...starts], first - 3 * STITCH), ...attached, ...tops];
}

/** What the tops stand on: trebles, double crochets on the foundation, or the two edges that are joined. */
function standing(yarn: YarnName, columns: readonly number[], last: number): Item[] {
  const every = [...Array(8).keys()].map((i) => last + i * STITCH);
  switch (yarn) {
    case 'edging':
      return [
        ...columns.flatMap((x) =>
          shortPost({ key: `post${x}`, yarn, top: at(x, EDGE + 6), foot: at(x + 2, EDGE + 54), z: 18 }),
        ),
        ...every.flatMap((x) => [
          ...treblePost({
            key: `floor-post${x}`,
            yarn: 'foundation',
            top: at(x, EDGE + 60),
            foot: at(x + 6, EDGE + 190),
            z: 8,
          }),
          ...vee({ key: `floor${x}`, x, y: EDGE + 56, yarn: 'foundation', z: 14, frontOver: 20 }),
        ]),
      ];
    case 'join':
      return every.flatMap((x) => [
        ...shortPost({
          key: `near-post${x}`,
          yarn: 'front',
          top: at(x, EDGE + 31),
          foot: at(x + 2, EDGE + 95),
          z: 8,
        }),
        ...vee({ key: `near${x}`, x, y: EDGE + 23, yarn: 'front', z: 12 }),
        ...shortPost({
          key: `beyond-post${x}`,
          yarn: 'edging',
          top: at(x, EDGE - 31),
          foot: at(x - 2, EDGE - 95),
          z: 8,
        }),
        ...vee({ key: `beyond${x}`, x, y: EDGE - 23, yarn: 'edging', z: 12, facing: 'away' }),
      ]);
    default:
      return columns.flatMap((x) =>
        treblePost({ key: `post${x}`, yarn, top: at(x, EDGE + 4), foot: at(x + 6, 310), z: 12 }),
      );
  }
}

const endHead = head(END, EDGE);

const tail = (key: string, yarn: YarnName, points: readonly Point[], z: number = Z.near): Strand => ({
  what: 'strand',
  key,
  yarn,
  points,
  z,
});

const resting = needleAt(at(118, 40), 14);

/** The yarn is cut and drawn out of the last loop; its end is threaded. */
const pulled = (closing: Closing): Scene => [
  ...ring(closing, null),
  resting,
  tail('tail', closing.yarn, [endHead, at(endHead[0] - 4, 130), at(280, 90), eye(resting)]),
];

/** The end of a round: cut, and drawn through the loop that lies on the hook. */
export function fastenOffScenes(closing: Closing): MoveScenes {
  const { yarn } = closing;
  const before = still({
    hook: hookAt(at(END - 96, EDGE - 46), -7),
    work: ring(closing, null),
    loops: [
      {
        key: 'live',
        yarn,
        on: 64,
        front: [at(endHead[0] - 3, EDGE + 4)],
        back: [at(endHead[0] + 4, EDGE - 4)],
      },
    ],
    yarn: { name: yarn, path: [endHead, at(120, 80), at(50, 48), at(-20, 34)] },
  });
  const hanging: Scene = [
    ...ring(closing, null),
    tail('tail', yarn, [endHead, at(endHead[0] - 10, 120), at(196, 74), at(150, 92), at(118, 64)]),
  ];
  return { start: before, moves: [[before, hanging]] };
}

/** The needle's way round: under the first (or over it the second) stitch, back into the last. */
export function closingScenes(closing: Closing): MoveScenes {
  const { yarn, adds } = closing;
  const first = beginning(closing);
  const under = adds === 1 ? first : first - STITCH;
  const start = pulled(closing);
  const going = needleAt(at(under - 26, EDGE - 46), 62);
  const beneath: Scene = [
    ...ring(closing, 'beginning'),
    going,
    tail('tail', yarn, [endHead, at(endHead[0] - 8, EDGE + 34), at(under + 58, EDGE + 74), eye(going)]),
  ];
  const from = at(under + 14, EDGE + 18);
  const out = at(under - 8, EDGE - 18);
  const laid = (last: Point[]): Strand[] => [
    tail('tail', yarn, [
      endHead,
      at(endHead[0] - 14, EDGE + 13),
      at((endHead[0] + from[0]) / 2, EDGE + 20),
      from,
      at(under + 6, EDGE + 2),
    ]),
    tail('tail-back', yarn, [out, at(under + 10, EDGE - 30), ...last]),
  ];
  const back = needleAt(at(END - 34, EDGE + 58), -68);
  const into: Scene = [
    ...ring(closing, 'end'),
    back,
    ...laid([at((under + END) / 2 - 10, EDGE - 44), at(END - 4, EDGE - 60), eye(back)]),
  ];
  return {
    start,
    moves: [
      [start, beneath],
      [beneath, into],
      [into, closed(closing)],
    ],
  };
}

/** The finished closing: a V of its own beside the first stitch, or one that covers it. */
export function closed(closing: Closing): Scene {
  const { yarn, adds } = closing;
  const first = beginning(closing);
  const x = adds === 1 ? first + STITCH : first;
  return [
    ...ring(closing, null),
    ...vee({ key: 'closing', x, y: adds === 1 ? EDGE : EDGE - 2, yarn, z: 64, marked: 'both' }),
    // The join's end goes inside, out of sight.
    ...(yarn === 'join'
      ? []
      : [
          tail(
            'end',
            yarn,
            [at(END - 20, EDGE + 8), at(END - 26, 210), at(END - 14, 262), at(END - 34, 310)],
            4,
          ),
        ]),
  ];
}

// --- running stitch along the strip ---

const CUT = 52;
const LINE = 196;
const POSTS = [0, 1, 2, 3, 4, 5, 6].map((i) => WIDE - 20 - i * STITCH);

/** The strip face down on the cloth: its base on the cloth's cut edge, the edging towards the middle. */
function stripOnCloth(): Item[] {
  return [
    {
      what: 'area',
      key: 'cloth',
      points: [at(-10, CUT - 14), at(WIDE + 10, CUT - 14), at(WIDE + 10, 310), at(-10, 310)],
      fill: 'cloth',
      z: 2,
    },
    ...POSTS.flatMap((x) => [
      ...vee({ key: `base${x}`, x, y: CUT, yarn: 'foundation', z: 22 }),
      ...treblePost({
        key: `post${x}`,
        yarn: 'foundation',
        top: at(x, CUT + 8),
        foot: at(x + 4, LINE + 16),
        z: 16,
      }),
      ...shortPost({
        key: `edge-post${x}`,
        yarn: 'edging',
        top: at(x, 250),
        foot: at(x + 2, LINE + 10),
        z: 18,
      }),
      ...vee({ key: `edge${x}`, x, y: 256, yarn: 'edging', z: 24 }),
    ]),
  ];
}

/** Places where the thread goes down or comes up, one stitch apart, from right to left. */
const holes = POSTS.map((x) => at(x - 30, LINE));
const hole = (i: number): Point => holes[i] ?? at(0, LINE);

const dash = (from: number, hidden: boolean): Strand => ({
  what: 'strand',
  key: `${hidden ? 'under' : 'over'}${from}`,
  yarn: 'thread',
  points: [hole(from), at((hole(from)[0] + hole(from + 1)[0]) / 2, LINE + (hidden ? 0 : -3)), hole(from + 1)],
  z: hidden ? 60 : 66,
  ...(hidden && { faint: true }),
});

/** Thread already sewn from the right up to hole `to`: over one stitch, under the next. */
const sewn = (to: number, second: boolean): Strand[] =>
  Array.from({ length: to }, (_, i) => dash(i, (i % 2 === 1) !== second));

const FIRST_PASS = holes.length - 1;

/** One running stitch; `back` is the second pass, sewn the other way round, which fills the gaps of the first. */
export function runningScenes(back: boolean): MoveScenes {
  const { start, moves } = pass(back);
  return back ? { start: turned(start), moves: moves.map((scenes) => scenes.map(turned)) } : { start, moves };
}

/** Needle and thread mirrored on a strip that stays as it lies. */
function turned(scene: Scene): Scene {
  const lies = new Set(stripOnCloth().map(({ key }) => key));
  return [...scene.filter(({ key }) => lies.has(key)), ...mirror(scene.filter(({ key }) => !lies.has(key)))];
}

function pass(back: boolean): MoveScenes {
  const done = (to: number): Item[] => [
    ...stripOnCloth(),
    ...(back ? sewn(FIRST_PASS, true).filter(({ faint }) => faint !== true) : []),
    ...sewn(to, false),
  ];
  const thread = (points: readonly Point[]): Strand => ({
    what: 'strand',
    key: 'thread',
    yarn: 'thread',
    points,
    z: Z.near,
  });
  const above = needleAt(at(hole(2)[0] - 92, LINE - 92), 8);
  const start: Scene = [...done(2), above, thread([hole(2), at(hole(2)[0] + 14, LINE - 40), eye(above)])];
  const diving = needleAt(at(hole(3)[0] - 6, LINE + 6), -28, 120, 58);
  const down: Scene = [
    ...done(2),
    diving,
    thread([hole(2), at(hole(2)[0] + 24, LINE - 26), eye(diving)]),
    { what: 'place', key: 'place', centre: hole(3), radius: 15, z: Z.mark },
  ];
  const rising = needleAt(at(hole(4)[0] - 34, LINE - 14), 6, 124, 58);
  const up: Scene = [
    ...done(2),
    rising,
    ...overNeedle(),
    thread([hole(2), at(hole(2)[0] + 16, LINE - 30), eye(rising)]),
    { what: 'place', key: 'place', centre: hole(4), radius: 15, z: Z.mark },
  ];
  const resting = needleAt(at(hole(4)[0] - 92, LINE - 92), 8);
  const end: Scene = [...done(4), resting, thread([hole(4), at(hole(4)[0] + 14, LINE - 40), eye(resting)])];
  return {
    start,
    moves: [
      [start, down],
      [down, up],
      [up, end],
    ],
  };
}

/** The stitch under which the needle passes lies over it. */
function overNeedle(): Strand[] {
  const x = POSTS[4] ?? 0;
  return treblePost({
    key: `over${x}`,
    yarn: 'foundation',
    top: at(x, CUT + 8),
    foot: at(x + 4, LINE + 16),
    z: 60,
  });
}
