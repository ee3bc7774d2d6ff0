/**
 * From what was typed to what follows: edge, plan, worked back, pairing, steps.
 *
 * Rule: texts are read anew each time and never changed. Where they cannot be read just now, the last good making
 * stays and the problems are kept, silent until the person asks to be told.
 */
import {
  type Choices,
  type Corner,
  checkActs,
  type EdgeInput,
  type EdgingChoice,
  limits,
  mishapsOf,
  type Problem,
  pair,
  planBack,
  type Result,
  readEdge,
  steps,
  work,
} from '../../core/index.ts';
import { ordinaryFront, readSeen } from './counts.ts';
import type { AppProblem } from './problem.ts';
import { type Reader, typed, typedOver } from './reading.ts';
import type { Field, Making, Project, Settings } from './snapshot.ts';

export type PairingSettings = Pick<Settings, 'manner' | 'easing'>;

function readEdgeInput(reader: Reader): EdgeInput {
  const { project } = reader;
  const round = project.sideCount === 0;
  const count = Math.max(1, project.sideCount);
  const sides = Array.from({ length: count }, (_, i) => {
    const field = `side.${i}`;
    if (project.texts[field] === undefined) reader.problems.push({ at: field, code: 'empty', params: {} });
    // Too many is core's to say: how many a side may have depends on the corners its count takes in.
    return typed(reader, field, 58, { low: 1, high: Number.POSITIVE_INFINITY }) ?? Number.NaN;
  });
  return {
    sides,
    corner: round ? [] : readCorners(reader, count),
    counted: round ? 'stitches-only' : project.counted,
  };
}

function readCorners(reader: Reader, count: number): Corner | Corner[] {
  const { project } = reader;
  const made = project.cornerMade;
  const standard = made === 'chain' ? 2 : 1;
  const one = typed(reader, 'corner', standard, { high: limits.cornerSize }) ?? standard;
  if (!project.cornersDiffer) return { made, size: one };
  return Array.from({ length: count }, (_, i) => ({
    made,
    size: typed(reader, `corner.${i}`, standard, { high: limits.cornerSize }) ?? one,
  }));
}

function readChoices(reader: Reader): Choices {
  const { project } = reader;
  const round = project.sideCount === 0;
  const onFront = { low: 1, high: Math.max(1, project.sideCount) };
  const startSide = typedOver(reader, 'start-side', 1, onFront);
  const lead = typedOver(reader, 'lead', 20);
  const marker = typedOver(reader, 'marker-every', 10);
  const joinSide = typedOver(reader, 'join-side', 1, onFront);
  const fromCorner = typedOver(reader, 'join-from-corner', 4);
  return {
    ...project.choices,
    edgings: Array.from({ length: project.edgingCount }, (_, n) => readEdging(reader, n, round)),
    start: { side: Math.max(1, startSide ?? 1) - 1, ...(lead !== undefined && !round ? { lead } : {}) },
    ...(joinSide !== undefined || fromCorner !== undefined
      ? {
          joinStart: {
            side: Math.max(1, joinSide ?? 1) - 1,
            ...(fromCorner === undefined ? {} : { fromCorner }),
          },
        }
      : {}),
    ...(marker === undefined ? {} : { markerEvery: marker }),
  };
}

/** An edging without a corner of its own takes the front's: core settles that. */
function readEdging(reader: Reader, n: number, round: boolean): EdgingChoice {
  const before = typedOver(reader, `arm.${n}`, 1, { high: limits.arm }) ?? 1;
  const after = typedOver(reader, `arm.${n}.after`, 1, { high: limits.arm }) ?? before;
  const increase = typedOver(reader, `increase.${n}`, 6) ?? 0;
  return round ? { arm: 0, increase } : { arm: [before, after] };
}

/** Path of a problem in core's input → the field in which the person can mend it. */
export function fieldOf(at: string): Field {
  const path = at.replace(/^edge\./, '');
  const side = /^sides\[(\d+)\]/.exec(path);
  if (side) return `side.${side[1]}`;
  const corner = /^corner(?:\[(\d+)\])?/.exec(path);
  if (corner) return corner[1] === undefined ? 'corner' : `corner.${corner[1]}`;
  const edging = /^choices\.edgings\[(\d+)\]\.(arm|increase)/.exec(path);
  if (edging) return `${edging[2]}.${edging[1]}`;
  const known: Record<string, Field> = {
    'choices.start.lead': 'lead',
    'choices.start.side': 'start-side',
    'choices.markerEvery': 'marker-every',
    'choices.joinStart.fromCorner': 'join-from-corner',
    'choices.joinStart.side': 'join-side',
    'choices.foundationStart.counts': 'start-side',
  };
  return known[path] ?? path;
}

/** Everything that follows from a project, or every problem that keeps it from following. */
export function derive(project: Project, settings: PairingSettings): Result<Making, AppProblem> {
  const reader: Reader = { project, problems: [] };
  const { problems } = reader;
  const edge = readEdge(readEdgeInput(reader));
  const told = new Set(problems.map((problem) => problem.at));
  if (!edge.ok) problems.push(...inFields(edge.problems).filter((problem) => !told.has(problem.at)));
  const choices = readChoices(reader);
  const counts = readSeen(reader);
  if (problems.length > 0 || !edge.ok) return { ok: false, problems };
  const plan = planBack(edge.value, choices);
  if (!plan.ok) return { ok: false, problems: inFields(plan.problems) };
  const seen = ordinaryFront(counts, project, edge.value);
  const unfit = checkActs(project.mishaps, plan.value);
  if (unfit.length > 0) return { ok: false, problems: unfit };
  // What is known to have happened comes first; only what that leaves of the counts is explained anew.
  const mishaps = mishapsOf(plan.value, seen, project.mishaps);
  const worked = work(plan.value, mishaps);
  const back = worked.edgings.at(-1);
  if (!back || back.length === 0)
    return { ok: false, problems: [{ at: 'back', code: 'back-empty', params: {} }] };
  const pairing = pair(edge.value, back, { start: worked.join, ...settings });
  const making = steps(plan.value, mishaps, {
    manner: settings.manner,
    made: { worked, runs: pairing.runs },
  });
  return {
    ok: true,
    value: { edge: edge.value, plan: plan.value, mishaps, worked, pairing, steps: making, seen },
  };
}

const inFields = (problems: readonly Problem[]): AppProblem[] =>
  problems.map((problem) => ({ ...problem, at: fieldOf(problem.at) }));
