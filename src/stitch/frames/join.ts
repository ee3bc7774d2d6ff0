/** The slip stitch of the join, move by move: front near, back beyond, four loops side by side. */
import { head, shortPost, vee } from '../fabric.ts';
import { caught, drawnThrough, type Frame, type MoveScenes, still } from '../frame.ts';
import { hookAt, Z } from '../loops.ts';
import { at, type Point } from '../point.ts';
import { type Item, type Scene, STITCH, type Strand } from '../scene.ts';
import { BALL, COLUMNS, FAR, LAST, NEW, outOf, rest } from './short.ts';

const NEAR = 198;
const BEYOND = 152;
const BETWEEN = (NEAR + BEYOND) / 2;

export type Edges = {
  /** Two loops of the new place are picked out: the inner ones, or by mistake the outer. */
  marked?: boolean | 'outer';
  /** Columns joined already. */
  joined?: readonly number[];
  /** Columns that are corner chains: nothing stands under them. */
  chains?: readonly number[];
};

/** The two edges as they lie together, seen from above. */
export function edges({ marked = false, joined = [], chains = [] }: Edges = {}): Item[] {
  const isOuter = marked === 'outer';
  const inner = (x: number): boolean => marked !== false && x === NEW;
  const posts = COLUMNS.filter((x) => !chains.includes(x));
  return [
    ...posts.flatMap((x) =>
      shortPost({ key: `near-post${x}`, yarn: 'front', top: at(x, NEAR + 8), foot: at(x + 2, 270), z: 12 }),
    ),
    ...COLUMNS.flatMap((x) =>
      vee({
        key: `near${x}`,
        x,
        y: NEAR,
        yarn: 'front',
        z: 20,
        frontOver: 22,
        ...(inner(x) && (isOuter ? { marked: 'front', frontOver: 62 } : { marked: 'back', z: 62 })),
      }),
    ),
    ...posts.flatMap((x) =>
      shortPost({
        key: `beyond-post${x}`,
        yarn: 'edging',
        top: at(x, BEYOND - 8),
        foot: at(x - 2, 80),
        z: 12,
      }),
    ),
    ...[...COLUMNS].reverse().flatMap((x) =>
      vee({
        key: `beyond${x}`,
        x,
        y: BEYOND,
        yarn: 'edging',
        z: 20,
        facing: 'away',
        ...(inner(x) &&
          (isOuter ? { marked: 'back', z: 62, frontOver: 20 } : { marked: 'front', frontOver: 62 })),
      }),
    ),
    ...joined.flatMap((x) => vee({ key: `joined${x}`, x, y: BETWEEN, yarn: 'join', z: 36 })),
  ];
}

/** Where a slip stitch goes: along a side, right after the yarn is attached, in a corner, in the last hole. */
export type SlipStitchAt = 'along' | 'first' | 'corner' | 'last-hole';

/** The yarn's end, hanging out at the place where it was attached. */
const end = (x: number): Strand => ({
  what: 'strand',
  key: 'end',
  yarn: 'join',
  z: Z.behind,
  round: true,
  points: [at(x - 14, 170), at(x + 10, 110), at(x + 40, 84), at(x + 46, 44)],
});

const before = COLUMNS.slice(0, 4);

/** By mistake: the outer two loops are taken, so that the seam lies on top. */
export function outerLoops(): Scene {
  const live: Point = head(LAST, BETWEEN);
  return still({
    hook: hookAt(at(140, 112), 46),
    work: edges({ joined: before, marked: 'outer' }),
    loops: [outOf({ key: 'live', yarn: 'join', on: 112, other: true }, live)],
    yarn: { name: 'join', path: [live, ...BALL] },
  });
}

/** By mistake: the first chain of the corner is passed over on the back, so that it stays open. */
export function chainPassedOver(): Scene {
  const live: Point = head(LAST + STITCH, BETWEEN);
  return [
    ...still({
      hook: hookAt(at(158, 132), 40),
      work: edges({ joined: COLUMNS.slice(0, 3), marked: true, chains: [LAST, NEW] }),
      loops: [outOf({ key: 'live', yarn: 'join', on: 100, other: true }, live)],
      yarn: { name: 'join', path: [live, ...BALL] },
    }),
    { what: 'place', key: 'place', centre: at(LAST, BETWEEN), radius: 28, z: Z.mark },
  ];
}

/** @param made corner chains joined already, where it goes into a corner */
export function slipStitchScenes(where: SlipStitchAt = 'along', made = 0): MoveScenes {
  const isFirst = where === 'first';
  const around: Edges = {
    joined: isFirst ? [] : where === 'last-hole' ? COLUMNS.filter((x) => x !== NEW) : before,
    chains: where !== 'corner' ? [] : made === 0 ? [NEW, NEW - STITCH] : [LAST, NEW],
  };
  const ends = isFirst ? [end(LAST)] : where === 'last-hole' ? [end(NEW)] : [];
  const live: Point = isFirst ? at(LAST - 4, BETWEEN) : head(LAST, BETWEEN);
  const start: Frame = {
    hook: rest(LAST, 128),
    work: [...edges(around), ...ends],
    loops: [outOf({ key: 'live', yarn: 'join', on: 64 }, live)],
    yarn: { name: 'join', path: [live, ...BALL] },
  };
  const inserted: Frame = {
    hook: hookAt(at(158, 132), 40),
    work: [...edges({ ...around, marked: true }), ...ends],
    loops: [outOf({ key: 'live', yarn: 'join', on: 100, other: true }, live)],
    yarn: { name: 'join', path: [live, ...BALL] },
  };
  const done: Frame = {
    hook: rest(NEW, 128),
    work: [...edges({ ...around, joined: [...(around.joined ?? []), NEW] }), ...ends],
    loops: [outOf({ key: 'live', yarn: 'join', on: 64 }, head(NEW, BETWEEN))],
    yarn: { name: 'join', path: [head(NEW, BETWEEN), ...BALL] },
  };
  return {
    start: still(start),
    moves: [
      [still(start), still(inserted)],
      [
        still(inserted),
        caught(inserted, { yarn: 'join', held: [live], away: [FAR] }),
        drawnThrough(
          inserted,
          { yarn: 'join', held: [live], away: [at(NEW, BETWEEN), at(110, 130), FAR] },
          70,
        ),
        drawnThrough(
          inserted,
          { yarn: 'join', held: [live], away: [at(NEW, BETWEEN), at(110, 130), FAR] },
          118,
        ),
        still(done),
      ],
    ],
  };
}
