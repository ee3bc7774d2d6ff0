/**
 * Several sizes of the panel at hand: the same sides, corners, rounds and choices, with other counts.
 *
 * Rule: a size is planned as any panel is; one that cannot be worked is named with core's own problem.
 */
import { type Choices, type Plan, planBack, readEdge } from '../../core/index.ts';
import { readWhole } from '../input/whole-number.ts';
import type { AppProblem } from '../state/problem.ts';
import type { Making, Project } from '../state/snapshot.ts';

export const mostSizes = 6;

export type SizeRead =
  | { name: string; counts: readonly number[]; plan: Plan }
  | { name: string; counts: readonly number[]; problem: AppProblem }
  /** A line that is no name with counts behind it. */
  | { name: string; line: string };

type Panel = Pick<Making, 'plan'> & { project: Pick<Project, 'counted'> };

/** One size a line: a name, a colon, and the counts as the maker counts them: one for all sides, or one each. */
export function readSizes(text: string, panel: Panel): SizeRead[] {
  const lines = text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
  return lines.slice(0, mostSizes).map((line) => readSize(line, panel));
}

function readSize(line: string, panel: Panel): SizeRead {
  const colon = line.lastIndexOf(':');
  const name = line.slice(0, Math.max(0, colon)).trim();
  const read = line
    .slice(colon + 1)
    .split(/[,;]/)
    .map(readWhole);
  const given = read.flatMap((one) => (one.ok ? [one.value] : []));
  const sideCount = panel.plan.edge.sides.length;
  const isWhole = given.length === read.length && (given.length === 1 || given.length === sideCount);
  if (name === '' || !isWhole) return { name, line };
  const counts = given.length === 1 ? new Array<number>(sideCount).fill(given[0] as number) : given;
  return { name, counts, ...planned(counts, panel) };
}

function planned(
  counts: readonly number[],
  { plan, project }: Panel,
): { plan: Plan } | { problem: AppProblem } {
  const { corners } = plan.edge;
  const counted = corners.length === 0 ? 'stitches-only' : project.counted;
  const edge = readEdge({ sides: [...counts], corner: corners, counted });
  if (!edge.ok) return { problem: edge.problems[0] as AppProblem };
  const back = planBack(edge.value, choicesOf(plan));
  return back.ok ? { plan: back.value } : { problem: back.problems[0] as AppProblem };
}

/** The choices of a plan for another size: where in a side it begins is settled anew. */
function choicesOf({ choices, edgings }: Plan): Choices {
  const { start, joinStart, ...others } = choices;
  return {
    ...others,
    start: { side: start.side },
    joinStart: { side: joinStart.side },
    edgings: edgings.map(({ arm, increase, corners }) =>
      corners.length > 0 ? { arm, increase, corner: corners } : { arm, increase },
    ),
  };
}

/** Lines for so many sizes, each side of each with `more` stitches more than in the size before. */
export function sizesByRule(counts: readonly number[], more: number, count: number): string {
  return Array.from(
    { length: count },
    (_, i) => `${i + 1}: ${counts.map((side) => side + i * more).join(', ')}`,
  ).join('\n');
}
