/** Still pictures along an edge: counting, attaching, right and wrong side, holes, ends, the long loop. */
import { head, shortPost, treblePost, vee } from '../fabric.ts';
import { still } from '../frame.ts';
import { edges } from '../frames/join.ts';
import { needleAt } from '../frames/needle.ts';
import { BALL, COLUMNS, doubleCrochetScenes, NEW, outOf, rest } from '../frames/short.ts';
import { caughtIn, hookAt, loopOn, Z } from '../loops.ts';
import { at } from '../point.ts';
import { type Item, type Scene, STITCH, type Strand, WIDE } from '../scene.ts';

const words = (text: string, x: number, y: number, size = 20): Item => ({
  what: 'words',
  key: `words ${text} ${x}`,
  where: at(x, y),
  words: text,
  size,
  align: 'middle',
  z: Z.words,
});

/** A knot that slides, its loop on the hook, the short end hanging. */
export function slipKnot(): Scene {
  const hook = hookAt(at(120, 110), -7);
  return [
    hook,
    ...loopOn(hook, { key: 'live', yarn: 'foundation', on: 66, front: [at(182, 158)], back: [at(192, 156)] }),
    {
      what: 'strand',
      key: 'ball',
      yarn: 'foundation',
      z: Z.behind,
      points: [at(184, 172), at(120, 150), at(40, 90), at(-20, 80)],
    },
    {
      what: 'strand',
      key: 'end',
      yarn: 'foundation',
      z: Z.behind,
      round: true,
      points: [at(188, 172), at(196, 214), at(178, 246), at(190, 276)],
    },
    {
      what: 'strand',
      key: 'knot-low',
      yarn: 'foundation',
      z: 32,
      round: true,
      points: [at(172, 176), at(188, 186), at(204, 174)],
    },
    {
      what: 'strand',
      key: 'knot',
      yarn: 'foundation',
      z: 33,
      round: true,
      points: [at(168, 164), at(186, 172), at(206, 160)],
    },
  ];
}

/** A stitch marker hung into a loop: a small open ring. */
const marker = (key: string, x: number, y: number): Item => ({
  what: 'strand',
  key,
  yarn: 'thread',
  closed: true,
  z: Z.near,
  points: [
    at(x, y - 17),
    at(x + 11, y - 10),
    at(x + 12, y + 5),
    at(x, y + 15),
    at(x - 12, y + 5),
    at(x - 11, y - 10),
  ],
});

const ROW = 150;
const ROW_X = [5, 4, 3, 2, 1, 0].map((i) => 50 + i * STITCH);

/** What is counted: a stitch along a side, the first beside a corner, the corner's first or next chain, or its stitch. */
export type Counting = 'along' | 'first' | 'chain' | 'next-chain' | 'stitch';

/** Which places of the row are corner chains, the counted one being the third from the left. */
const COUNTED_CHAINS: Record<Counting, readonly number[]> = {
  along: [],
  first: [3, 4],
  chain: [1, 2],
  'next-chain': [2, 3],
  stitch: [],
};

/** The front's last round from above, one place ringed; where a marker goes into it, with that. */
export function counting(what: Counting, isMarked = false): Scene {
  const spot = ROW_X[2] ?? 0;
  // Three stitches stand in one place, the middle one of them is the corner.
  const foot = (x: number): number => (what === 'stitch' && Math.abs(x - spot) <= STITCH ? spot : x);
  const row = ROW_X.flatMap((x, i): Item[] => [
    ...(COUNTED_CHAINS[what].includes(i)
      ? []
      : shortPost({
          key: `post${x}`,
          yarn: 'front',
          top: at(x, ROW + 8),
          foot: at(foot(x) + 2, 230),
          z: 12,
        })),
    ...vee({ key: `top${x}`, x, y: ROW, yarn: 'front' }),
  ]);
  return [
    ...row,
    ...(isMarked ? [marker('marker', spot + 2, ROW + 12)] : []),
    { what: 'place', key: 'place', centre: at(spot, ROW), radius: 33, z: Z.mark },
  ];
}

/** The edging's yarn drawn through a back loop to begin with. */
export function attaching(): Scene {
  const [first] = doubleCrochetScenes().moves;
  const inserted = first?.at(-1) ?? [];
  const lies = inserted.filter(({ key }) => key.startsWith('floor'));
  const hook = hookAt(at(172, 152), 37);
  const end: Strand = {
    what: 'strand',
    key: 'end',
    yarn: 'edging',
    z: Z.behind,
    round: true,
    points: [at(194, 186), at(214, 120), at(250, 96), at(262, 60)],
  };
  return [
    ...lies,
    hook,
    end,
    ...caughtIn(hook, { yarn: 'edging', held: [at(200, 170)], away: [at(-20, 34)] }),
  ];
}

/** The join's yarn drawn through the inner loops of both pieces. */
export function attachingJoin(): Scene {
  const hook = hookAt(at(158, 132), 40);
  const end: Strand = {
    what: 'strand',
    key: 'end',
    yarn: 'join',
    z: Z.behind,
    round: true,
    points: [at(192, 170), at(216, 110), at(252, 86), at(262, 50)],
  };
  return [
    ...edges({ marked: true }),
    hook,
    end,
    ...caughtIn(hook, { yarn: 'join', held: [at(200, 160)], away: [at(-20, 34)] }),
  ];
}

/** Right and wrong side of the foundation, side by side. */
export function twoSides(right: string, wrong: string): Scene {
  const top = 80;
  const low = 208;
  const rightSide = [160, 100, 40].flatMap((x) => [
    ...treblePost({
      key: `post${x}`,
      yarn: 'foundation',
      top: at(x, top + 4),
      foot: at(x + 10, low - 8),
      z: 16,
    }),
    ...vee({ key: `base${x}`, x: x - 4, y: low, yarn: 'foundation', z: 22 }),
    ...vee({ key: `top${x}`, x, y: top, yarn: 'foundation' }),
  ]);
  const bar = (key: string, x: number, y: number): Strand => ({
    what: 'strand',
    key,
    yarn: 'foundation',
    z: 26,
    round: true,
    points: [at(x - 21, y + 4), at(x - 8, y - 3), at(x + 8, y - 3), at(x + 21, y + 4)],
  });
  const wrongSide = [360, 300, 240].flatMap((x) => [
    ...treblePost({
      key: `wrong-post${x}`,
      yarn: 'foundation',
      top: at(x, top + 4),
      foot: at(x - 6, low - 4),
      z: 16,
    }).slice(0, 2),
    ...vee({ key: `wrong-top${x}`, x, y: top, yarn: 'foundation', facing: 'away' }),
    bar(`wrong-under${x}`, x, top + 28),
    bar(`wrong-middle${x}`, x, top + 74),
    bar(`wrong-base${x}`, x, low),
  ]);
  return [
    ...rightSide,
    ...wrongSide,
    { what: 'line', key: 'between', points: [at(WIDE / 2, 40), at(WIDE / 2, 250)], broken: true, z: 5 },
    words(right, 100, 268),
    words(wrong, 300, 268),
  ];
}

/** Both edges with a marker in the pair where the join begins, numbered from the corner. */
export function markedPair(fromCorner: number, isChain: boolean): Scene {
  const xOf = (count: number): number => NEW + (fromCorner - count) * STITCH;
  const shown = Array.from({ length: Math.max(0, fromCorner) }, (_, i) => i + 1).filter((n) => xOf(n) < WIDE);
  const corner = COLUMNS.filter((x) => fromCorner > 0 && x >= xOf(1));
  return [
    ...edges({ marked: true, chains: isChain ? corner : [] }),
    marker('marker-beyond', NEW + 2, 128),
    marker('marker-near', NEW + 2, 226),
    ...shown.map((n) => words(`${n}`, xOf(n), 290, 20)),
  ];
}

/** A pair that has not been joined shows as a hole. */
export function hole(): Scene {
  return [
    ...edges({ joined: COLUMNS.filter((x) => x !== NEW) }),
    { what: 'place', key: 'place', centre: at(NEW, 175), radius: 30, z: Z.mark },
  ];
}

/** An end of the join drawn in between front and back: the needle dives behind the near edge. */
export function endsInside(): Scene {
  const raised = edges({ joined: COLUMNS }).map((item) =>
    item.key.startsWith('near') ? { ...item, z: item.z + 44 } : item,
  );
  const needle = needleAt(at(176, 248), -64, 150, 50);
  return [
    ...raised,
    needle,
    {
      what: 'strand',
      key: 'end',
      yarn: 'join',
      z: 48,
      points: [at(150, 175), at(160, 110), at(196, 62), at(232, 84), at(235, 127)],
    },
    { what: 'arrow', key: 'arrow', points: [at(286, 60), at(272, 92), at(258, 122)], z: Z.mark },
  ];
}

/** The loop drawn long, the hook taken out. */
export function longLoop(): Scene {
  const [x, y] = head(266, 175);
  return [
    ...edges({ joined: COLUMNS.slice(0, 4) }),
    {
      what: 'strand',
      key: 'live',
      yarn: 'join',
      z: Z.over,
      points: [
        at(x - 2, y + 4),
        at(196, 120),
        at(170, 50),
        at(206, 14),
        at(240, 52),
        at(236, 120),
        at(x + 4, y - 4),
      ],
    },
    {
      what: 'strand',
      key: 'ball',
      yarn: 'join',
      z: Z.behind,
      points: [at(x, y), at(150, 120), at(60, 70), at(-20, 60)],
    },
    { what: 'arrow', key: 'arrow', points: [at(282, 128), at(284, 90), at(280, 44)], z: Z.mark },
  ];
}

/** The hook back in the loop, which is drawn as small as the others. */
export function shortLoop(): Scene {
  const live = head(266, 175);
  return [
    ...edges({ joined: COLUMNS.slice(0, 4) }),
    ...still({
      hook: rest(266, 128),
      work: [],
      loops: [outOf({ key: 'live', yarn: 'join', on: 64 }, live)],
      yarn: { name: 'join', path: [live, ...BALL] },
    }),
  ];
}

/** Both ends of the foundation under tape, the posts of each to the same side. */
export function taped(): Scene {
  const low = 196;
  const posts = [350, 290, 130, 70, 10].flatMap((x) => [
    ...treblePost({ key: `post${x}`, yarn: 'foundation', top: at(x, 76), foot: at(x + 8, low - 8), z: 16 }),
    ...vee({ key: `base${x}`, x, y: low, yarn: 'foundation', z: 22 }),
    ...vee({ key: `top${x}`, x, y: 70, yarn: 'foundation' }),
  ]);
  const tape = (key: string, x: number, tilt: number): Item => ({
    what: 'area',
    key,
    points: [at(x - 24, 40 + tilt), at(x + 24, 40 - tilt), at(x + 24, 232 - tilt), at(x - 24, 232 + tilt)],
    fill: 'tape',
    z: Z.near,
  });
  return [...posts, tape('tape-end', 308, 5), tape('tape-start', 112, -5)];
}

/** An end drawn through the stitches of the wrong side. */
export function weaving(yarn: 'foundation' | 'edging' | 'thread'): Scene {
  const top = 96;
  const over = (x: number): boolean => x === 230 || x === 110;
  const posts = [350, 290, 230, 170, 110, 50].flatMap((x) => [
    ...treblePost({
      key: `post${x}`,
      yarn: 'foundation',
      top: at(x, top + 4),
      foot: at(x + 4, 232),
      z: over(x) ? 60 : 16,
    }),
    ...vee({ key: `top${x}`, x, y: top, yarn: 'foundation', z: 62 }),
    ...vee({ key: `base${x}`, x, y: 240, yarn: 'foundation', z: 62 }),
  ]);
  const needle = needleAt(at(60, 166), 2, 130, 50);
  return [
    ...posts,
    needle,
    {
      what: 'strand',
      key: 'end',
      yarn,
      z: 52,
      points: [at(352, 108), at(330, 150), at(290, 168), at(230, 170), at(174, 171)],
    },
  ];
}

/** The base closed with one stitch from the last base chain to the first. */
export function closingBase(): Scene {
  const low = 190;
  const posts = [350, 290, 90, 30].flatMap((x) => [
    ...treblePost({ key: `post${x}`, yarn: 'foundation', top: at(x, 40), foot: at(x + 8, low - 8), z: 16 }),
    ...vee({ key: `base${x}`, x, y: low, yarn: 'foundation', z: 22 }),
    ...vee({ key: `top${x}`, x, y: 34, yarn: 'foundation' }),
  ]);
  const middle = [
    ...treblePost({ key: 'post210', yarn: 'foundation', top: at(210, 40), foot: at(214, low - 8), z: 16 }),
    ...treblePost({ key: 'post150', yarn: 'foundation', top: at(150, 40), foot: at(156, low - 8), z: 16 }),
    ...vee({ key: 'top150', x: 150, y: 34, yarn: 'foundation' }),
    ...vee({ key: 'top210', x: 210, y: 34, yarn: 'foundation' }),
    ...vee({ key: 'base150', x: 144, y: low, yarn: 'foundation', z: 22 }),
  ];
  const needle = needleAt(at(128, low + 46), -42, 120, 50);
  return [
    ...posts,
    ...middle,
    needle,
    {
      what: 'strand',
      key: 'stitch',
      yarn: 'foundation',
      z: 58,
      points: [at(264, low), at(236, low + 16), at(212, low + 6), at(200, low - 14), at(214, 178)],
    },
    {
      what: 'strand',
      key: 'end',
      yarn: 'foundation',
      z: 40,
      points: [at(180, low + 6), at(202, low + 10), at(206, 166)],
    },
  ];
}
