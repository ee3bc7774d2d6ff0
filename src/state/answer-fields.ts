/** What an answer to "What went wrong" names, kept with the project as any other text: sums of a cause and of a cure. */
import type { Field, Project } from './snapshot.ts';

export const answerFields = {
  /** Empty where the cure is right whatever it was. */
  cause: 'answer.cause',
  cure: 'answer.cure',
} as const satisfies Record<string, Field>;

const all: ReadonlySet<Field> = new Set(Object.values(answerFields));
export const isAnswerField = (field: Field): boolean => all.has(field);

export function withoutAnswer(project: Project): Project {
  const texts = Object.fromEntries(Object.entries(project.texts).filter(([field]) => !isAnswerField(field)));
  return { ...project, texts };
}
