/** The shape of a catalogue. Every language fills all of it: one that lacks a sentence does not compile. */
import type { AppProblemCode, AppProblemParams } from '../state/problem.ts';
import type { Speaker } from './speaker.ts';

/** What is wrong, by code. `label` is the visible name of the field, as it stands within a sentence: "side 3". */
export type ProblemMessages = {
  [Code in AppProblemCode]: (params: AppProblemParams[Code], speaker: Speaker, label: string) => string;
};

export type Catalogue = { problems: ProblemMessages };
