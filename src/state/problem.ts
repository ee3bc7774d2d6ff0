/** Problems as the app knows them: core's, and those of typed text. */
import type { ProblemOf, ProblemParams } from '../../core/index.ts';

type None = Record<string, never>;

type TextProblemParams = {
  /** More than one number where one is asked for. */
  several: { like: number };
  /** Digits in groups, which could be a fraction as well: `like` is the whole number they could be. */
  grouped: { like: number };
  'no-kind': None;
  'as-planned': { count: number };
};

export type AppProblemParams = ProblemParams & TextProblemParams;
export type AppProblemCode = keyof AppProblemParams;
export type AppProblem = ProblemOf<AppProblemParams>;
