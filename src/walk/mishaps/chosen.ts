/** What was pressed and typed in the fold so far. No part of the project: it is gone with the page. */
import type { AppProblem } from '../../state/problem.ts';
import type { Send, Snapshot } from '../../state/snapshot.ts';
import { type Draft, emptyDraft } from './draft.ts';

export type Chosen = {
  draft: Draft;
  /** What was in the way when it was last to be put in; `at` names a field of the draft. */
  problems: readonly AppProblem[];
  /** Where the work stood before a mishap was looked at. */
  from: number | null;
};

export const nothingChosen: Chosen = { draft: emptyDraft, problems: [], from: null };

/**
 * Changes what is chosen. It is given what is chosen at that moment: two answers may come before the fold is rendered
 * anew, and the second must not bring back what the first one changed.
 */
export type Choose = (change: (now: Chosen) => Chosen) => void;

/** What the fold is a function of, and how it is answered. */
export type Putting = { snapshot: Snapshot; send: Send; chosen: Chosen; choose: Choose };

/** Another choice; what was in the way of the last one is forgotten. */
export const withDraft = (chosen: Chosen, part: Partial<Draft>): Chosen => ({
  ...chosen,
  draft: { ...chosen.draft, ...part },
  problems: [],
});
