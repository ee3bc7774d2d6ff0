/**
 * From the panel to the cloth: cut, seam, and both finished sizes.
 *
 * Along every edge, from the inside out: the front is the panel and its last round; the back is the cloth to the
 * seam and its edging rounds. The strip lies face down, base chains on the cut edge, so the seam runs the
 * foundation's depth inside it.
 */
import { howItLies } from './lies.ts';
import { growPiece, lengthProblems, perimeter, readShape } from './shape.ts';
import type { ClothInput, ClothPlan, ClothResult, Note, Piece } from './types.ts';

/**
 * The cloth for a panel, every length in mm. Problems are at `panel…`, `depth`, `rule.allowance`, `frontEdge`,
 * `edging`, `pitch…` and `counts…`, all at once.
 */
export function cutCloth(input: ClothInput): ClothResult<ClothPlan> {
  const read = readShape(input.panel);
  const problems = [...(read.ok ? [] : read.problems), ...otherProblems(input)];
  if (!read.ok || problems.length > 0) return { ok: false, problems };
  const { piece: panel, notes } = read.value;
  const frontEdge = input.frontEdge ?? input.edging ?? 0;
  const edging = input.edging ?? input.frontEdge ?? 0;
  const allowance = allowanceOf(input, frontEdge, edging);
  const cut = growPiece(panel, allowance);
  const seam = cut && growPiece(cut, -input.depth);
  const finishedBack = seam && growPiece(seam, edging);
  const finishedFront = growPiece(panel, frontEdge);
  if (!cut || !seam || !finishedBack || !finishedFront)
    return { ok: false, problems: [{ at: 'depth', code: 'nothing-left', params: { depth: input.depth } }] };
  const lies = howItLies(input, { panel, cut, seam, back: finishedBack, front: finishedFront });
  const fittingAllowance = fitting(input, panel);
  return {
    ok: true,
    value: { panel, allowance, cut, seam, finishedBack, finishedFront, lies, fittingAllowance, notes },
  };
}

/** *exact* and *snug* are common practice, no source; the maker's own stands as it is. */
function allowanceOf({ rule, depth }: ClothInput, frontEdge: number, edging: number): number {
  if (typeof rule === 'object') return rule.allowance;
  const exact = frontEdge - edging + depth;
  return rule === 'exact' ? exact : exact - depth / 2;
}

function otherProblems(input: ClothInput): Note[] {
  const { depth, rule, frontEdge, edging, pitch = {}, counts } = input;
  const sides =
    input.panel.shape === 'round' ? 1 : input.panel.shape === 'rectangle' ? 4 : input.panel.sides.length;
  const given = (value: number | undefined, at: string, most: number): Note[] =>
    value === undefined ? [] : lengthProblems(value, at, at.startsWith('pitch') ? 0.1 : 0, most);
  const lists = counts ? Object.entries(counts) : [];
  return [
    ...lengthProblems(depth, 'depth', 1, 500),
    ...(typeof rule === 'object' ? lengthProblems(rule.allowance, 'rule.allowance', -500, 500) : []),
    ...given(frontEdge, 'frontEdge', 500),
    ...given(edging, 'edging', 500),
    ...given(pitch.front, 'pitch.front', 100),
    ...given(pitch.top, 'pitch.top', 100),
    ...given(pitch.base, 'pitch.base', 100),
    ...lists
      .filter(([, list]) => list.length !== sides)
      .map(([name, list]) => ({
        at: `counts.${name}`,
        code: 'sides-differ',
        params: { sides, counted: list.length },
      })),
  ];
}

/** By how much the panel must grow so that all the tops together are as long as the seam. */
function fitting({ pitch, counts, depth }: ClothInput, panel: Piece): number | null {
  if (!counts || !pitch?.top) return null;
  const wanted = counts.strip.reduce((sum, count) => sum + count, 0) * pitch.top;
  const lengthAt = (by: number): number | null => {
    const grown = growPiece(panel, by);
    return grown && perimeter(grown);
  };
  // The length of an edge grows in proportion to how far it is moved.
  const [here, further] = [lengthAt(0), lengthAt(1)];
  return here === null || further === null ? null : (wanted - here) / (further - here) + depth;
}
