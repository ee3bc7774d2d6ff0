/** Problems as the app knows them: core's, and those of typed text. */
import type { ProblemOf, ProblemParams } from '../../core/index.ts';

type None = Record<string, never>;

export type TextProblemParams = {
  /** More than one number where one is asked for. */
  several: { like: number };
  'no-kind': None;
  'as-planned': { count: number };
};

export type AppProblemParams = ProblemParams & TextProblemParams;
export type AppProblemCode = keyof AppProblemParams;
export type AppProblem = ProblemOf<AppProblemParams>;
