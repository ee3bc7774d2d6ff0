/** A panel as a small drawing: the outline of its front as it was counted, and the back's inside it. */
import { type SVGTemplateResult, svg } from 'lit-html';
import { type Corner, readEdge } from '../../core/index.ts';
import { outline } from '../drawing/whole/shape.ts';
import { readFront } from '../input/recipe.ts';
import type { Hand, Project } from '../state/snapshot.ts';

const size = 64;
const room = 5;
/** Where a number cannot be read just now, the shape is a regular one. */
const regular = 40;

type Drawn = { hand: Hand; picture: SVGTemplateResult };
const known = new WeakMap<Project, Drawn>();

/** @returns an `svg` of 64 by 64, decoration: what it shows is said beside it */
export function smallDrawing(project: Project, hand: Hand): SVGTemplateResult {
  const before = known.get(project);
  if (before?.hand === hand) return before.picture;
  const picture = draw(project, hand);
  known.set(project, { hand, picture });
  return picture;
}

function draw(project: Project, hand: Hand): SVGTemplateResult {
  const edge = readEdge(readFront({ project, problems: [] }));
  const corner: Corner = { made: 'chain', size: 2 };
  const count = project.sideCount;
  const shape = edge.ok
    ? outline(edge.value.sides, edge.value.corners, hand)
    : outline(new Array(Math.max(1, count)).fill(regular), new Array(count).fill(corner), hand);
  const { x0, y0, x1, y1 } = shape.bounds;
  const scale = (size - 2 * room) / Math.max(x1 - x0, y1 - y0, 1e-9);
  const at = (value: number, from: number, to: number, by: number): string =>
    ((value - (from + to) / 2) * scale * by + size / 2).toFixed(1);
  const path = (by: number): string => {
    const points: string[] = [];
    for (let i = 0; i + 1 < shape.points.length; i += 2)
      points.push(
        `${at(shape.points[i] as number, x0, x1, by)} ${at(shape.points[i + 1] as number, y0, y1, by)}`,
      );
    return `M${points.join('L')}Z`;
  };
  return svg`<svg class="small-drawing" viewBox="0 0 64 64" aria-hidden="true" focusable="false">
    <path class="small-front" d=${path(1)}/><path class="small-edging" d=${path(0.84)}/><path class="small-foundation" d=${path(0.72)}/>
  </svg>`;
}
