/** A sentence the reader knows, and what its hands do at it. */
import type { Glossary } from './glossary.ts';
import type { Hands } from './hands.ts';

export type Rule = {
  sentence: RegExp;
  act: (hands: Hands, given: string[]) => void;
};

/**
 * Words in braces stand for the trade's: {tall}, {short}, …; `(\d+)` and `(\w+)` are given to the act. All other
 * words must be there exactly as they are.
 */
export const rule =
  (text: string, act: Rule['act'] = () => {}) =>
  (words: Glossary): Rule => ({
    sentence: new RegExp(
      `^${text.replace(/\{(\w+)\}/g, (_, name: string) => words[name as keyof Glossary])}$`,
    ),
    act,
  });

export type RuleFor = ReturnType<typeof rule>;

export const number = (text: string | undefined): number => Number.parseInt(text ?? '', 10);
