/**
 * Every glyph, once, as path data in stitch widths: the texture, the flat painter and the printed picture
 * all draw from here. Forward is +x, the outer side is -y, the near loop of a stitch lies towards +y.
 *
 * Three drawings of each: `full` with yarn and folds, `small` for a few pixels with nothing that would
 * blur, and `ghost`, the bare outline of a stitch that is still to come.
 */
import { Glyph, type GlyphCode } from '../draw-list.ts';
import { fill, type Layer, OUTLINE, pen } from './layer.ts';
import {
  beside,
  ellipse,
  line,
  outlineOf,
  roundBox,
  type Spine,
  type Strand,
  smooth,
  type Thickness,
  within,
} from './strand.ts';
import { yarn } from './yarn.ts';

export type GlyphDrawing = {
  full: Layer[];
  small: Layer[];
  ghost: Layer[];
  ghostSmall: Layer[];
  /** Silhouette, for the doubled outline of a surplus. */
  outline: string[];
  /** Middle to edge in x and y, and how far beyond the middle it begins: bounds `[x0, y0, x1, y1]`. */
  bounds: readonly [number, number, number, number];
  /** World length at which `scale` leaves the drawing unstretched; absent where scale is a size. */
  length?: number;
};

const SMALL_OUTLINE = 0.06;
const GHOST_OUTLINE = 0.055;
/** At a few px a stitch anything thinner would fade away. */
const SMALL_GHOST = 0.12;

// --- The stitch seen from above -------------------------------------------------------------------

/** A plump teardrop: slender where it comes up, thickest past the middle, rounded where it dives under. */
const teardrop: Thickness = (share) =>
  0.03 + 0.112 * Math.sin(Math.PI * Math.min(1, share * 0.8 + 0.02)) ** 1.15;

// Two loops leave one point, lean apart and forward, and go in behind the point of the next stitch, which
// is painted over their ends: so a row of stitches is a plait and not a row of signs.
const FAR_LOOP: Strand = {
  spine: [
    [-0.52, -0.025],
    [-0.2, -0.06],
    [0.1, -0.345],
    [0.56, -0.225],
  ],
  thickness: teardrop,
};
const NEAR_LOOP = mirror(FAR_LOOP);

const loops = [outlineOf(FAR_LOOP), outlineOf(NEAR_LOOP)];

/** Around both loops, without the air between them. */
const VEE_HULL = smooth(
  [
    ...[0, 0.15, 0.35, 0.55, 0.75, 0.92].map((share) => beside(FAR_LOOP, share, -1)),
    [0.67, -0.22],
    [0.67, 0.22],
    ...[0.92, 0.75, 0.55, 0.35, 0.15, 0].map((share) => beside(NEAR_LOOP, share, 1)),
  ],
  true,
);

const veeFull: Layer[] = [
  ...yarn(FAR_LOOP, { body: 'far', plies: 6, lit: -1 }),
  ...yarn(NEAR_LOOP, { body: 'near', plies: 6, lit: -1 }),
];

// At a few pixels a plait turns to porridge: two leaves with air between them still read as a stitch.
const leaf: Thickness = (share) => 0.035 + 0.1 * Math.sin(Math.PI * share ** 0.85);
const FAR_LEAF: Strand = {
  spine: [
    [-0.46, -0.05],
    [-0.2, -0.09],
    [0.1, -0.21],
    [0.36, -0.27],
  ],
  thickness: leaf,
};
const leaves = [outlineOf(FAR_LEAF), outlineOf(mirror(FAR_LEAF))];
const veeSmall: Layer[] = [
  fill(leaves[0]!, 'far'),
  fill(leaves[1]!, 'near'),
  ...leaves.map((d) => pen(d, 'line', SMALL_OUTLINE)),
];

/** The same strand on the other side of the braid. */
function mirror({ spine: [a, b, c, d], thickness }: Strand): Strand {
  const over = ([x, y]: Spine[0]): Spine[0] => [x, -y];
  return { spine: [over(a), over(b), over(c), over(d)], thickness };
}

/** The outline alone, on a pale ground. */
const ghostOf = (paths: readonly string[], width = GHOST_OUTLINE): Layer[] =>
  paths.flatMap((d) => [fill(d, 'pale'), pen(d, 'ghost', width)]);

const vee: GlyphDrawing = {
  full: veeFull,
  small: veeSmall,
  ghost: ghostOf(loops),
  ghostSmall: ghostOf(leaves, SMALL_GHOST),
  outline: [VEE_HULL],
  bounds: [-0.62, -0.46, 0.74, 0.46],
};

// --- A chain ---------------------------------------------------------------------------------------

const RING = { rx: 0.36, ry: 0.19 };
const ringWidth: Thickness = () => 0.092;
/** A quarter of an ellipse as a cubic curve; 0.5523 is the usual handle length. */
const quarter = (sx: number, sy: number, turned: boolean): Strand => {
  const { rx, ry } = RING;
  const k = 0.5523;
  const curve: Spine = [
    [-rx * sx, 0],
    [-rx * sx, -ry * sy * k],
    [-rx * sx * k, -ry * sy],
    [0, -ry * sy],
  ];
  const spine: Spine = turned ? [curve[3], curve[2], curve[1], curve[0]] : curve;
  return { spine, thickness: ringWidth };
};
const ringPath = (grow: number): string =>
  ellipse(0, 0, RING.rx + grow, RING.ry + grow) + ellipse(0, 0, RING.rx - grow, RING.ry - grow);
const bare = { plies: 3, from: 0.05, fold: false, outline: false } as const;

const oval: GlyphDrawing = {
  full: [
    ...yarn(quarter(1, 1, false), { ...bare, body: 'far', lit: -1 }),
    ...yarn(quarter(-1, 1, true), { ...bare, body: 'far', lit: -1 }),
    ...yarn(quarter(1, -1, false), { ...bare, body: 'near', lit: -1 }),
    ...yarn(quarter(-1, -1, true), { ...bare, body: 'near', lit: -1 }),
    pen(ringPath(0.092), 'line', OUTLINE),
  ],
  small: [{ ...fill(ringPath(0.085), 'body'), evenOdd: true }, pen(ringPath(0.085), 'line', SMALL_OUTLINE)],
  ghost: [{ ...fill(ringPath(0.085), 'pale'), evenOdd: true }, pen(ringPath(0.085), 'ghost', GHOST_OUTLINE)],
  ghostSmall: [pen(ringPath(0), 'ghost', SMALL_GHOST)],
  outline: [ellipse(0, 0, RING.rx + 0.092, RING.ry + 0.092)],
  bounds: [-0.52, -0.36, 0.52, 0.36],
};

// --- A treble on its base chain ---------------------------------------------------------------------

/** Length at which a post is drawn; `scale` stretches it. */
const POST_LENGTH = 1.5;

const legWidth: Thickness = (share) => 0.098 - 0.022 * share;
const LEFT_LEG: Strand = {
  spine: [
    [-0.085, 0.04],
    [-0.13, 0.5],
    [0.0, 0.82],
    [-0.05, 1.34],
  ],
  thickness: legWidth,
};
const RIGHT_LEG: Strand = {
  spine: [
    [0.085, 0.04],
    [0.13, 0.5],
    [0.01, 0.82],
    [0.06, 1.34],
  ],
  thickness: legWidth,
};
const WRAP: Strand = {
  spine: [
    [-0.17, 0.66],
    [-0.06, 0.66],
    [0.06, 0.5],
    [0.18, 0.48],
  ],
  thickness: (share) => 0.04 + 0.04 * Math.sin(Math.PI * share),
};
const FOOT = ellipse(0, 1.36, 0.3, 0.13);
const FOOT_RING = FOOT + ellipse(0, 1.36, 0.17, 0.045);
const COLUMN = outlineOf({
  spine: [
    [0, 0.06],
    [0, 0.5],
    [0, 0.9],
    [0, 1.3],
  ],
  thickness: (share) => 0.185 - 0.045 * share,
});

const post: GlyphDrawing = {
  full: [
    { ...fill(FOOT_RING, 'near'), evenOdd: true },
    fill(ellipse(0, 1.36, 0.17, 0.045), 'fold', 0.55),
    pen(FOOT, 'line', OUTLINE),
    ...yarn(LEFT_LEG, { body: 'body', plies: 6, from: 0.04, lit: -1, fold: false }),
    ...yarn(RIGHT_LEG, { body: 'near', plies: 6, from: 0.04, lit: -1, fold: false }),
    ...yarn(WRAP, { body: 'far', plies: 3, from: 0.05, lit: -1, fold: false }),
  ],
  small: [fill(COLUMN, 'body'), pen(COLUMN, 'line', SMALL_OUTLINE)],
  ghost: ghostOf([FOOT, COLUMN]),
  ghostSmall: ghostOf([COLUMN], 0.1),
  outline: [COLUMN],
  bounds: [-0.38, -0.1, 0.38, 1.58],
  length: POST_LENGTH,
};

// --- Signs of the join and of the chart --------------------------------------------------------------

const BAR = line(0, 0.07, 0, 0.93);
const bar: GlyphDrawing = {
  full: [pen(BAR, 'body', 0.115)],
  small: [pen(BAR, 'body', 0.15)],
  ghost: [{ ...pen(BAR, 'ghost', 0.09), dash: [0.001, 0.2] }],
  ghostSmall: [{ ...pen(BAR, 'ghost', 0.16), dash: [0.001, 0.38] }],
  outline: [BAR],
  bounds: [-0.16, -0.06, 0.16, 1.06],
  length: 1,
};

const DOT = ellipse(0, 0, 0.22, 0.22);
const dot: GlyphDrawing = {
  full: [fill(DOT, 'body'), pen(DOT, 'line', OUTLINE)],
  small: [fill(DOT, 'line')],
  ghost: ghostOf([DOT]),
  ghostSmall: ghostOf([DOT], SMALL_GHOST),
  outline: [DOT],
  bounds: [-0.34, -0.34, 0.34, 0.34],
};

const strokes = (paths: readonly string[], width: number, bounds: GlyphDrawing['bounds']): GlyphDrawing => ({
  ghostSmall: paths.map((d) => pen(d, 'ghost', width)),
  full: [
    ...paths.map((d) => pen(d, 'line', width + 0.05)),
    ...paths.map((d) => pen(d, 'body', width - 0.02)),
  ],
  small: paths.map((d) => pen(d, 'line', width + 0.02)),
  ghost: [
    ...paths.map((d) => pen(d, 'ghost', width + 0.04)),
    ...paths.map((d) => pen(d, 'pale', width - 0.05)),
  ],
  outline: [...paths],
  bounds,
});

const plus = strokes([line(-0.3, 0, 0.3, 0), line(0, -0.3, 0, 0.3)], 0.15, [-0.5, -0.5, 0.5, 0.5]);
const tee = strokes(
  [line(-0.26, -0.55, 0.26, -0.55), line(0, -0.55, 0, 0.55), line(-0.2, 0.12, 0.2, -0.12)],
  0.13,
  [-0.46, -0.75, 0.46, 0.75],
);

/** A place with no partner: the room of a stitch with nothing in it but paper. */
const ROOM = roundBox(0.82, 0.66, 0.26);
const hollow: GlyphDrawing = {
  full: [fill(ROOM, 'paper'), { ...pen(ROOM, 'body', 0.085), dash: [0.15, 0.155] }],
  small: [fill(ROOM, 'paper'), { ...pen(ROOM, 'body', 0.13), dash: [0.2, 0.27] }],
  ghost: [{ ...pen(ROOM, 'body', 0.085), dash: [0.15, 0.155] }],
  ghostSmall: [{ ...pen(ROOM, 'body', 0.13), dash: [0.2, 0.27] }],
  outline: [ROOM],
  bounds: [-0.56, -0.48, 0.56, 0.48],
};

/** The closing's own stitch: made with a needle, so its thread shows along both loops and hangs out behind. */
const THREAD = [within(NEAR_LOOP, [0.08, 0], [0.9, 0]), within(FAR_LOOP, [0.08, 0], [0.9, 0])];
const TAIL = 'M-0.5 0.02C-0.62 0.16 -0.44 0.34 -0.56 0.5';
const sewn = (role: 'paper' | 'ghost', width: number): Layer[] =>
  THREAD.map((d) => ({ ...pen(d, role, width), dash: [0.085, 0.1] }));
const closing: GlyphDrawing = {
  full: [pen(TAIL, 'line', 0.07), ...veeFull, ...sewn('paper', 0.055)],
  small: [pen(TAIL, 'line', 0.1), ...veeSmall],
  ghost: [pen(TAIL, 'ghost', 0.06), ...vee.ghost, ...sewn('ghost', 0.045)],
  ghostSmall: [pen(TAIL, 'ghost', 0.1), ...ghostOf(leaves, SMALL_GHOST)],
  outline: [VEE_HULL],
  bounds: [-0.72, -0.46, 0.74, 0.58],
};

/** A corner of one stitch: the stitch under a small roof. */
const ROOF = 'M-0.34 -0.44L0 -0.66L0.34 -0.44';
const corner: GlyphDrawing = {
  full: [...veeFull, pen(ROOF, 'line', 0.09)],
  small: [...veeSmall, pen(ROOF, 'line', 0.12)],
  ghost: [...vee.ghost, pen(ROOF, 'ghost', 0.08)],
  ghostSmall: [...vee.ghostSmall, pen(ROOF, 'ghost', 0.12)],
  outline: [VEE_HULL],
  bounds: [-0.62, -0.8, 0.74, 0.46],
};

const TICK = line(0, -0.5, 0, 0.5);
const tick: GlyphDrawing = {
  full: [pen(TICK, 'line', 0.09)],
  small: [pen(TICK, 'line', 0.2)],
  ghost: [pen(TICK, 'ghost', 0.09)],
  ghostSmall: [pen(TICK, 'ghost', 0.2)],
  outline: [TICK],
  bounds: [-0.2, -0.62, 0.2, 0.62],
  length: 1,
};

/** The drawings by glyph code. */
export const GLYPHS: Record<GlyphCode, GlyphDrawing> = {
  [Glyph.vee]: vee,
  [Glyph.oval]: oval,
  [Glyph.post]: post,
  [Glyph.bar]: bar,
  [Glyph.dot]: dot,
  [Glyph.plus]: plus,
  [Glyph.tee]: tee,
  [Glyph.hollow]: hollow,
  [Glyph.closing]: closing,
  [Glyph.corner]: corner,
  [Glyph.tick]: tick,
};
