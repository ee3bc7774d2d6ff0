/**
 * From what was typed to what follows: edge, plan, worked back, pairing, steps.
 *
 * Rule: texts are read anew with every change of the project and never changed. A wrong number invalidates what
 * depends on it and nothing else: where the recipe cannot be made the last good making stays, and is stale; a count
 * that cannot be read counts as not counted. What did not change keeps its identity, and what follows from it is not
 * done again.
 */
import {
  type Act,
  type Choices,
  checkActs,
  type Edge,
  type EdgeInput,
  mishapsOf,
  type Pairing,
  type Plan,
  type Problem,
  pair,
  planBack,
  type Result,
  readEdge,
  type Seen,
  type Steps,
  steps,
  type Worked,
  work,
} from '../../core/index.ts';
import { ordinaryFront, readCounts } from '../input/counts.ts';
import { readChoices, readFront } from '../input/recipe.ts';
import type { Reader } from '../input/typed.ts';
import { becomesField } from './becomes-fields.ts';
import type { Becomes } from './cloth-types.ts';
import { fieldAt } from './fields.ts';
import type { AppProblem } from './problem.ts';
import type { Making, Project, Settings } from './snapshot.ts';

export type PairingSettings = Pick<Settings, 'manner' | 'easing'>;

type Recipe = { front: EdgeInput; choices: Choices };

type Read = {
  recipe: Recipe;
  recipeProblems: readonly AppProblem[];
  /** The last that could be read. */
  goodRecipe: Recipe | undefined;
  counts: Seen;
  countProblems: readonly AppProblem[];
};

/** A value, and what it was made from. */
type Memo<T> = { from: readonly unknown[]; value: T };

/** The value of last time where it was made from the very same. */
const memo = <T>(last: Memo<T> | undefined, from: readonly unknown[], make: () => T): Memo<T> =>
  last?.from.every((one, i) => one === from[i]) ? last : { from, value: make() };

/** Of the acts that were put in or asked for, those that can happen on this panel. */
type Known = { acts: readonly Act[]; problems: readonly Problem[] };

type Stages = {
  read: Memo<Read>;
  edge: Memo<Result<Edge>>;
  plan: Memo<Result<Plan>>;
  seen: Memo<Seen>;
  known: Memo<Known>;
  acts: Memo<readonly Act[]>;
  worked: Memo<Worked>;
  pairing: Memo<Pairing>;
  steps: Memo<Steps>;
  making: Memo<Making>;
};

export type Derived = {
  /** The last good making; null where there never was one. */
  making: Making | null;
  /** It is not of the numbers as they stand. */
  isStale: boolean;
  /** What cannot be read or followed in the fields. */
  problems: readonly AppProblem[];
  /** Mishaps that were put in and cannot happen on this panel: they are left out. */
  unfit: readonly AppProblem[];
  stages: Partial<Stages>;
};

/** Everything that follows from a project. `last`: what followed before, for what has not changed since. */
export function derive(project: Project, { manner, easing }: PairingSettings, last?: Derived): Derived {
  const before: Partial<Stages> = last?.stages ?? {};
  const stages: Partial<Stages> = { ...before };
  const stale = (problems: readonly AppProblem[]): Derived => ({
    making: last?.making ?? null,
    isStale: true,
    problems: firstOfEach([...problems, ...read.countProblems]),
    unfit: stages.known?.value.problems ?? [],
    stages,
  });
  const inFields = (problems: readonly Problem[]): AppProblem[] =>
    problems.map((problem) => ({ ...problem, at: fieldAt(problem.at, project) }));

  stages.read = memo(before.read, [project], () => readAll(project, before.read?.value));
  const read = stages.read.value;
  const { front, choices } = read.recipe;
  if (read.recipeProblems.length > 0) {
    // What can be read is judged all the same: everything that is wrong is told at once.
    const judged = readEdge(front);
    return stale([...read.recipeProblems, ...(judged.ok ? [] : inFields(judged.problems))]);
  }
  stages.edge = memo(before.edge, [front], () => readEdge(front));
  const edge = stages.edge.value;
  if (!edge.ok) return stale(inFields(edge.problems));
  stages.plan = memo(before.plan, [edge, choices], () => planBack(edge.value, choices));
  const plan = stages.plan.value;
  if (!plan.ok) return stale(inFields(plan.problems));
  stages.seen = memo(before.seen, [read.counts, edge, project.counted], () =>
    ordinaryFront(read.counts, project, edge.value),
  );
  const seen = stages.seen.value;
  stages.known = memo(before.known, [plan, project.mishaps, project.adjustments], () =>
    possible(project, plan.value),
  );
  const known = stages.known.value;
  // What is known to have happened or is asked for comes first; only what that leaves of the counts is explained anew.
  stages.acts = memo(before.acts, [plan, seen, known], () => mishapsOf(plan.value, seen, known.acts));
  const acts = stages.acts.value;
  stages.worked = memo(before.worked, [plan, acts], () => work(plan.value, acts));
  const worked = stages.worked.value;
  const back = worked.edgings.at(-1);
  if (!back || back.length === 0) return stale([{ at: 'back', code: 'back-empty', params: {} }]);
  stages.pairing = memo(before.pairing, [edge, worked, manner, easing], () =>
    pair(edge.value, back, { start: worked.join, manner, easing }),
  );
  const pairing = stages.pairing.value;
  stages.steps = memo(before.steps, [plan, acts, manner, worked, pairing.runs], () =>
    steps(plan.value, acts, { manner, made: { worked, runs: pairing.runs } }),
  );
  const walk = stages.steps.value;
  const becomes = becomesOf(project);
  stages.making = memo(
    before.making,
    [edge, plan, seen, acts, known, worked, pairing, walk, becomes],
    () => ({
      edge: edge.value,
      plan: plan.value,
      acts,
      known: known.acts.length,
      worked,
      pairing,
      steps: walk,
      seen,
      becomes,
    }),
  );
  return {
    making: stages.making.value,
    isStale: false,
    problems: read.countProblems,
    unfit: known.problems,
    stages,
  };
}

/** Reads all fields that are shown. What says the same as before stays the same. */
function readAll(project: Project, last: Read | undefined): Read {
  const asked: Reader = { project, problems: [] };
  const counted: Reader = { project, problems: [] };
  const good = last?.goodRecipe;
  const recipe = {
    front: same(good?.front, readFront(asked)),
    choices: same(good?.choices, readChoices(asked)),
  };
  return {
    recipe,
    recipeProblems: asked.problems,
    goodRecipe: asked.problems.length === 0 ? recipe : good,
    counts: same(last?.counts, readCounts(counted)),
    countProblems: counted.problems,
  };
}

const same = <T>(last: T | undefined, now: T): T =>
  last !== undefined && JSON.stringify(last) === JSON.stringify(now) ? last : now;

/** What it is to be, by the choice as it is kept; a cushion where none was made. */
function becomesOf({ texts }: Project): Becomes {
  const chosen = texts[becomesField];
  return chosen === 'bag' || chosen === 'cover' ? chosen : 'cushion';
}

function possible({ mishaps, adjustments }: Project, plan: Plan): Known {
  const happened = sorted(mishaps, checkActs(mishaps, plan));
  const askedFor = sorted(adjustments, checkActs(adjustments, plan, 'adjustments'));
  return {
    acts: [...happened.acts, ...askedFor.acts],
    problems: [...happened.problems, ...askedFor.problems],
  };
}

function sorted(acts: readonly Act[], problems: readonly Problem[]): Known {
  const unfit = new Set(problems.map(mishapOf));
  // A problem of no act in particular is one of them all together.
  return { acts: acts.filter((_, i) => !unfit.has(i) && !unfit.has(null)), problems };
}

/** Index of the mishap that a problem is about; null where it is about all of them. */
export const mishapOf = ({ params }: AppProblem): number | null =>
  'mishap' in params ? params.mishap : null;

/** The first problem of each field: a number that cannot be read needs no second one. */
function firstOfEach(problems: readonly AppProblem[]): AppProblem[] {
  const fields = new Set<string>();
  return problems.filter(({ at }) => !fields.has(at) && fields.add(at));
}
