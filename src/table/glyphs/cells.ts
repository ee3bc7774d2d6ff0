/**
 * A cell is one picture a mark can be: a glyph in a tone, made or still to come, near or far, with what
 * else is to be shown on it. A cell's key is a number, so that marks can be compared fast.
 */
import { Glyph, type GlyphCode, Look, type LookCode, Tone, type ToneCode } from '../draw-list.ts';
import { GLYPHS } from './glyphs.ts';
import { fill, type Layer, pen } from './layer.ts';
import { ellipse } from './strand.ts';

export type Detail = 'small' | 'full';

export type CellKey = number;

export type CellPlan = {
  glyph: GlyphCode;
  tone: ToneCode;
  look: LookCode;
  made: boolean;
  detail: Detail;
};

/** A plan with its codes as the columns of marks have them: plain numbers. */
export type CellFields = Omit<CellPlan, 'glyph' | 'tone' | 'look'> &
  Record<'glyph' | 'tone' | 'look', number>;

/** Packs a plan into a key: glyph 4 bits, tone 3, look 3, made 1, detail 1. */
export function cellKey({ glyph, tone, look, made, detail }: CellFields): CellKey {
  return (glyph << 8) | (tone << 5) | (look << 2) | (made ? 2 : 0) | (detail === 'full' ? 1 : 0);
}

/** Unpacks a key. */
export function cellPlan(key: CellKey): CellPlan {
  return {
    glyph: ((key >> 8) & 15) as GlyphCode,
    tone: ((key >> 5) & 7) as ToneCode,
    look: ((key >> 2) & 7) as LookCode,
    made: (key & 2) !== 0,
    detail: (key & 1) !== 0 ? 'full' : 'small',
  };
}

/**
 * How each look differs in shape, so that none hangs on colour: what the outline does, whether the inside
 * is filled, and what stands beside it. A test holds that no two are alike.
 */
export const LOOKS: Record<
  LookCode,
  { outline: 'single' | 'dashed' | 'double'; filled: boolean; beside: 'nothing' | 'cross' | 'ring' }
> = {
  [Look.plain]: { outline: 'single', filled: true, beside: 'nothing' },
  [Look.gap]: { outline: 'dashed', filled: false, beside: 'nothing' },
  [Look.surplus]: { outline: 'double', filled: true, beside: 'nothing' },
  [Look.mishap]: { outline: 'single', filled: true, beside: 'cross' },
  [Look.asked]: { outline: 'single', filled: true, beside: 'ring' },
};

const CROSS = { x: 0.3, y: -0.58, arm: 0.14 };
const crossPath =
  `M${CROSS.x - CROSS.arm} ${CROSS.y - CROSS.arm}L${CROSS.x + CROSS.arm} ${CROSS.y + CROSS.arm}` +
  `M${CROSS.x - CROSS.arm} ${CROSS.y + CROSS.arm}L${CROSS.x + CROSS.arm} ${CROSS.y - CROSS.arm}`;

const ringPath = ellipse(CROSS.x, CROSS.y, CROSS.arm, CROSS.arm);

/** The layers to paint for a cell, and the tone whose ink they take. */
export function cellLayers(plan: CellPlan): { layers: Layer[]; tone: ToneCode } {
  const look = LOOKS[plan.look];
  if (!look.filled) {
    const layers = GLYPHS[Glyph.hollow][plan.detail];
    return { layers, tone: Tone.gap };
  }
  const drawing = GLYPHS[plan.glyph];
  const ghost = plan.detail === 'full' ? drawing.ghost : drawing.ghostSmall;
  const layers = [...(plan.made ? drawing[plan.detail] : ghost)];
  if (look.outline === 'double') {
    // Wide ink, then paper over it, leaves a second line around the stitch.
    const rings = drawing.outline.map((d) => pen(d, 'ink', 0.3));
    const clear = drawing.outline.map((d): Layer => ({ ...pen(d, 'paper', 0.18), fill: 'paper' }));
    layers.unshift(...rings, ...clear);
  }
  if (look.beside !== 'nothing') layers.push(fill(ellipse(CROSS.x, CROSS.y, 0.25, 0.25), 'paper'));
  if (look.beside === 'cross') layers.push(pen(crossPath, 'gap', 0.1));
  if (look.beside === 'ring') layers.push(pen(ringPath, 'ink', 0.1));
  return { layers, tone: plan.tone };
}

/** Bounds of a cell in stitch widths: the glyph's own, widened by what its look adds. */
export function cellBounds(plan: CellPlan): readonly [number, number, number, number] {
  const look = LOOKS[plan.look];
  const [x0, y0, x1, y1] = GLYPHS[look.filled ? plan.glyph : Glyph.hollow].bounds;
  const grown = look.outline === 'double' ? 0.17 : 0;
  if (look.beside !== 'nothing') return [x0, Math.min(y0, -0.86), Math.max(x1, 0.58), y1];
  return [x0 - grown, y0 - grown, x1 + grown, y1 + grown];
}
