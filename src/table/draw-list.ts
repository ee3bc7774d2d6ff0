/**
 * The draw list: plain data that the table draws without knowing what it means.
 *
 * A scene has views (the whole panel, the close-up), a view has parts, a part has marks in columns.
 * World unit: 1 = the width of one stitch. y points down, angles are radians clockwise from +x;
 * a glyph's forward direction is +x, its outer side is -y.
 *
 * Nothing is drawn twice for a step: a part's geometry is built once (same `key` and `revision`:
 * unchanged), and `made` says how many of its marks, from the first, exist already. The rest are
 * drawn as still to come. Moving one step changes `made` of a part or two and the frame.
 */
export type Box = { x0: number; y0: number; x1: number; y1: number };

/** Glyph codes. Drawn by our own hand, after the trade's chart symbols. */
export const Glyph = {
  vee: 0, // a stitch seen from above: two loops
  oval: 1, // a chain
  post: 2, // a treble standing on its base chain; outer end at the origin, grows to +y
  bar: 3, // a joined pair: from the origin to +y, length = `scale`
  dot: 4, // a slip stitch
  plus: 5, // a double crochet on a chart
  tee: 6, // a treble on a chart
  hollow: 7, // a place with no partner: dashed outline
  closing: 8, // a needle-made stitch: a vee with the needle's thread
  corner: 9, // a corner made of one stitch
  tick: 10, // plain mark across a ribbon
} as const;
export type GlyphCode = (typeof Glyph)[keyof typeof Glyph];

/** Colour slots, resolved by the theme table; the person's yarns fill the first three. */
export const Tone = {
  front: 0,
  edging: 1,
  foundation: 2,
  ink: 3,
  muted: 4,
  gap: 5,
  paper: 6,
  marker: 7,
} as const;
export type ToneCode = (typeof Tone)[keyof typeof Tone];

/** What else is to be shown on a mark, besides its shape. */
export const Look = {
  plain: 0,
  gap: 1, // hollow, dashed, tone gap
  surplus: 2, // doubled outline, stands proud (the bridge moves it outwards)
  mishap: 3, // where a hand did otherwise: small cross beside it
  asked: 4, // where it is to be worked otherwise than first planned: small ring beside it
} as const;
export type LookCode = (typeof Look)[keyof typeof Look];

export type Marks = {
  count: number;
  x: Float32Array;
  y: Float32Array;
  angle: Float32Array;
  /**
   * Post, bar and tick: length in world units (a treble is about 1.5; a tick is centred on its place).
   * Every other glyph: size factor, 1 = one stitch wide, and its place is its middle.
   */
  scale: Float32Array;
  glyph: Uint8Array;
  tone: Uint8Array;
  look: Uint8Array;
};

/** A band along a path, drawn in place of marks that would be too small to see. */
export type Ribbon = {
  /** x, y, x, y … in world units. */
  points: Float32Array;
  width: number;
  tone: ToneCode;
  /** Marks of this part that the ribbon stands for, so that `made` can cut it. */
  firstMark: number;
  markCount: number;
};

export type Part = {
  key: string;
  /** Same key and revision = same geometry: the table keeps what it has. */
  revision: number;
  bounds: Box;
  marks: Marks;
  ribbons: Ribbon[];
  /** How many marks, from the first, are made; the rest are still to come. */
  made: number;
  /** Paint order, low first. */
  layer: number;
  /** Can be pointed at. */
  solid: boolean;
  /** Glyphs are drawn mirrored: near and far loop change places (y becomes -y before `angle` turns it). */
  mirrored?: boolean;
  /** Shown only while one stitch is at least / at most so many CSS px wide. */
  minPx?: number;
  maxPx?: number;
};

/** Words on the drawing. Always upright, never mirrored. */
export type Label = {
  key: string;
  x: number;
  y: number;
  text: string;
  /** CSS px, independent of zoom. */
  px: number;
  tone: ToneCode;
  bold?: boolean;
  align: 'left' | 'centre' | 'right';
  /** Moved from its place by so many CSS px, whatever the zoom. */
  dx?: number;
  dy?: number;
  /** Stands at the left or right edge of its view, whatever its `x`. */
  pin?: 'left' | 'right';
  /** Drawn on a plate of paper with an outline of this tone. */
  plate?: ToneCode;
  /** Shown only while one stitch is at least / at most so many CSS px wide. */
  minPx?: number;
  maxPx?: number;
};

/** Widths of a letter as shares of its height, on the generous side. */
const LETTER = { regular: 0.53, bold: 0.57 };

/** How far words reach from their place, in CSS px. */
export function reachOf(label: Label): { left: number; right: number; up: number; down: number } {
  const room = label.plate === undefined ? { x: 2, y: 0 } : { x: label.px * 0.5 + 2, y: label.px * 0.28 + 2 };
  const width = label.text.length * label.px * (label.bold ? LETTER.bold : LETTER.regular);
  const before = label.align === 'left' ? 0 : label.align === 'right' ? width : width / 2;
  const [dx, dy] = [label.dx ?? 0, label.dy ?? 0];
  const half = label.px * 0.55 + room.y;
  return { left: dx - before - room.x, right: dx + width - before + room.x, up: dy - half, down: dy + half };
}

/**
 * Lines that are no marks. Few of them.
 * frame: `x`, `y` its middle. ring: `px` its radius in CSS px; an arrow leaves it along the angle `towards`. band: a line `px` CSS px thick. ruler: a line with end strokes and its text
 * in the middle. flag: stands on `x`, `y` and flies to the outer side. window: closed outline.
 * arrow: its middle, pointing along `angle`.
 */
export type Sign = { minPx?: number; maxPx?: number } & (
  | { kind: 'frame'; key: string; x: number; y: number; w: number; h: number; angle: number; tone: ToneCode }
  | {
      kind: 'ring';
      key: string;
      x: number;
      y: number;
      px: number;
      tone: ToneCode;
      strong?: boolean;
      towards?: number;
    }
  | { kind: 'band'; key: string; points: Float32Array; px: number; tone: ToneCode }
  | { kind: 'ruler'; key: string; points: Float32Array; tone: ToneCode; text: string }
  | { kind: 'flag'; key: string; x: number; y: number; angle: number; text: string; tone: ToneCode }
  | { kind: 'window'; key: string; points: Float32Array; tone: ToneCode }
  | { kind: 'arrow'; key: string; x: number; y: number; angle: number; tone: ToneCode }
);

export type SceneView = {
  id: 'whole' | 'close';
  /** What `fit` shows, with all words that show then. */
  bounds: Box;
  /** Where the view looks when it is not being moved by hand: centre in world units. */
  centre?: { x: number; y: number };
  /** CSS px per world unit that the view asks for; fit to `bounds` where absent. */
  px?: number;
  parts: Part[];
  labels: Label[];
  signs: Sign[];
};

export type Scene = { views: SceneView[] };

/** A place on the drawing, named by data. */
export type Spot = { view: 'whole' | 'close'; part: string; index: number };
