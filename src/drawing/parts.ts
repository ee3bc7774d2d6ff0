/** Parts of a scene from columns of numbers, and the fingerprint that tells unchanged ones. */
import type { Box, GlyphCode, LookCode, Marks, Part, Ribbon, ToneCode } from '../table/draw-list.ts';

export function makeMarks(count: number): Marks {
  return {
    count,
    x: new Float32Array(count),
    y: new Float32Array(count),
    angle: new Float32Array(count),
    scale: new Float32Array(count),
    glyph: new Uint8Array(count),
    tone: new Uint8Array(count),
    look: new Uint8Array(count),
  };
}

export type Mark = {
  x: number;
  y: number;
  angle: number;
  scale: number;
  glyph: GlyphCode;
  tone: ToneCode;
  look: LookCode;
};

export function putMark(marks: Marks, index: number, mark: Mark): void {
  marks.x[index] = mark.x;
  marks.y[index] = mark.y;
  marks.angle[index] = mark.angle;
  marks.scale[index] = mark.scale;
  marks.glyph[index] = mark.glyph;
  marks.tone[index] = mark.tone;
  marks.look[index] = mark.look;
}

/** Marks reach this far from their place, in stitches: the longest is a treble. */
const REACH = 1.6;

export function boundsOf(marks: Marks, ribbons: readonly Ribbon[]): Box {
  const box = { x0: Infinity, y0: Infinity, x1: -Infinity, y1: -Infinity };
  const take = (x: number, y: number) => {
    if (x < box.x0) box.x0 = x;
    if (x > box.x1) box.x1 = x;
    if (y < box.y0) box.y0 = y;
    if (y > box.y1) box.y1 = y;
  };
  for (let i = 0; i < marks.count; i++) take(marks.x[i]!, marks.y[i]!);
  for (const { points } of ribbons) {
    for (let i = 0; i < points.length; i += 2) take(points[i]!, points[i + 1]!);
  }
  if (box.x0 > box.x1) return { x0: 0, y0: 0, x1: 0, y1: 0 };
  return { x0: box.x0 - REACH, y0: box.y0 - REACH, x1: box.x1 + REACH, y1: box.y1 + REACH };
}

/** FNV-1a over whole words: equal pictures get equal revisions, and no counter is kept anywhere. */
function fingerprint(hash: number, bytes: ArrayBufferView): number {
  const words = bytes.byteLength >> 2;
  const view = new Uint32Array(bytes.buffer, bytes.byteOffset, words);
  let mixed = hash;
  for (let i = 0; i < words; i++) mixed = Math.imul(mixed ^ view[i]!, 0x01000193);
  const rest = new Uint8Array(bytes.buffer, bytes.byteOffset + 4 * words, bytes.byteLength - 4 * words);
  for (const byte of rest) mixed = Math.imul(mixed ^ byte, 0x01000193);
  return mixed >>> 0;
}

function revisionOf(marks: Marks, ribbons: readonly Ribbon[], mirrored: boolean): number {
  let hash = fingerprint(0x811c9dc5 + (mirrored ? 1 : 0), Uint32Array.of(marks.count, ribbons.length));
  for (const column of [marks.x, marks.y, marks.angle, marks.scale, marks.glyph, marks.tone, marks.look]) {
    hash = fingerprint(hash, column);
  }
  for (const ribbon of ribbons) {
    hash = fingerprint(hash, ribbon.points);
    hash = fingerprint(hash, Float32Array.of(ribbon.width, ribbon.tone, ribbon.firstMark, ribbon.markCount));
  }
  return hash;
}

/** Everything about a part that does not change while the walk goes on. */
export type Fixed = Pick<Part, 'key' | 'marks' | 'ribbons' | 'layer' | 'solid'> &
  Partial<Pick<Part, 'mirrored' | 'minPx' | 'maxPx'>>;

/** A part with all of its marks still to come. */
export function makePart(fixed: Fixed): Part {
  const { marks, ribbons, mirrored } = fixed;
  return {
    ...fixed,
    revision: revisionOf(marks, ribbons, mirrored ?? false),
    bounds: boundsOf(marks, ribbons),
    made: 0,
  };
}

/** Marks a part stands for, drawn one by one or as a ribbon. */
export function sizeOf(part: Pick<Part, 'marks' | 'ribbons'>): number {
  return part.ribbons.reduce(
    (most, ribbon) => Math.max(most, ribbon.firstMark + ribbon.markCount),
    part.marks.count,
  );
}
