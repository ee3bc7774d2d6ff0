/**
 * The nearest choices that do, for a back that cannot be worked or does not meet as it is laid.
 *
 * Rule: only choices are touched, never a count; each is tried by carrying it out. Nearest first, one of each kind.
 */
import { limits, type Mishap } from '../../core/index.ts';
import { numberIn } from '../input/typed.ts';
import { derive } from './derive.ts';
import { fieldNames } from './fields.ts';
import type { Field, Making, Project, Snapshot } from './snapshot.ts';

export type Mend =
  | { kind: 'arm'; arm: number }
  | { kind: 'rounds'; rounds: number }
  | { kind: 'lead' }
  | { kind: 'start'; side: number }
  | { kind: 'join-start' }
  | { kind: 'turn'; by: number }
  | { kind: 'mirror' };

/** `project`: as it is with that choice. */
export type Mending = Mend & { project: Project };

type Mended = Pick<Snapshot, 'project' | 'settings' | 'making' | 'isStale'>;

/** None where all meets, and where a number cannot be read. */
export function mendsFor({ project, settings, making, isStale }: Mended): Mending[] {
  if (!isStale && making.pairing.findings.length === 0) return [];
  const found = new Map<Mend['kind'], Mending>();
  for (const mend of isStale ? unplanned(project, making) : misplaced(project, making)) {
    if (found.has(mend.kind)) continue;
    const derived = derive(mend.project, settings);
    const does = isStale ? !derived.isStale : derived.making?.pairing.verdict.kind === 'meets';
    if (does) found.set(mend.kind, mend);
  }
  return [...found.values()];
}

const withTexts = (project: Project, texts: Record<Field, string>): Project => ({
  ...project,
  texts: { ...project.texts, ...texts },
});

/** The usual choice is taken where nothing was typed. */
function untyped(project: Project, ...fields: Field[]): Project {
  const typed = Object.entries(project.texts).filter(([field]) => !fields.includes(field));
  return { ...project, texts: Object.fromEntries(typed) };
}

const startingAt = (project: Project, side: number): Project =>
  untyped(withTexts(project, { [fieldNames.startSide]: `${side + 1}` }), fieldNames.lead);

/** Smaller arms, fewer rounds, a start that fits: from what is chosen downwards. */
function unplanned(project: Project, { plan }: Making): Mending[] {
  const { armBefore, armAfter, lead, joinSide, joinFromCorner } = fieldNames;
  const rounds = Array.from({ length: project.edgingCount }, (_, n) => n);
  const typed = rounds
    .flatMap((n) => [armBefore(n), armAfter(n)])
    .map((field) => [field, numberIn(project, field) ?? 1] as const);
  const largest = Math.min(limits.arm, Math.max(...typed.map(([, arm]) => arm)));
  const smaller = Array.from({ length: largest }, (_, less) => largest - 1 - less);
  return [
    ...smaller.map((arm): Mending => {
      const texts = typed.map(([field, chosen]) => [field, `${Math.min(arm, chosen)}`]);
      return { kind: 'arm', arm, project: withTexts(project, Object.fromEntries(texts)) };
    }),
    ...rounds
      .slice(1)
      .reverse()
      .map((n): Mending => ({ kind: 'rounds', rounds: n, project: { ...project, edgingCount: n } })),
    { kind: 'lead', project: untyped(project, lead) },
    ...plan.edge.sides.map(
      (_, side): Mending => ({ kind: 'start', side, project: startingAt(project, side) }),
    ),
    { kind: 'join-start', project: untyped(project, joinSide, joinFromCorner) },
  ];
}

/** A back that lies the wrong way by a mishap that was put in: turned to where it belongs, or worked the other way. */
function misplaced(project: Project, { pairing, edge }: Making): Mending[] {
  const without = (kind: Mishap['kind']): Project[] => {
    const mishaps = project.mishaps.filter((mishap) => mishap.kind !== kind);
    return mishaps.length === project.mishaps.length ? [] : [{ ...project, mishaps }];
  };
  return [
    ...without('join-wrong-side').map(
      (mended): Mending => ({
        kind: 'turn',
        by: Math.min(pairing.betterTurn, edge.sides.length - pairing.betterTurn),
        project: mended,
      }),
    ),
    ...without('order-not-mirrored').map((mended): Mending => ({ kind: 'mirror', project: mended })),
    ...without('join-offset').map((mended): Mending => ({ kind: 'join-start', project: mended })),
  ];
}
