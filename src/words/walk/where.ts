/** Where a step stands in the making: "Edging · side 3 · stitch 31 of 56 · 9 to the next marker". */
import type { CornerMade, Stage, Step } from '../../../core/index.ts';
import { PARTS } from '../marks.ts';
import type { Told } from './telling.ts';

const STAGES: Record<Stage, string> = {
  front: 'Front',
  foundation: 'Foundation',
  'foundation-closing': 'Closing the foundation',
  edging: 'Edging',
  'edging-closing': 'Closing the edging',
  cloth: 'Cloth',
  join: 'Join',
  'join-closing': 'Closing the join',
  finished: 'Finished',
};

/** Steps that are only done, not counted along a side. */
const UNCOUNTED: ReadonlySet<Step['kind']> = new Set([
  'slip-knot',
  'start-chains',
  'fasten-off',
  'tape-ends',
  'check-twist',
  'close-tops',
  'close-base',
  'close-round',
  'weave-ends',
  'right-side',
  'attach-chain',
  'long-loop',
  'pad-in',
  'take-loop',
  'look-for-holes',
  'join-close',
  'ends-inside',
  'turn-strip',
  'wrong-sides',
  'finished',
]);

/** Cloth is measured and sewn by the side, not counted by the stitch. */
const countsStitches = ({ kind, stage, place }: Step): boolean =>
  place >= 0 && stage !== 'cloth' && !UNCOUNTED.has(kind);

/** The name of a stage; with several edging rounds, which of them. */
export function stageName(
  { stage, edging }: Pick<Step, 'stage' | 'edging'>,
  { plan }: Pick<Told, 'plan'>,
): string {
  const rounds = plan.edgings.length;
  const which = rounds > 1 && (stage === 'edging' || stage === 'edging-closing');
  return which ? `${STAGES[stage]} ${edging + 1} of ${rounds}` : STAGES[stage];
}

/** The whole line. Sides and corners are counted from 1; a round panel has neither. */
export function sayWhere(step: Step, making: Told): string {
  const parts = [stageName(step, making), ...place(step, making), ...ahead(step)];
  return parts.join(' · ');
}

/** The number to show large: the place in this side or corner, or nothing where nothing is counted. */
export const sayCount = (step: Step): string =>
  // A marker is put beside a number of its own, counted from the corner.
  countsStitches(step) && step.kind !== 'join-marker' ? `${step.place + 1}` : '';

function place(step: Step, { plan }: Told): string[] {
  const round = plan.edge.corners.length === 0;
  if (step.corner >= 0 && step.stage === 'cloth') return [`corner ${step.corner + 1}`];
  if (step.corner >= 0) {
    const corner = `corner ${step.corner + 1}`;
    return countsStitches(step) && step.of > 1
      ? [corner, `${cornerThing(step, plan.edge.corners[step.corner]?.made)} ${step.place + 1} of ${step.of}`]
      : [corner];
  }
  const side = step.side >= 0 && !round ? [`side ${step.side + 1}${part(step)}`] : [];
  return countsStitches(step) ? [...side, `${thing(step)} ${step.place + 1} of ${step.of}`] : side;
}

/** Every round of the back begins inside side 1, so that side is worked in two parts. */
function part({ stage, side, node, place: at }: Step): string {
  if (side !== 0 || at < 0 || (stage !== 'foundation' && stage !== 'edging')) return '';
  return `, ${node - at <= 1 ? PARTS.first : PARTS.last}`;
}

const thing = ({ stage }: Step): string => (stage.startsWith('join') ? 'pair' : 'stitch');

const cornerThing = (step: Step, made: CornerMade | undefined): string =>
  step.stage.startsWith('join')
    ? 'pair'
    : // On the front the maker counts what is there; on the back the step itself says what is made.
      step.kind === 'corner-stitch' || (step.stage === 'front' && made === 'stitch')
      ? 'stitch'
      : 'chain';

function ahead(step: Step): string[] {
  if (!countsStitches(step) || step.corner >= 0) return [];
  if (step.marker) return ['marker here'];
  const left = leftOfLast(step);
  if (step.toMarker > 0 && (left === 0 || step.toMarker <= left))
    return [`${step.toMarker} to the next marker`];
  if (step.toCorner > 0) return [`${step.toCorner} to the corner`];
  return left > 0 ? [`${left} to the ${END[step.stage] ?? 'end'}`] : [];
}

/** What a part without a corner ahead comes to. */
const END: Partial<Record<Stage, string>> = {
  foundation: 'closing',
  edging: 'closing',
  join: 'last hole',
};

const STITCHES: ReadonlySet<Step['kind']> = new Set([
  'count-stitch',
  'foundation-treble',
  'double-crochet',
  'slip-stitch',
]);

/** Stitches still to come in a part that no corner ends. */
function leftOfLast({ kind, toCorner, of, place: at, ofRound, done }: Step): number {
  if (toCorner >= 0 || !STITCHES.has(kind)) return 0;
  return kind === 'slip-stitch' ? ofRound - 1 - done : of - 1 - at;
}
