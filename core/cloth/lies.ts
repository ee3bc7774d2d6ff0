/**
 * How the crochet will lie: a strip's length, by count and pitch, beside the edge it is laid along.
 *
 * The band is our own judgement, with one published mark: 10 % is a textbook's upper example for easing cloth in
 * (11 in into 10 in). No limit for stretching a crochet edge was found, so it is told early and nothing is forbidden.
 */
import { pieceSides } from './shape.ts';
import type { ClothInput, Comparison, Piece, SideLies } from './types.ts';

/** Percent. */
export const lieBand = { slack: 10, stretch: 3 } as const;

export type Pieces = { panel: Piece; cut: Piece; seam: Piece; back: Piece; front: Piece };

export function howItLies(input: ClothInput, pieces: Pieces): SideLies[] {
  const { pitch = {}, counts, give = 0 } = input;
  const top = pitch.top;
  const base = pitch.base ?? top;
  const [cuts, seams, backs, fronts, panels] = [
    pieces.cut,
    pieces.seam,
    pieces.back,
    pieces.front,
    pieces.panel,
  ].map(pieceSides) as [number[], number[], number[], number[], number[]];
  return panels.map((panel, side) => {
    const strip = counts?.strip[side];
    const edgingCount = counts?.edging[side];
    const frontCount = counts?.front[side];
    const times = (count?: number, by?: number): number | null =>
      count === undefined || by === undefined ? null : count * by;
    const lies = {
      side,
      seam: seams[side] as number,
      cut: cuts[side] as number,
      back: backs[side] as number,
      front: fronts[side] as number,
      top: times(strip, top),
      base: times(strip, base),
      edging: times(edgingCount, top),
      frontStitches: times(frontCount, pitch.front),
    };
    // A panel's length is off by the same amount wherever the edge has been moved to.
    const off = (give / panel) * 100;
    const along = (what: Comparison['what'], length: number | null, edge: number | null, each?: number) =>
      length === null || edge === null || each === undefined
        ? []
        : [compare({ what, length, along: edge, give: what === 'edging-on-front' ? 0 : off }, each)];
    return {
      ...lies,
      comparisons: [
        ...along('top-on-seam', lies.top, lies.seam, top),
        ...along('base-on-cut', lies.base, lies.cut, base),
        ...along('edging-on-back', lies.edging, lies.back, top),
        ...along('edging-on-front', lies.edging, lies.frontStitches, top),
      ],
    };
  });
}

/** `pitch`: mm a stitch of what is laid along. */
function compare(
  measured: Pick<Comparison, 'what' | 'length' | 'along' | 'give'>,
  pitch: number,
): Comparison {
  const { length, along } = measured;
  const percent = ((length - along) / along) * 100;
  const lies = percent > lieBand.slack ? 'slack' : percent < -lieBand.stretch ? 'stretched' : 'fits';
  return {
    ...measured,
    percent,
    stitches: (length - along) / pitch,
    lies,
    ...(lies === 'fits'
      ? {}
      : { mend: { pitch: (pitch * along) / length, count: Math.round(along / pitch) } }),
  };
}
