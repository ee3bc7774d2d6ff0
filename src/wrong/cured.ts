/** Taking a cure: the project as it is afterwards, and where the work goes on. */
import type { Cure, Explanation, Plan, Seen, Step, StepKind } from '../../core/index.ts';
import { countedNumbers } from '../controls/fields.ts';
import { withoutCounts, writeCounts } from '../input/counts.ts';
import { withoutAnswer } from '../state/answer-fields.ts';
import { derive } from '../state/derive.ts';
import { fieldNames } from '../state/fields.ts';
import type { Making, Project, Snapshot } from '../state/snapshot.ts';

export type Cured = { title: string; cure: Cure };

/** Tells a cure from the others of its explanation. */
export const nameOf = ({ kind, to, at }: Cure): string => JSON.stringify([kind, to ?? null, at]);

type Counts = NonNullable<Seen['foundation']>;

/**
 * The project once the cure is carried out: the mishaps that are left, and the counts that still differ from the
 * recipe. What was seen of the join is over.
 */
export function curedProject(snapshot: Snapshot, cure: Cure): Project {
  const { project, making, settings } = snapshot;
  const texts = withoutCounts(withoutAnswer(project).texts);
  if (cure.kind !== 'correct-the-number')
    return {
      ...project,
      texts: { ...texts, ...writeCounts(onlyOff(cure.seenAfter, making.plan), project, making.edge) },
      mishaps: cure.mishaps,
      adjustments: cure.adjustments,
    };
  // The front's own number was wrong: the recipe follows it, and the back stays what it is.
  const counted = countedNumbers(snapshot);
  const fronts = (cure.frontSides ?? []).map(({ side, by }) => [
    fieldNames.side(side),
    `${(counted[side] ?? 0) + by}`,
  ]);
  const corrected: Project = { ...project, texts: { ...texts, ...Object.fromEntries(fronts) }, mishaps: [] };
  const { making: after } = derive(corrected, settings);
  if (!after) return corrected;
  const { plan, edge } = after;
  const worked = writeCounts(onlyOff(filled(cure.seenAfter, making.plan), plan), corrected, edge);
  return { ...corrected, texts: { ...corrected.texts, ...worked } };
}

/** The counts that are not as the plan has them; a round with another number of sides is kept whole. */
export function onlyOff({ foundation, edgings }: Seen, plan: Plan): Seen {
  const round = (
    counts: Counts | undefined,
    planned: Plan['foundation'] | Plan['edgings'][number],
  ): Counts => {
    if (!counts) return { sides: [] };
    if (counts.sides.length !== planned.sides.length) return counts;
    const sides = counts.sides.map((count, i) => (count === planned.sides[i] ? null : count));
    const corners = (counts.corners ?? []).map((count, i) =>
      count === planned.corners[i]?.size ? null : count,
    );
    return { sides, corners };
  };
  return {
    foundation: whole(round(foundation, plan.foundation), plan.foundation.sides.length),
    edgings: plan.edgings.map((planned, n) => whole(round(edgings?.[n], planned), planned.sides.length)),
  };
}

/** Counts that were left out because they are as the plan has them, put in. */
function filled({ foundation, edgings }: Seen, plan: Plan): Seen {
  const round = (
    counts: Counts | undefined,
    planned: Plan['foundation'] | Plan['edgings'][number],
  ): Counts => ({
    sides: counts ? counts.sides.map((count, i) => count ?? planned.sides[i] ?? null) : planned.sides,
    corners: planned.corners.map(({ size }, i) => (counts?.corners ? (counts.corners[i] ?? size) : size)),
  });
  return {
    foundation: round(foundation, plan.foundation),
    edgings: plan.edgings.map((planned, n) => round(edgings?.[n], planned)),
  };
}

/** A round of which nothing was given counts as one in which nothing differs. */
const whole = (counts: Counts, sideCount: number): Counts =>
  counts.sides.length === 0 ? { sides: new Array<null>(sideCount).fill(null) } : counts;

type Walked = Pick<Making, 'steps' | 'plan'>;

/** The step at which the work goes on after a cure. @param place where the walk stands now */
export function goesOnAt({ steps, plan }: Walked, cure: Cure, place: number): number {
  const { to, at } = cure;
  switch (cure.kind) {
    case 'rip-back':
      return to ? stepAt({ steps, plan }, to) : place;
    case 'make-up': {
      if (to) return stepAt({ steps, plan }, to);
      const [first] = at;
      const round = first?.round === 'join' || first?.round === 'foundation' ? first.round : 'edging';
      return beginningOf({ steps }, round, first?.edging ?? plan.edgings.length - 1);
    }
    case 'ease-in':
    case 'redo-join':
      return to ? stepAt({ steps, plan }, to) : beginningOf({ steps }, 'join', 0);
    case 'close-hole':
      return lastHole({ steps }) ?? place;
    default:
      return place;
  }
}

/** The step that makes again what goes first; in the join, the corner from which it is made again. */
function stepAt({ steps, plan }: Walked, { round, edging, node, corner }: NonNullable<Cure['to']>): number {
  const stage = round === 'join' || round === 'foundation' ? round : 'edging';
  const step = node < 0 ? -1 : steps.stepOf(stage, node, edging);
  if (step >= 0) return step;
  const front = corner === undefined ? undefined : plan.cornerFaces[corner];
  const joined =
    stage === 'join'
      ? steps.stretches.find((one) => one.stage === 'join' && one.corner === front)
      : undefined;
  return joined?.from ?? beginningOf({ steps }, stage, edging);
}

function beginningOf({ steps }: Pick<Walked, 'steps'>, stage: Step['stage'], edging: number): number {
  const found = steps.stretches.find(
    (one) => one.stage === stage && (stage !== 'edging' || one.edging === edging),
  );
  return found?.from ?? 0;
}

function lastHole({ steps }: Pick<Walked, 'steps'>): number | null {
  const wanted: StepKind = 'last-hole';
  for (let at = steps.length - 1; at >= 0 && steps.length - at < 12; at--)
    if (steps.at(at).kind === wanted) return at;
  return null;
}

/** The place of one of an explanation's mishaps in its list: causes and lists hold them apart. */
export function indexInList({ mishaps }: Explanation, wanted: Explanation['mishaps'][number]): number {
  const nameOf = ({ kind, round, edging, side, corner, place }: Explanation['mishaps'][number]): string =>
    JSON.stringify([kind, round, round === 'edging' ? (edging ?? 0) : 0, side, corner, place]);
  return mishaps.findIndex((one) => nameOf(one) === nameOf(wanted));
}
