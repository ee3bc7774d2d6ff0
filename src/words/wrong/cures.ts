/** Ways to put it right, and what each costs, in words. */
import type { Cure, CureKind, CurePlaces, Plan, Stand } from '../../../core/index.ts';
import { many } from '../numbers.ts';
import { term } from '../terms.ts';
import type { Speech } from '../words.ts';

export const CURE_KINDS: readonly CureKind[] = [
  'correct-the-number',
  'rip-back',
  'make-up',
  'ease-in',
  'redo-join',
  'close-hole',
  'leave',
];

export function cureTitle({ kind }: Pick<Cure, 'kind'>, { dialect }: Speech): string {
  switch (kind) {
    case 'correct-the-number':
      return "Correct the front's number";
    case 'rip-back':
      return `${capital(term('unravel', dialect))} to the place`;
    case 'make-up':
      return 'Make it up on the way';
    case 'ease-in':
      return 'Ease it in the join';
    case 'redo-join':
      return 'Take the join out';
    case 'close-hole':
      return 'Close the hole';
    case 'leave':
      return 'Leave it';
  }
}

export const sayDrawing = 'On the drawing';
export const sayBefore = 'as it is';
export const sayAfter = 'after this';

export const sayForAll = 'Whatever it was, this puts it right.';

/** Nothing is done yet: it is what you go on with. */
export const sayChosen = (title: string): string =>
  `You chose: ${title.charAt(0).toLowerCase()}${title.slice(1)}`;

/** "Undo 96 slip stitches. The sewing stays. 96 to make again." Counted from where the work stands. */
export function cureCost({ cost }: Pick<Cure, 'cost'>, stands: Stand): string {
  const { stitches, slips, rounds, sewing, again } = cost;
  const off = stitches === 0 ? '' : `${many(stitches, 'stitch comes', 'stitches come')} off`;
  const whole = rounds === 0 ? '' : `${many(rounds, 'round')} whole`;
  const undo = slips === 0 ? '' : `Undo ${many(slips, 'slip stitch', 'slip stitches')}.`;
  const isSewn = stands.at !== 'foundation' && stands.at !== 'edging';
  const isUndone = stitches + slips > 0;
  return [
    undo,
    off && `${[off, whole].filter(Boolean).join(', ')}.`,
    sewing ? 'The strip comes off the cloth.' : isSewn && isUndone ? 'The sewing stays.' : '',
    again > 0 ? `${again} to make again.` : '',
    isUndone || again > 0 ? '' : 'Nothing comes off.',
  ]
    .filter(Boolean)
    .join(' ');
}

const LOOKS: Record<Cure['looks'], string> = {
  'as-planned': 'It looks as planned.',
  hidden: 'Nobody sees it.',
  slight: 'It shows only close up.',
  shows: 'It shows.',
  loose: 'It lies a little loose.',
  open: 'A hole stays open.',
};

const THEN: Record<Cure['then'], string> = {
  meets: 'Then all meet, stitch for stitch.',
  'meets-with-easing': 'Then it meets with easing.',
  'does-not-meet': 'It still does not meet.',
};

/** What it looks like afterwards, and whether it meets. */
export const cureAfter = ({ looks, then }: Pick<Cure, 'looks' | 'then'>): string =>
  `${LOOKS[looks]} ${THEN[then]}`;

/** Where exactly, a sentence a place: told from 1. */
export function cureWhere(cure: Cure, plan: Plan, speech: Speech): string[] {
  const back = cure.to ? [sayTo(cure.to, plan)] : [];
  const front = (cure.frontSides ?? []).map(({ side, by }) => sayCorrection(side, by, plan));
  return [...back, ...front, ...cure.at.map((places) => sayPlaces(places, plan, speech))];
}

function sayTo({ round, edging, side, corner, place }: NonNullable<Cure['to']>, plan: Plan): string {
  // The join is told along the front, as it is walked.
  if (round === 'join' && corner !== undefined)
    return `The join comes out back to front corner ${(plan.cornerFaces[corner] ?? corner) + 1}.`;
  const where = corner === undefined ? sideOf(side, plan) : `corner ${corner + 1}`;
  const name = capital(roundName(round, edging, plan));
  return `${name}, ${[where, `place ${place + 1}`].filter(Boolean).join(', ')}, is the first to go.`;
}

const sideOf = (side: number, plan: Plan): string => (plan.edge.sides.length === 1 ? '' : `side ${side + 1}`);

function sayCorrection(side: number, by: number, plan: Plan): string {
  const where = plan.edge.sides.length === 1 ? 'The front' : `Front side ${side + 1}`;
  return `${where} has ${Math.abs(by)} ${by < 0 ? 'fewer' : 'more'} than you entered.`;
}

function sayPlaces(
  { round, edging, side, corner, act, places }: CurePlaces,
  plan: Plan,
  speech: Speech,
): string {
  const where = corner === undefined ? sideOf(side, plan) : `corner ${corner + 1}`;
  const name = [capital(roundName(round, edging, plan)), where].filter(Boolean).join(', ');
  const at = places.map((place) => place + 1);
  return `${name}: ${sayAct(act, at, speech)}.`;
}

function sayAct(act: CurePlaces['act'], places: readonly number[], { dialect }: Speech): string {
  const at = `${places.length === 1 ? 'stitch' : 'stitches'} ${listed(places)}`;
  switch (act) {
    case 'two-in-one':
      return `work 2 in ${at}`;
    case 'miss-one':
      return `${term('miss', dialect)} ${at}`;
    case 'two-back-with-one':
      return `take 2 of the back with 1 of the front, at ${at}`;
    case 'two-front-with-one':
      return `take 2 of the front with 1 of the back, at ${at}`;
  }
}

function listed(numbers: readonly number[]): string {
  if (numbers.length < 2) return `${numbers[0] ?? ''}`;
  return `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;
}

function roundName(round: CurePlaces['round'], edging: number, plan: Plan): string {
  if (round === 'front' || round === 'join' || round === 'foundation') return round;
  return plan.edgings.length > 1 ? `edging round ${edging + 1}` : 'edging';
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
