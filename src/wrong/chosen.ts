/** What was pressed on the tab so far. No part of the project: it is gone with the page. */
import type { Explanation, Found, Look } from '../../core/index.ts';
import type { Project } from '../state/snapshot.ts';
import type { StoryId } from '../words/wrong/stories.ts';
import type { Cured } from './cured.ts';

export type LookedAt = Look & { found: Found };

/** `before`: the project as it was, and `answer` what was found out about it. */
export type Done = {
  project: Project;
  cured: Cured;
  looked: readonly LookedAt[];
  before: Project;
  answer: { cause: string; cure: string; says: readonly string[] };
};

export type Chosen = {
  /** What was found by looking, beyond the counts. */
  looked: readonly LookedAt[];
  /** Key of the explanation that is open; undefined until one was pressed: then the best is. */
  open: string | null | undefined;
  /** More than the best few are listed. */
  all: boolean;
  /** The cure that is looked at on the drawing, by its name. */
  previewed: string | null;
  /** A cure was taken: the project it made, as long as nothing else changes it. */
  done: Done | null;
  /** A story was told: the page goes to the answer once it is there. */
  arriving: boolean;
  /** The story told leaves counts open: the story, until they are cleared. */
  asked: StoryId | null;
  /** Which way a field without a number yet is meant: early or on the front. */
  minus: Readonly<Record<string, boolean>>;
};

export const nothingChosen: Chosen = {
  looked: [],
  open: undefined,
  all: false,
  previewed: null,
  done: null,
  arriving: false,
  asked: null,
  minus: {},
};

export type Choose = (part: Partial<Chosen>) => void;

export const keyOf = ({ causes }: Explanation): string =>
  JSON.stringify(
    causes.map(({ kind, habit, mishaps, front, backMadeFor }) => [kind, habit, mishaps, front, backMadeFor]),
  );
