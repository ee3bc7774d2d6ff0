/** What an explanation comes to, read off its making: "Every side of the edging has 2 more." */
import type { Explanation, Plan, Seen, Tally } from '../../../core/index.ts';
import { many } from '../numbers.ts';

/** Differences told one by one; the rest are left to the drawing. */
const MOST_TOLD = 2;

/** In one or two sentences, the last round first. Empty where all is as the recipe has it. */
export function sayGives({ gives }: Pick<Explanation, 'gives'>, plan: Plan, seen: Seen): string {
  const rounds = [
    ...plan.edgings.map((planned, n) => ({
      name: plan.edgings.length > 1 ? `edging round ${n + 1}` : 'edging',
      planned,
      made: gives.edgings[n],
    })),
  ].reverse();
  const all = [...rounds, { name: 'foundation', planned: plan.foundation, made: gives.foundation }];
  const told = all.flatMap(({ name, planned, made }) => (made ? differences(name, planned, made) : []));
  const join = seen.join && gives.join ? sayJoin(gives.join, plan) : [];
  return [...join, ...told].slice(0, MOST_TOLD).join(' ');
}

type Round = Pick<Plan['foundation'], 'sides' | 'corners'>;

function differences(name: string, planned: Round, made: Tally): string[] {
  if (made.sides.length !== planned.sides.length)
    return [`The ${name} has ${many(made.corners.length, 'corner')}, not ${planned.corners.length}.`];
  return [
    ...sayAll(`the ${name}`, 'side', planned.sides, made.sides),
    ...sayAll(
      `the ${name}`,
      'corner',
      planned.corners.map(({ size }) => size),
      made.corners,
    ),
  ];
}

function sayAll(
  where: string,
  what: 'side' | 'corner',
  planned: readonly number[],
  made: readonly number[],
): string[] {
  const by = made.map((count, i) => count - (planned[i] ?? 0));
  const off = by.flatMap((one, i) => (one === 0 ? [] : [i]));
  const [first] = off;
  if (first === undefined) return [];
  if (planned.length === 1 && what === 'side')
    return [`${capital(where)} has ${made[0]}, not ${planned[0]}.`];
  if (off.length === by.length && by.every((one) => one === by[0]))
    return [`Every ${what} of ${where} has ${moreOrFewer(by[0] as number)}.`];
  return off.map((i) => `${capital(what)} ${i + 1} of ${where} has ${made[i]}, not ${planned[i]}.`);
}

function sayJoin({ drift, leftOver }: { drift: readonly number[]; leftOver: number }, plan: Plan): string[] {
  const begin = plan.choices.joinStart.side;
  const alike = drift.length > 1 && drift.every((one) => one === drift[0]) && drift[0] !== 0;
  const corners = alike
    ? [`Every corner comes ${earlyOrLate(drift[0] as number)}.`]
    : drift.flatMap((by, i) =>
        by === 0 ? [] : [`Front corner ${((begin + i) % drift.length) + 1} is met ${earlyOrLate(by)}.`],
      );
  const rest =
    leftOver === 0
      ? []
      : [
          `${many(Math.abs(leftOver), 'stitch is', 'stitches are')} left over on the ${leftOver > 0 ? 'back' : 'front'}.`,
        ];
  return [...corners.slice(0, 1), ...rest];
}

const moreOrFewer = (by: number): string => `${Math.abs(by)} ${by < 0 ? 'fewer' : 'more'}`;

const earlyOrLate = (by: number): string => `${Math.abs(by)} ${by < 0 ? 'early' : 'late'}`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
