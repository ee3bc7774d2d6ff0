/**
 * The tall stitches, move by move: the foundation treble (into the base chain, with a base chain of its own),
 * its first one (into the first of the starting chains) and the plain treble (into the top of a stitch).
 * Finished stitches stand to the right.
 */
import { halfPost, head, link, treblePost, vee } from '../fabric.ts';
import { caught, drawnThrough, type Frame, type MoveScenes, still } from '../frame.ts';
import { hookAt, type LoopSpec } from '../loops.ts';
import { at, type Point } from '../point.ts';
import { type Item, type Scene, STITCH, type Strand, type Tool, type YarnName } from '../scene.ts';

export type Tall = 'foundation-treble' | 'foundation-start' | 'treble';

const TOP = 108;
const BASE = 246;
const LAST = 266;
const NEW = LAST - STITCH;
/** The base chain lies a little ahead of the top. */
const AHEAD = 22;
const FAR = at(-20, 34);
const BALL: readonly Point[] = [at(120, 66), at(50, 40), FAR];

const baseX = (x: number): number => x - AHEAD;
const baseHead = (x: number): Point => head(baseX(x), BASE);
const topHead = (x: number): Point => head(x, TOP);

type Ground = {
  yarn: YarnName;
  /** The work before the new stitch; `over`: the place is marked and lies over the hook. */
  work: (over: boolean) => Item[];
  /** Where the loop on the hook comes from, and where the new stitch's first loop comes out. */
  live: Point;
  place: Point;
  hookTip: Point;
  foot: Point;
  hasBase: boolean;
};

const post = (x: number, foot: Point, yarn: YarnName): Strand[] =>
  treblePost({ key: `post${x}`, yarn, top: at(x, TOP + 4), foot });
const top = (x: number, yarn: YarnName): Strand[] => vee({ key: `top${x}`, x, y: TOP, yarn });
const base = (x: number, yarn: YarnName, over = false): Strand[] =>
  vee({
    key: `base${x}`,
    x: baseX(x),
    y: BASE,
    yarn,
    z: over ? 62 : 22,
    ...(over && { marked: 'both' as const }),
  });

const footOn = (x: number): Point => at(baseHead(x)[0] + 4, BASE - 10);

const foundationTreble = (x: number, yarn: YarnName, over = false): Strand[] => [
  ...post(x, footOn(x + STITCH), yarn),
  ...base(x, yarn, over),
  ...top(x, yarn),
];

const onFoundation: Ground = {
  yarn: 'foundation',
  work: (over) => [
    ...[3, 2, 1].flatMap((back) => foundationTreble(LAST + back * STITCH, 'foundation')),
    ...foundationTreble(LAST, 'foundation', over),
  ],
  live: topHead(LAST),
  place: baseHead(LAST),
  hookTip: at(211, 284),
  foot: footOn(LAST),
  hasBase: true,
};

/** The first of the starting chains lies along the base, the others stand up to the hook. */
const onFirstChain: Ground = {
  ...onFoundation,
  work: (over) => [
    {
      what: 'strand',
      key: 'tail',
      yarn: 'foundation',
      z: 12,
      points: [at(236, BASE + 4), at(226, 268), at(240, 320)],
    },
    ...vee({
      key: 'first-chain',
      x: 250,
      y: BASE,
      yarn: 'foundation',
      facing: 'away',
      z: over ? 62 : 22,
      ...(over && { marked: 'both' as const }),
    }),
    ...link({ key: 'chain2', x: 284, y: 218, angle: -84, yarn: 'foundation', z: 25 }),
    ...link({ key: 'chain3', x: 279, y: 179, angle: -101, yarn: 'foundation', z: 26 }),
    ...link({ key: 'chain4', x: 261, y: 143, angle: -122, yarn: 'foundation', z: 27 }),
  ],
  live: at(248, 117),
  place: at(222, BASE),
  hookTip: at(234, 286),
  foot: at(228, BASE - 8),
};

const plainTreble = (x: number): Strand[] => [...post(x, at(x + 3, BASE - 6), 'edging'), ...top(x, 'edging')];
const ground = (x: number, over = false): Strand[] =>
  vee({
    key: `ground${x}`,
    x,
    y: BASE,
    yarn: 'foundation',
    z: over ? 62 : 14,
    ...(over && { marked: 'both' as const }),
  });

const onStitch: Ground = {
  yarn: 'edging',
  work: (over) => [
    ...[3, 2, 1, 0].flatMap((back) => ground(LAST + back * STITCH)),
    ...ground(NEW, over),
    ...[1, 2].flatMap((on) => ground(NEW - on * STITCH)),
    ...[3, 2, 1, 0].flatMap((back) => plainTreble(LAST + back * STITCH)),
  ],
  live: topHead(LAST),
  place: at(NEW + 2, BASE - 2),
  hookTip: at(199, 284),
  foot: at(NEW + 3, BASE - 6),
  hasBase: false,
};

const GROUNDS: Record<Tall, Ground> = {
  'foundation-treble': onFoundation,
  'foundation-start': onFirstChain,
  treble: onStitch,
};

/** The pictures of a tall stitch. */
export function tallScenes(kind: Tall): MoveScenes {
  const on = GROUNDS[kind];
  const { yarn, place, live } = on;
  const ballFrom = (start: Point): Frame['yarn'] => ({ name: yarn, path: [start, ...BALL] });
  const loop = (key: string, at: number, front: readonly Point[], back: readonly Point[]): LoopSpec => ({
    key,
    yarn,
    on: at,
    front,
    back,
  });
  const outOf = (key: string, along: number, [x, y]: Point): LoopSpec =>
    loop(key, along, [at(x - 3, y + 4)], [at(x + 4, y - 4)]);
  const toBall = (low: number): Point[] => [FAR, at(50, 42), at(150, low)];
  /** Once the hook has gone in, the wrap's yarn runs down behind the work. */
  const wrapAfter = (along: number): LoopSpec =>
    loop('wrap', along, [place, at(place[0] + 2, place[1] - 40)], [live]);
  const runThrough = (frame: Frame, held: Point, by: number): Scene[] => [
    caught(frame, { yarn, held: [held], away: [FAR] }),
    drawnThrough(frame, { yarn, held: [held], away: [FAR] }, by),
  ];

  const before: Frame = {
    hook: rest(LAST),
    work: on.work(false),
    loops: [outOf('live', 64, live)],
    yarn: ballFrom(live),
  };
  const wrapped: Frame = {
    ...before,
    loops: [outOf('live', 64, live), loop('wrap', 38, toBall(100), [live])],
    yarn: null,
  };
  const inserted: Frame = {
    hook: hookAt(on.hookTip, -87),
    work: on.work(true),
    loops: [outOf('live', 190, live), loop('wrap', 152, toBall(120), [at(live[0], live[1] + 4)])],
    yarn: null,
  };
  const held: Frame = { ...inserted, loops: [outOf('live', 190, live), wrapAfter(152)] };
  const drawnUp: Frame = {
    hook: hookAt(at(place[0] - 90, 168), -32),
    work: on.work(false),
    loops: [outOf('live', 144, live), wrapAfter(98), outOf('up', 50, place)],
    yarn: ballFrom(place),
  };
  const baseWork: Item[] = on.hasBase ? [...on.work(false), ...base(NEW, yarn)] : on.work(false);
  const own = on.hasBase ? baseHead(NEW) : place;
  const chained: Frame = {
    hook: hookAt(at(112, 164), -27),
    work: baseWork,
    loops: [outOf('live', 152, live), wrapAfter(104), outOf('chained', 52, own)],
    yarn: ballFrom(own),
  };
  const newPost = post(NEW, on.foot, yarn);
  const middle = at(NEW + 4, TOP + 66);
  const half: Frame = {
    hook: hookAt(at(116, 118), -17),
    work: [...baseWork, ...halfPost(newPost)],
    loops: [outOf('live', 120, live), outOf('half', 66, middle)],
    yarn: ballFrom(middle),
  };
  const end: Frame = {
    hook: rest(NEW),
    work: [...baseWork, ...newPost, ...top(NEW, yarn)],
    loops: [outOf('live', 64, topHead(NEW))],
    yarn: ballFrom(topHead(NEW)),
  };

  const tall = on.hasBase ? chained : drawnUp;
  const chainOne: Scene[][] = on.hasBase
    ? [[still(drawnUp), ...runThrough(drawnUp, place, 66), still(chained)]]
    : [];
  const reach = at(place[0] - 8, place[1] - 6);
  return {
    start: still(before),
    moves: [
      [still(before), still(wrapped)],
      [still(wrapped), still(inserted)],
      [
        still(inserted),
        caught(held, { yarn, held: [place], away: [FAR] }),
        drawnThrough(held, { yarn, held: [place], away: [reach, at(120, 180), FAR] }, 76),
        still(drawnUp),
      ],
      ...chainOne,
      [still(tall), ...runThrough(tall, own, 120), still(half)],
      [still(half), ...runThrough(half, middle, 130), still(end)],
    ],
  };
}

const rest = (x: number): Tool => hookAt(at(x - 96, 62), -7);

/** The first foundation treble of a leg: the corner chains stand between the last top and the hook. */
export function afterCorner(chains: number): Scene {
  const shown = Math.max(1, Math.min(chains, 2));
  const links = Array.from({ length: shown }, (_, i) =>
    link({
      key: `corner${i}`,
      x: 243 + 7 * i,
      y: 80 - 38 * i,
      angle: -78 - 8 * i,
      yarn: 'foundation',
      z: 26 + i,
    }),
  ).flat();
  const end = at(246 + 7 * (shown - 1), 61 - 38 * (shown - 1));
  const loops: LoopSpec[] = [
    { key: 'live', yarn: 'foundation', on: 284 - end[1] + 4, front: [at(end[0], end[1] + 5)], back: [end] },
    {
      key: 'wrap',
      yarn: 'foundation',
      on: 176,
      front: [FAR, at(50, 48), at(150, 98)],
      back: [at(end[0] - 2, end[1] + 8), at(242, 92)],
    },
  ];
  return still({
    hook: hookAt(at(211, 284), -87),
    work: [...onFoundation.work(true), ...links],
    loops,
    yarn: null,
  });
}

/** By mistake: the hook goes round the post of the last treble. */
export function postPicked(chains: number): Scene {
  const scene = afterCorner(chains);
  const over = treblePost({
    key: `post${LAST}`,
    yarn: 'foundation',
    top: at(LAST, TOP + 4),
    foot: footOn(LAST + STITCH),
  }).map((strand): Strand => ({ ...strand, marked: true, z: 62 }));
  const shift = (item: Item): Item => {
    if (item.what === 'hook') return { ...item, tip: at(238, 206), angle: -32 };
    return item.what === 'strand' && item.marked === true ? { ...item, marked: false, z: 22 } : item;
  };
  const isLoop = ({ key }: Item): boolean => /^(?:live|wrap)/.test(key);
  return [
    ...scene.filter((item) => !isLoop(item) && !over.some(({ key }) => key === item.key)).map(shift),
    ...over,
  ];
}

/** The end of a leg with its corner chains made, the hook at rest: where does the next treble go? */
export function cornerMade(chains: number): Scene {
  const shown = Math.max(1, Math.min(chains, 2));
  const [x, y] = topHead(LAST);
  const links = Array.from({ length: shown }, (_, i) =>
    link({
      key: `corner${i}`,
      x: x - 24 - 42 * i,
      y: y - 6 - 4 * i,
      angle: 187,
      yarn: 'foundation',
      z: 26 + i,
    }),
  ).flat();
  const end = at(x - 41 - 42 * (shown - 1), y - 8 - 4 * (shown - 1));
  return still({
    hook: hookAt(at(end[0] - 66, end[1] - 46), -7),
    work: [...onFoundation.work(false), ...links],
    loops: [
      {
        key: 'live',
        yarn: 'foundation',
        on: 64,
        front: [at(end[0] - 3, end[1] + 4)],
        back: [at(end[0] + 4, end[1] - 4)],
      },
    ],
    yarn: { name: 'foundation', path: [end, at(60, 60), at(20, 40), FAR] },
  });
}
