/**
 * How often the cause and the cure are right, over mishaps drawn at random, with the counts that people have.
 *
 * Printed three times: mishaps drawn from the written priors, from uniform ones, and the symptoms that published
 * reports of wrong counts name. A cure is right if, carried out on what was really made, it lets the rounds meet, at no
 * more than a fifth above the least cost there is from where the work stands. Looks: those that were advised, answered
 * truly; numbers are typed, as on the page. In 3: in the first three entries of the list.
 */
import { commonnessOf } from '../../core/explain/commonness.ts';
import { curesOf } from '../../core/explain/cures.ts';
import { questionsOf } from '../../core/explain/looks.ts';
import { doneWith } from '../../core/explain/outcome.ts';
import { nameOfCure } from '../../core/explain/right.ts';
import { markOf } from '../../core/explain/rip.ts';
import { weightOfCost } from '../../core/explain/stand.ts';
import { settle } from '../../core/hand/acts/doing.ts';
import {
  type ActKind,
  type Explanation,
  explain,
  type Look,
  type Mishap,
  type Plan,
  pair,
  type Seen,
  type Stand,
  work,
} from '../../core/index.ts';
import { groupsOf } from '../../src/wrong/groups.ts';
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

/** A number that is looked for has a field: it is typed there, like any other count. Null where it has none. */
function typedIn(seen: Seen, plan: Plan, look: Look, truth: Truth): Seen | null {
  const { look: at, round, edging = 0, side = 0, corner = 0 } = look;
  if (at === 'front') {
    const sides = seen.front?.sides ?? plan.edge.sides.map(() => null);
    return { ...seen, front: { sides: [...sides].with(side, truth.gives.front[side] ?? null) } };
  }
  if (at !== 'round' && at !== 'side' && at !== 'corner') return null;
  const isFoundation = round === 'foundation';
  const made = isFoundation ? truth.gives.foundation : truth.gives.edgings[edging];
  const before = (isFoundation ? seen.foundation : seen.edgings?.[edging]) ?? { sides: [] };
  if (!made) return null;
  const blank = (count: number, list: readonly (number | null)[] = []): (number | null)[] =>
    Array.from({ length: count }, (_, i) => list[i] ?? null);
  const counts =
    at === 'round'
      ? { ...before, sides: made.sides }
      : at === 'side'
        ? {
            ...before,
            sides: blank(made.sides.length, before.sides).map((one, i) =>
              i === side ? (made.sides[side] ?? null) : one,
            ),
          }
        : {
            ...before,
            sides: blank(made.sides.length, before.sides),
            corners: blank(made.corners.length, before.corners).map((one, i) =>
              i === corner ? (made.corners[corner] ?? null) : one,
            ),
          };
  if (isFoundation) return { ...seen, foundation: counts };
  const edgings = plan.edgings.map((one, n) => seen.edgings?.[n] ?? { sides: one.sides.map(() => null) });
  return { ...seen, edgings: edgings.with(edging, counts) };
}

/** Asks, looks where it is told to, at most twice, and takes the cure that is advised then. */
function follow(plan: Plan, truth: Truth, told: Seen): Outcome | null {
  const looked: { key: string; found: string | number }[] = [];
  const questions = questionsOf(plan, !!told.join);
  let seen = told;
  let looks = 0;
  let answer = explain(plan, seen, { looked });
  if (answer.explanations.some(({ causes }) => causes.length === 0)) return null;
  const { explanations } = answer;
  const first = explanations.slice(0, 1).some((one) => isLike(plan, one, truth));
  const inThree = listed(explanations).some((one) => isLike(plan, one, truth));
  const { stands } = answer;
  for (; answer.nextCount && looks < mostLooks; looks++) {
    const { key } = answer.nextCount;
    const question = questions.find((one) => one.key === key);
    if (!question) break;
    const typed = typedIn(seen, plan, question, truth);
    if (typed) seen = typed;
    else looked.push({ key, found: question.expects(truth) });
    answer = explain(plan, seen, { looked, stands });
  }
  const cure = answer.cureForAll ?? answer.explanations[0]?.cures.find(({ recommended }) => recommended);
  const inThreeThen = listed(answer.explanations).some((one) => isLike(plan, one, truth));
  return { first, inThree, inThreeThen, cured: isRight(plan, truth, cure, answer.stands), looks };
}

/** What stands in the first three entries of the list, as the page groups them. */
const listed = (explanations: readonly Explanation[]): Explanation[] =>
  groupsOf(explanations)
    .slice(0, 3)
    .flatMap(({ best, others }) => [best, ...others]);

type Cure = Explanation['cures'][number];

/** The rounds meet by it, carried out on what was really made, at no more than a fifth above the least cost. */
function isRight(plan: Plan, truth: Truth, cure: Cure | undefined, stand: Stand): boolean {
  const cures = curesOf(plan, truth, stand).filter(({ then }) => then !== 'does-not-meet');
  if (cures.length === 0 || cure === undefined) return cures.length === 0 && cure === undefined;
  const least = Math.min(...cures.map(({ cost }) => weightOfCost(plan, cost)));
  return (
    weightOfCost(plan, cure.cost) <= Math.max(few, dearer * least) && carriedOut(plan, truth, cure, cures)
  );
}

const dearer = 1.2;
/** So few stitches are no cost to speak of. */
const few = 12;

function carriedOut(plan: Plan, truth: Truth, cure: Cure, own: readonly Cure[]): boolean {
  const { to, kind, adjustments } = cure;
  if (kind === 'correct-the-number') return own.some((one) => nameOfCure(one) === nameOfCure(cure));
  if (kind === 'redo-join') return own.some((one) => one.kind === kind && one.cost.slips <= cure.cost.slips);
  // Made again as planned from a place on: it must lie at or before the first that was wrong.
  if (kind === 'rip-back' && adjustments.length === 0)
    return own.some((one) =>
      one.kind === kind && one.adjustments.length === 0 && one.to && to && roundOf(to) === roundOf(one.to)
        ? to.node <= one.to.node
        : one.kind === kind && one.to && to && roundOf(to) < roundOf(one.to),
    );
  const settled = settle(truth.mishaps);
  const { makings } = doneWith(plan, truth.mishaps, plan.edge.sides);
  const left = truth.mishaps.filter((mishap, i) => {
    if (mishap.round === 'join') return false;
    if (!to || to.round === 'join' || mishap.round === 'plan') return true;
    const round = mishap.round === 'foundation' ? 0 : (mishap.edging ?? 0) + 1;
    const making = makings[round];
    const mark = making && markOf(making, settled[i] as (typeof settled)[number]);
    return round < roundOf(to) || (round === roundOf(to) && (mark ?? making?.length ?? 0) < to.node);
  });
  const worked = work(plan, [...left, ...adjustments]);
  const back = worked.edgings.at(-1);
  if (!back || back.length === 0) return false;
  return pair(plan.edge, back, { start: worked.join, manner: 'stitch-by-stitch' }).verdict.kind === 'meets';
}

const roundOf = ({ round, edging }: NonNullable<Cure['to']>): number =>
  round === 'foundation' ? 0 : round === 'edging' ? edging + 1 : Number.POSITIVE_INFINITY;

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
