/**
 * Checking a written pattern by the counts that were read out of it, and the smallest change that mends it.
 *
 * Rule: one choice other than said, or one count other than printed. Where neither is enough nothing is offered.
 */
import { checkRounds, type PrintedRounds, type Problem } from '../../core/index.ts';
import type { WrittenRound } from '../input/written-rounds.ts';
import type { WrittenMend as Mend } from '../words/pattern/messages.ts';

/** How the pattern says its rounds are worked; all sides alike. */
export type Worked = { sideCount: number; corner: number; arm: number; takesCorners: boolean };

export type Checked = {
  /** Rounds with a count that could be compared. */
  compared: number;
  problems: readonly Problem[];
  mend: Mend | null;
  /** The number that the pattern gives its first round. */
  first: number;
};

/** Two lines of one round that say different things leave it open. */
function columns(
  rounds: readonly WrittenRound[],
): Pick<PrintedRounds, 'sides' | 'totals'> & { first: number } {
  const read = rounds.filter((round) => round.read !== null);
  const first = Math.min(...read.map(({ round }) => round));
  const last = Math.max(...read.map(({ round }) => round));
  const column = (of: 'side' | 'all'): (number | null)[] =>
    Array.from({ length: last - first + 1 }, (_, i) => {
      const counts = new Set(
        read.flatMap(({ round, read: told }) => (round === first + i && told?.of === of ? [told.count] : [])),
      );
      return counts.size === 1 ? ([...counts][0] ?? null) : null;
    });
  return { sides: column('side'), totals: column('all'), first };
}

const problemsOf = (printed: PrintedRounds): readonly Problem[] => {
  const checked = checkRounds(printed);
  return checked.ok ? [] : checked.problems;
};

const most = { arm: 5, corner: 9 };

/** Null where fewer than two rounds have a count. */
export function checkWritten(rounds: readonly WrittenRound[], worked: Worked): Checked | null {
  const compared = rounds.filter(({ read }) => read !== null).length;
  if (compared < 2) return null;
  const { first, ...printed } = columns(rounds);
  const asked = (other: Partial<Worked> = {}): PrintedRounds => {
    const { sideCount, corner, arm, takesCorners } = { ...worked, ...other };
    return {
      ...printed,
      sideCount,
      corner: { made: 'chain', size: corner },
      arm,
      totalsTakeCorners: takesCorners,
    };
  };
  const problems = problemsOf(asked());
  const does = (other: Partial<Worked>): boolean => problemsOf(asked(other)).length === 0;
  const near = (from: number, upTo: number): number[] =>
    Array.from({ length: upTo + 1 }, (_, size) => size)
      .filter((size) => size !== from)
      .sort((a, b) => Math.abs(a - from) - Math.abs(b - from));
  const mend = (): Mend | null => {
    if (problems.length === 0) return null;
    const one = problems.length === 1 ? countOf(problems[0], first) : null;
    if (one) return one;
    const arm = near(worked.arm, most.arm).find((size) => does({ arm: size }));
    if (arm !== undefined) return { kind: 'arm', to: arm };
    const corner = near(worked.corner, most.corner).find((size) => does({ corner: size }));
    if (corner !== undefined) return { kind: 'corner', to: corner };
    if (does({ takesCorners: !worked.takesCorners }))
      return { kind: 'takes-corners', to: !worked.takesCorners };
    return firstCount(asked(), first);
  };
  return { compared, problems, mend: mend(), first };
}

/** The one count that does not fit, as the others give it. */
function countOf(problem: Problem | undefined, first: number): Mend | null {
  if (problem?.code !== 'printed-side' && problem?.code !== 'printed-total') return null;
  const { round, given } = problem.params;
  return { kind: 'count', round: first + round, to: given };
}

/** Every later count off by as much: the first is the one. */
function firstCount(printed: PrintedRounds, first: number): Mend | null {
  for (const of of ['sides', 'totals'] as const) {
    const [count, ...rest] = printed[of] ?? [];
    if (count === null || count === undefined) continue;
    for (let by = 1; by <= 60; by++)
      for (const to of [count + by, count - by])
        if (to >= 0 && problemsOf({ ...printed, [of]: [to, ...rest] }).length === 0)
          return { kind: 'count', round: first, to };
  }
  return null;
}
