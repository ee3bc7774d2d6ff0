/**
 * The back turned over onto the front, like the page of a book: from the pieces laid apart to wrong sides together.
 *
 * Rule: the pieces lie apart on either side of the line x = 0. Whatever lies to the right of it turns about it.
 */
import type { Box, Marks, Part, SceneView } from '../../table/draw-list.ts';
import { makePart } from '../parts.ts';

/** A view of the pieces apart with the back on its way. `turned`: 0 as laid apart, 1 lying on the front. */
export function turnBack(view: SceneView, turned: number): SceneView {
  const across = Math.cos(Math.PI * turned);
  const isOnFront = ({ x }: { x: number }): boolean => x < 0;
  return {
    ...view,
    parts: view.parts.map((part) => (part.bounds.x0 < 0 ? part : turnPart(part, across))),
    // Words cannot be turned over: the back's are told where it lies still.
    labels: turned === 0 ? view.labels : view.labels.filter(isOnFront),
    signs: turned === 0 ? view.signs : [],
    bounds: between(view.bounds, { ...view.bounds, x1: 0 }, turned),
  };
}

function turnPart(part: Part, across: number): Part {
  const { marks, ribbons, mirrored = false, made } = part;
  const turned = makePart({
    ...part,
    marks: turnMarks(marks, across),
    ribbons: ribbons.map((ribbon) => ({
      ...ribbon,
      points: ribbon.points.map((value, i) => (i % 2 === 0 ? value * across : value)),
    })),
    mirrored: across < 0 ? !mirrored : mirrored,
  });
  return { ...turned, made };
}

const turnMarks = (marks: Marks, across: number): Marks => ({
  ...marks,
  x: marks.x.map((x) => x * across),
  angle: marks.angle.map((angle) => Math.atan2(Math.sin(angle), Math.cos(angle) * across)),
});

function between(from: Box, to: Box, share: number): Box {
  const at = (a: number, b: number): number => a + (b - a) * share;
  return { x0: at(from.x0, to.x0), y0: at(from.y0, to.y0), x1: at(from.x1, to.x1), y1: at(from.y1, to.y1) };
}
