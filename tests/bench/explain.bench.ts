/**
 * Finding causes: how long it takes, how many makings it tries against plain trying, and how many counts the advice
 * on what to count next saves.
 */

import { questionsOf } from '../../core/explain/looks.ts';
import { askAll, nextCountOf } from '../../core/explain/next.ts';
import {
  type Explained,
  type Explanation,
  explain,
  type Mishap,
  type Plan,
  type Seen,
} from '../../core/index.ts';
import { chainCorner, countsOf, planOf } from '../property/explain-panels.ts';
import {
  type Draw,
  drawFrom,
  drawMishap,
  drawPlan,
  kindsThatCountsShow,
  namesOf,
  seenInFull,
} from '../property/explain-random.ts';
import { summarise, tell } from './harness.ts';

const onBack = kindsThatCountsShow.filter((kind) => !kind.startsWith('join'));

const someMishaps = (draw: Draw, plan: Plan, count: number): Mishap[] =>
  Array.from({ length: count }, () => drawMishap(draw, plan, onBack[draw(onBack.length)] as Mishap['kind']));

function explained(plan: Plan, seen: Seen, options: object = {}): Explained {
  const found = explain(plan, seen, options);
  return found;
}

const percent = (part: number, of: number): string => `${Math.round((100 * part) / Math.max(1, of))} %`;

/** Panels of `sideCount` sides with so many mishaps, everything counted. */
function measure(name: string, sideCount: number, mishaps: number, times: number, atMostMs?: number): void {
  const draw = drawFrom(sideCount * 100 + mishaps);
  const plan = planOf(
    Array.from({ length: sideCount }, () => 40 + draw(41)),
    chainCorner(2),
  );
  const samples: number[] = [];
  const ratios: number[] = [];
  let complete = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < times + 3; i++) {
    const seen = seenInFull(plan, someMishaps(draw, plan, mishaps));
    const since = performance.now();
    const { effort } = explained(plan, seen);
    // The first few warm up; a making as the recipe has it needs no search.
    if (i < 3 || effort.sets === 0 || effort.tried < 10) continue;
    samples.push(performance.now() - since);
    ratios.push(effort.plain / effort.tried);
    complete += effort.complete ? 1 : 0;
    least = Math.min(least, effort.plain / effort.tried);
  }
  tell(`${name} (${samples.length} explained)`, summarise(samples), atMostMs);
  const sorted = ratios.toSorted((a, b) => a - b);
  const middle = Math.round(sorted[sorted.length >> 1] ?? 0);
  console.log(
    `  makings tried: 1 for every ${middle.toLocaleString('en-GB')} of plain trying (median), at least ${Math.round(least).toLocaleString('en-GB')}; search complete in ${percent(complete, samples.length)}`,
  );
  if (least < 1000) process.exitCode = 1;
}

measure('4 sides, 1 mishap', 4, 1, 40);
measure('4 sides, 2 mishaps', 4, 2, 40);
measure('12 sides, 2 mishaps', 12, 2, 30);
measure('12 sides, 3 mishaps', 12, 3, 40, 50);

/** Counts asked for until no further one could tell the causes apart that are left. */
function countsNeeded(
  plan: Plan,
  listed: readonly Explanation[],
  truth: Explanation,
  way: 'advised' | 'telling, in order' | 'all, in order',
): number {
  const questions = questionsOf(plan, false);
  let left = listed;
  for (let counted = 0; ; counted++) {
    const open = askAll(questions, left);
    if (open.length === 0) return counted;
    const advised = nextCountOf(plan, left, open)?.key;
    const question =
      way === 'advised'
        ? questions.find(({ key }) => key === advised)
        : way === 'all, in order'
          ? questions[counted]
          : open[0]?.question;
    if (!question) return counted;
    left = left.filter((one) => question.expects(one) === question.expects(truth));
  }
}

/** Only the last edging was counted; the rest is asked for, one by one. */
function measureCounts(times: number): void {
  const draw = drawFrom(5);
  const ways = ['advised', 'telling, in order', 'all, in order'] as const;
  const needed: number[][] = [];
  for (let tries = 0; needed.length < times && tries < times * 8; tries++) {
    const plan = drawPlan(draw);
    const mishaps = someMishaps(draw, plan, 1 + draw(2));
    const counts = countsOf(plan, mishaps);
    const blank = { sides: plan.foundation.sides.map(() => null) };
    const seen: Seen = {
      edgings: counts.edgings.map((one, n) => (n === plan.edgings.length - 1 ? one : blank)),
    };
    const listed = explained(plan, seen, { most: 60 }).explanations;
    if (listed.length < 2) continue;
    const truth = listed.find((one) => namesOf(one.mishaps) === namesOf(mishaps));
    if (!truth) continue;
    needed.push(ways.map((way) => countsNeeded(plan, listed, truth, way)));
  }
  const means = ways.map(
    (_, way) => needed.reduce((sum, one) => sum + (one[way] as number), 0) / needed.length,
  );
  const said = ways.map((way, i) => `${(means[i] as number).toFixed(1)} ${way}`).join(', ');
  console.log(`counts until one cause is left (${needed.length} panels, last edging counted): ${said}`);
  if ((means[0] as number) >= (means[1] as number)) process.exitCode = 1;
}

measureCounts(40);
