/** Saying things in the speaker's language: one typed catalogue each. */
import type { AppProblem, AppProblemCode, AppProblemParams } from '../state/problem.ts';
import { english } from './english/index.ts';
import type { Catalogue, ProblemMessages } from './messages.ts';
import type { Language, Speaker } from './speaker.ts';

const catalogues: Record<Language, Catalogue> = { en: english };

const catalogueOf = ({ language }: Speaker): Catalogue => catalogues[language];

/** One sentence for the person, without its full stop. */
export function sayProblem(problem: AppProblem, speaker: Speaker, label: string): string {
  return say(catalogueOf(speaker).problems, problem, speaker, label);
}

function say<Code extends AppProblemCode>(
  messages: ProblemMessages,
  { code, params }: { code: Code; params: AppProblemParams[Code] },
  speaker: Speaker,
  label: string,
): string {
  return messages[code](params, speaker, label);
}
