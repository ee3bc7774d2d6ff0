/**
 * The vocabulary of cloth. Lengths are in mm, straight lines between corners; sides are told in the front's order.
 * Nothing here is rounded: rounding is for the eye, and is said where it is done.
 */

/** Something to say about what was measured or what came out: a code and its numbers, no sentence. */
export type Note = { at: string; code: string; params: Readonly<Record<string, number | string>> };

export type ClothResult<T> = { ok: true; value: T } | { ok: false; problems: Note[] };

/** Diagonals of a polygon run from its first corner (the end of its first side) to each corner but its neighbours. */
export type ClothShape =
  | { shape: 'rectangle'; width: number; height: number; diagonals?: [number, number] }
  | { shape: 'polygon'; sides: number[]; diagonals?: number[] }
  | { shape: 'round'; diameter: number };

export type Point = { x: number; y: number };

/** A shape that was worked out. A polygon's corner i ends its side i. */
export type Piece =
  | { shape: 'rectangle'; width: number; height: number }
  | { shape: 'polygon'; sides: number[]; corners: Point[] }
  | { shape: 'round'; diameter: number };

export type CutRule = 'snug' | 'exact' | { allowance: number };

/** Stitches of each side, in the front's order: the front's, the strip's foundation, and its last edging round. */
export type SideCounts = { front: number[]; strip: number[]; edging: number[] };

export type ClothInput = {
  /** The panel inside its last round. */
  panel: ClothShape;
  /** Of the foundation round. */
  depth: number;
  rule: CutRule;
  /** Depth of the front's last round, and of all edging rounds together. One of them given stands for both. */
  frontEdge?: number;
  edging?: number;
  /** mm a stitch, measured on a stretch. */
  pitch?: { front?: number; top?: number; base?: number };
  counts?: SideCounts;
  /** How far each length of the panel may be off, either way. */
  give?: number;
};

/** One length laid along another. Positive is slack, negative is stretch. */
export type Comparison = {
  what: 'top-on-seam' | 'base-on-cut' | 'edging-on-back' | 'edging-on-front';
  length: number;
  along: number;
  percent: number;
  stitches: number;
  /** Percent either way, from how far the panel's lengths may be off. */
  give: number;
  lies: 'fits' | 'slack' | 'stretched';
  /** What would make it fit before anything is cut; absent where it fits. */
  mend?: { pitch: number; count: number };
};

/** How the crochet will lie along one side. */
export type SideLies = {
  side: number;
  seam: number;
  cut: number;
  back: number;
  front: number;
  /** By count and pitch, where both are known. */
  top: number | null;
  base: number | null;
  edging: number | null;
  frontStitches: number | null;
  comparisons: Comparison[];
};

export type ClothPlan = {
  panel: Piece;
  /** From the panel's edge to the cut edge. */
  allowance: number;
  cut: Piece;
  seam: Piece;
  finishedBack: Piece;
  finishedFront: Piece;
  lies: SideLies[];
  /** The allowance with which the strip's tops would lie along the seam as long as it, where that can be said. */
  fittingAllowance: number | null;
  /** What was taken for granted, and what should be looked at. */
  notes: Note[];
};
