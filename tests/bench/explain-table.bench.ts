/**
 * How often the cause and the cure are right, over mishaps drawn at random, with the counts that people have.
 *
 * Printed three times: mishaps drawn from the written priors, from uniform ones, and the symptoms that published
 * reports of wrong counts name. A cure is right if the rounds meet by it at no more than a fifth above the least cost
 * there is from where the work stands; ripping all of it is none. Looks: those that were advised, answered truly.
 */
import { commonnessOf } from '../../core/explain/commonness.ts';
import { curesOf } from '../../core/explain/cures.ts';
import { questionsOf } from '../../core/explain/looks.ts';
import { nameOfCure, rightCures } from '../../core/explain/right.ts';
import {
  type ActKind,
  type Explanation,
  explain,
  type Mishap,
  type Plan,
  type Seen,
  type Stand,
} from '../../core/index.ts';
import { chainCorner, countsOf, planOf, totalOf } from '../property/explain-panels.ts';
import {
  type Draw,
  drawFrom,
  drawMishap,
  drawPlan,
  joinSeen,
  kindsThatCountsShow,
  namesOf,
} from '../property/explain-random.ts';

const mostLooks = 2;

type Truth = Pick<Explanation, 'mishaps' | 'causes' | 'gives'>;

/** What was really done, as an explanation would tell it. */
function truthOf(plan: Plan, mishaps: Mishap[]): Truth {
  const made = countsOf(plan, mishaps);
  const join = joinSeen(plan, mishaps);
  const drift = (join?.drift ?? []).map((by) => by ?? 0);
  return {
    mishaps,
    causes: mishaps.map((one) => ({
      kind: one.kind,
      habit: false,
      anywhere: true,
      mishaps: [one],
      front: [],
      ...commonnessOf(one.kind),
    })),
    gives: { ...made, front: plan.edge.sides, join: { drift, leftOver: join?.leftOver ?? 0 } },
  };
}

const counted = {
  'every side': (plan: Plan, { gives }: Truth): Seen =>
    lastEdging(plan, { sides: gives.edgings.at(-1)?.sides ?? [] }),
  'one side': (plan: Plan, { gives }: Truth): Seen => {
    const sides = gives.edgings.at(-1)?.sides ?? [];
    const planned = plan.edgings.at(-1)?.sides ?? [];
    const off = sides.findIndex((count, side) => count !== planned[side]);
    return lastEdging(plan, {
      sides: planned.map((_, side) => (side === off ? (sides[side] ?? null) : null)),
    });
  },
  'a total': (plan: Plan, { gives }: Truth): Seen => {
    const last = gives.edgings.at(-1) ?? { sides: [], corners: [] };
    return lastEdging(plan, { sides: plan.edge.sides.map(() => null), total: totalOf(last) });
  },
  'left over': (_: Plan, { gives }: Truth): Seen => ({ join: { leftOver: gives.join?.leftOver ?? 0 } }),
} as const;
type Counted = keyof typeof counted;

function lastEdging(plan: Plan, counts: NonNullable<Seen['foundation']>): Seen {
  const blank = { sides: plan.edge.sides.map(() => null) };
  return { edgings: plan.edgings.map((_, n) => (n === plan.edgings.length - 1 ? counts : blank)) };
}

type Outcome = { first: boolean; inThree: boolean; inThreeThen: boolean; cured: boolean; looks: number };

function isLike(plan: Plan, one: Explanation, truth: Truth): boolean {
  return (
    namesOf(one.mishaps) === namesOf(truth.mishaps) ||
    JSON.stringify([countsOf(plan, one.mishaps), joinSeen(plan, one.mishaps)]) ===
      JSON.stringify([countsOf(plan, truth.mishaps), joinSeen(plan, truth.mishaps)])
  );
}

/** Asks, looks where it is told to, at most twice, and takes the cure that is advised then. */
function follow(plan: Plan, truth: Truth, seen: Seen): Outcome | null {
  const looked: { key: string; found: string | number }[] = [];
  const questions = questionsOf(plan, !!seen.join);
  let answer = explain(plan, seen, { looked });
  if (answer.explanations.some(({ causes }) => causes.length === 0)) return null;
  const { explanations } = answer;
  const first = explanations.slice(0, 1).some((one) => isLike(plan, one, truth));
  const inThree = explanations.slice(0, 3).some((one) => isLike(plan, one, truth));
  while (answer.nextCount && looked.length < mostLooks) {
    const { key } = answer.nextCount;
    const question = questions.find((one) => one.key === key);
    if (!question) break;
    looked.push({ key, found: question.expects(truth) });
    answer = explain(plan, seen, { looked });
  }
  const cure = answer.cureForAll ?? answer.explanations[0]?.cures.find(({ recommended }) => recommended);
  const inThreeThen = answer.explanations.slice(0, 3).some((one) => isLike(plan, one, truth));
  return {
    first,
    inThree,
    inThreeThen,
    cured: isRight(plan, truth, cure, answer.stands),
    looks: looked.length,
  };
}

function isRight(
  plan: Plan,
  truth: Truth,
  cure: Explanation['cures'][number] | undefined,
  stand: Stand,
): boolean {
  const cures = curesOf(plan, truth, stand);
  if (cures.every(({ then }) => then === 'does-not-meet')) return cure === undefined;
  return cure !== undefined && rightCures(plan, { cures }).has(nameOfCure(cure));
}

const percent = (part: number, of: number): string =>
  `${Math.round((100 * part) / Math.max(1, of))} %`.padStart(6);

function row(name: string, outcomes: readonly Outcome[]): void {
  const share = (is: (one: Outcome) => boolean): string =>
    percent(outcomes.filter(is).length, outcomes.length);
  const looks = outcomes.reduce((all, one) => all + one.looks, 0) / Math.max(1, outcomes.length);
  console.log(
    `  ${name.padEnd(12)} ${`${outcomes.length}`.padStart(4)} ${share((one) => one.first)} ${share((one) => one.inThree)} ${share((one) => one.inThreeThen)} ${share((one) => one.cured)} ${looks.toFixed(1).padStart(6)}`,
  );
}

function heading(title: string): void {
  console.log(`\n${title}\n  counted      tried  first  in 3   then   cure  looks`);
}

/** Kinds in proportion to how common they are, or all alike. */
function drawKind(draw: Draw, weights: readonly number[]): ActKind {
  const total = weights.reduce((all, one) => all + one, 0);
  let at = (draw(1e6) / 1e6) * total;
  const found = weights.findIndex((weight) => {
    at -= weight;
    return at < 0;
  });
  return kindsThatCountsShow[Math.max(0, found)] as ActKind;
}

function table(title: string, weightOf: (kind: ActKind) => number, times: number): void {
  heading(title);
  const weights = kindsThatCountsShow.map(weightOf);
  const all: Outcome[] = [];
  for (const name of Object.keys(counted) as Counted[]) {
    const draw = drawFrom(name.length * 31);
    const outcomes: Outcome[] = [];
    for (let tries = 0; outcomes.length < times && tries < times * 10; tries++) {
      const plan = drawPlan(draw);
      const truth = truthOf(plan, [drawMishap(draw, plan, drawKind(draw, weights))]);
      const outcome = follow(plan, truth, counted[name](plan, truth));
      if (outcome) outcomes.push(outcome);
    }
    row(name, outcomes);
    all.push(...outcomes);
  }
  row('in all', all);
}

const times = Number(process.env.TIMES ?? 30);
table('drawn from the written priors', (kind) => 2 ** -commonnessOf(kind).rarity, times);
table('drawn from uniform priors', () => 1, times);

/** The symptoms of 24 public reports, with what people then found. */
const square = planOf([50, 50, 50, 50], chainCorner(2));
const edging = { round: 'edging', edging: 0 } as const;
const reports: [symptom: string, mishaps: Mishap[]][] = [
  ['each side one short', [0, 1, 2, 3].map((corner) => ({ kind: 'hidden-missed', ...edging, corner }))],
  ['one side one short', [{ kind: 'hidden-missed', ...edging, corner: 1 }]],
  ['one too many after closing', [{ kind: 'start-counted', round: 'foundation' }]],
  ['one too many at the start', [{ kind: 'attach-doubled', ...edging }]],
  ['one too many at the end', [{ kind: 'closing-worked', ...edging }]],
  ['sides unequal', [{ kind: 'corner-moved', round: 'foundation', corner: 1, count: 2, then: 'from-total' }]],
  ['every side two more', [{ kind: 'chains-as-stitches', round: 'plan' }]],
  ['one in all, cause unknown', [{ kind: 'stitch-doubled', ...edging, side: 2, place: 20, count: 1 }]],
];
heading('the symptoms of published reports');
for (const name of ['every side', 'one side', 'a total'] as const)
  row(
    name,
    reports.flatMap(([, mishaps]) => {
      const truth = truthOf(square, mishaps);
      return follow(square, truth, counted[name](square, truth)) ?? [];
    }),
  );
