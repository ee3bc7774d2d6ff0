/**
 * The places of the app, one row each. The panel of "edge" is there at once, the others come with what the first look
 * does not need (`later.ts`).
 */
import { NEXT_ID, PANEL_ID } from '../controls/ids.ts';
import type { Tab } from '../state/snapshot.ts';

export type Place = {
  /** On its tab; `short` is part of it, and stands for it where the page is narrow. */
  says: string;
  short: string;
  /** Where most presses are for, past all that comes before it. */
  skip: { to: string; says: string };
  /** What to do there, for someone who only hears the page. */
  hint: string;
};

export const places: Record<Tab, Place> = {
  edge: {
    says: 'Your edge',
    short: 'Edge',
    skip: { to: PANEL_ID, says: 'Skip to your counts' },
    hint: 'Change a count to see both rounds change.',
  },
  cloth: {
    says: 'Cloth',
    short: 'Cloth',
    skip: { to: PANEL_ID, says: 'Skip to your measures' },
    hint: 'Measure the panel to see how large to cut.',
  },
  walk: {
    says: 'Walk it',
    short: 'Walk',
    skip: { to: NEXT_ID, says: 'Skip to the step' },
    hint: 'Press Next to work one stitch.',
  },
  wrong: {
    says: 'What went wrong',
    short: 'Wrong',
    skip: { to: PANEL_ID, says: 'Skip to what you counted' },
    hint: 'Tell what you counted to find the cause.',
  },
  'take-along': {
    says: 'Take along',
    short: 'Take',
    skip: { to: PANEL_ID, says: 'Skip to your pattern' },
    hint: 'Write the pattern out to take it along.',
  },
};
