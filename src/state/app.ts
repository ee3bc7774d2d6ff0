/**
 * The app's machine: the project with its undo, the settings, and playing. The making is a child of it.
 *
 * One direction: events come in here, the making is told, the store puts both snapshots together.
 * The only clock is here: playing sends the making one NEXT after another.
 */

import { assign, enqueueActions, type SnapshotFrom, setup } from 'xstate';
import { cleanField } from '../input/clean-text.ts';
import { withoutCounts, writeCounts } from '../input/counts.ts';
import { type MakingInput, makingMachine } from '../making/machine.ts';
import { type Derived, derive } from './derive.ts';
import { type Settled, settleSides } from './settle.ts';
import type { AppEvent, Making, Pointed, Project, Settings, Tab } from './snapshot.ts';

/** `project`: what is looked at; and where the walk stood before. */
type Preview = { project: Project; place: number; answered: MakingInput['answered'] };

export type AppContext = {
  project: Project;
  past: readonly Project[];
  future: readonly Project[];
  /** The field whose typing the last entry of `past` holds off: one undo takes back one field's typing. */
  typing: string | null;
  settings: Settings;
  tab: Tab;
  /** The person asked whether all can be read, and something cannot. */
  isChecked: boolean;
  pointed: Pointed | null;
  /** Index of the pairing's finding that is shown; the first of a new pairing. */
  finding: number;
  /** What follows from the project, or from what is looked at in its place. */
  derived: Derived;
  /** The last good making. */
  making: Making;
  /** Looked at for a while: neither kept nor part of undo. */
  preview: Preview | null;
  /** Choices that another choice has just taken the ground from, and that fell back. */
  settled: readonly Settled[];
  /** Where the walk stands, for the way back from what is looked at. */
  walk: { place: number; answered: MakingInput['answered'] };
  /** The making stands where playing must rest. */
  mustRest: boolean;
};

export type AppInput = {
  project: Project;
  settings: Settings;
  tab: Tab;
  derived: Derived;
  making: Making;
  settled: readonly Settled[];
  place: number;
  answered: MakingInput['answered'];
};

const mostUndo = 200;

/** The context once the project, or how it is joined, is another; the last good making stays where that fails. */
function withProject(context: AppContext, project: Project): AppContext {
  const derived = derive(context.preview?.project ?? project, context.settings, context.derived);
  const making = derived.making ?? context.making;
  return {
    ...context,
    project,
    derived,
    making,
    finding: making.pairing === context.making.pairing ? context.finding : 0,
    isChecked: context.isChecked && derived.problems.length > 0,
  };
}

function changed(context: AppContext, project: Project, typing: string | null = null): AppContext {
  const goesOn = typing !== null && typing === context.typing;
  const past = goesOn ? context.past : [...context.past, context.project].slice(-mostUndo);
  const { project: whole, settled } = settleSides(project);
  return { ...withProject({ ...context, preview: null }, whole), past, future: [], typing, settled };
}

/** A panel with more sides than were typed begins with the last number typed, so that its shape shows at once. */
function withAllSides(project: Project): Project {
  const texts = { ...project.texts };
  for (let side = 1; side < project.sideCount; side++)
    texts[`side.${side}`] ??= texts[`side.${side - 1}`] ?? '';
  return { ...project, texts };
}

/** What an event makes of the context. Pure; events that concern only the making change nothing here. */
export function after(context: AppContext, event: AppEvent): AppContext {
  const { project } = context;
  switch (event.type) {
    case 'TYPE':
      return changed(
        context,
        withTexts(project, { [event.field]: cleanField(event.field, event.text) }),
        event.field,
      );
    case 'CHANGE':
      return changed(context, withAllSides({ ...project, ...event.project, texts: project.texts }));
    case 'CLEAR_WORKED':
      return changed(context, { ...project, texts: withoutCounts(project.texts, 'worked') });
    case 'CLEAR_COUNTS':
      return changed(context, { ...project, texts: withoutCounts(project.texts) });
    case 'TAKE_SEEN': {
      const counts = writeCounts(event.seen, project, context.making.edge);
      const without = { ...project, texts: withoutCounts(project.texts), mishaps: [] };
      return changed(context, withTexts(without, counts));
    }
    case 'OPEN':
    case 'CHOOSE': {
      const next = changed(context, event.project);
      return 'anew' in event ? { ...next, past: [] } : next;
    }
    case 'PREVIEW':
      return previewed(context, event);
    case 'UNDO':
      return undone(context);
    case 'REDO':
      return redone(context);
    case 'CHECK':
      return { ...context, isChecked: context.derived.problems.length > 0, typing: null };
    case 'SETTLE': {
      const settings = { ...context.settings, ...event.settings };
      const { manner, easing } = context.settings;
      const next = { ...context, settings };
      return settings.manner === manner && settings.easing === easing ? next : withProject(next, project);
    }
    case 'SHOW':
      return { ...context, tab: event.tab, typing: null };
    case 'POINT':
      return { ...context, pointed: event.at };
    case 'LOOK_AT':
      return { ...context, finding: event.finding };
    default:
      return context;
  }
}

const withTexts = (project: Project, texts: Project['texts']): Project => ({
  ...project,
  texts: { ...project.texts, ...texts },
});

/** What mishaps would do, in place of those that are in; null ends it. */
function previewed(
  context: AppContext,
  { mishaps, project: other }: Extract<AppEvent, { type: 'PREVIEW' }>,
): AppContext {
  const { project, preview, walk } = context;
  const next = mishaps && { ...(preview ?? walk), project: other ?? { ...project, mishaps } };
  return withProject({ ...context, preview: next }, project);
}

function undone(context: AppContext): AppContext {
  const last = context.past.at(-1);
  if (!last) return context;
  const past = context.past.slice(0, -1);
  return goneTo(context, last, { past, future: [context.project, ...context.future] });
}

function redone(context: AppContext): AppContext {
  const [next, ...future] = context.future;
  if (!next) return context;
  return goneTo(context, next, { past: [...context.past, context.project], future });
}

function goneTo(
  context: AppContext,
  project: Project,
  history: Pick<AppContext, 'past' | 'future'>,
): AppContext {
  return { ...withProject({ ...context, preview: null }, project), ...history, typing: null, settled: [] };
}

/** Where the walk goes on: where the work was left that is opened, or before something was looked at. */
function placeAfter(event: AppEvent, { preview }: AppContext, next: AppContext): Partial<AppContext['walk']> {
  if (event.type === 'OPEN') return { place: event.place ?? 0, answered: event.answered ?? [] };
  return preview && !next.preview ? { place: preview.place, answered: preview.answered } : {};
}

/** Playing rests at a question and at the end. */
function rests({ context }: SnapshotFrom<typeof makingMachine>): boolean {
  return context.place >= context.steps.length - 1 || context.steps.at(context.place).asks !== undefined;
}

export const appMachine = setup({
  types: {} as { context: AppContext; events: AppEvent; input: AppInput; children: { making: 'making' } },
  actors: { making: makingMachine },
  delays: { pace: ({ context }) => context.settings.pace },
  guards: { mustRest: ({ context }) => context.mustRest },
  actions: {
    change: enqueueActions(({ context, event, enqueue }) => {
      const next = after(context, event);
      enqueue.assign(next);
      if (next.making === context.making) return;
      enqueue.sendTo('making', {
        type: 'TAKE',
        steps: next.making.steps,
        ...placeAfter(event, context, next),
      });
    }),
    walk: enqueueActions(({ event, enqueue }) => {
      if (event.type === 'NEXT' || event.type === 'BACK' || event.type === 'JUMP' || event.type === 'ANSWER')
        enqueue.sendTo('making', event);
    }),
    step: enqueueActions(({ enqueue }) => enqueue.sendTo('making', { type: 'NEXT' })),
    forgetPoint: assign({ pointed: null }),
  },
}).createMachine({
  id: 'app',
  context: ({ input }) => ({
    project: input.project,
    past: [],
    future: [],
    typing: null,
    settings: input.settings,
    tab: input.tab,
    isChecked: false,
    pointed: null,
    finding: 0,
    derived: input.derived,
    making: input.making,
    preview: null,
    settled: input.settled,
    walk: { place: input.place, answered: input.answered },
    mustRest: false,
  }),
  invoke: {
    id: 'making',
    src: 'making',
    input: ({ context: { making, walk } }) => ({ steps: making.steps, ...walk }),
    onSnapshot: {
      actions: assign(({ event: { snapshot } }) => ({
        mustRest: rests(snapshot),
        walk: { place: snapshot.context.place, answered: snapshot.context.answered },
      })),
    },
  },
  initial: 'resting',
  on: {
    TYPE: { actions: 'change' },
    CHANGE: { actions: 'change' },
    CLEAR_WORKED: { actions: 'change' },
    CLEAR_COUNTS: { actions: 'change' },
    PREVIEW: { actions: 'change' },
    TAKE_SEEN: { actions: 'change' },
    OPEN: { target: '.resting', actions: 'change' },
    UNDO: { actions: 'change' },
    REDO: { actions: 'change' },
    CHECK: { actions: 'change' },
    SETTLE: { actions: 'change' },
    SHOW: { actions: 'change' },
    POINT: { actions: 'change' },
    LOOK_AT: { actions: 'change' },
    CHOOSE: { actions: 'change' },
    NEXT: { target: '.resting', actions: ['forgetPoint', 'walk'] },
    BACK: { target: '.resting', actions: ['forgetPoint', 'walk'] },
    JUMP: { target: '.resting', actions: ['forgetPoint', 'walk'] },
    ANSWER: { target: '.resting', actions: ['forgetPoint', 'walk'] },
  },
  states: {
    resting: { on: { PLAY: 'playing' } },
    playing: {
      always: { guard: 'mustRest', target: 'resting' },
      after: { pace: { target: 'playing', reenter: true, actions: ['forgetPoint', 'step'] } },
      on: { STOP: 'resting' },
    },
  },
});
