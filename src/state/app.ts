/**
 * The app's machine: the project with its undo, the settings, and playing. The making is a child of it.
 *
 * One direction: events come in here, the making is told, the store puts both snapshots together.
 * The only clock is here: playing sends the making one NEXT after another.
 */
import { assign, enqueueActions, type SnapshotFrom, setup } from 'xstate';
import { type MakingInput, makingMachine } from '../making/machine.ts';
import { textsOfSeen, withoutWorked } from './counts.ts';
import { derive } from './derive.ts';
import type { AppProblem } from './problem.ts';
import type { AppEvent, Making, Pointed, Project, Settings, Tab } from './snapshot.ts';

export type AppContext = {
  project: Project;
  past: readonly Project[];
  future: readonly Project[];
  /** The field whose typing the last entry of `past` holds off: one undo takes back one field's typing. */
  typing: string | null;
  settings: Settings;
  tab: Tab;
  told: boolean;
  pointed: Pointed | null;
  making: Making;
  problems: readonly AppProblem[];
  /** The making stands where playing must rest. */
  mustRest: boolean;
};

export type AppInput = {
  project: Project;
  settings: Settings;
  tab: Tab;
  making: Making;
  problems: readonly AppProblem[];
  place: number;
  answered: MakingInput['answered'];
};

const mostUndo = 200;

/** The context once the project is another: derived anew, the last good making kept where that fails. */
export function withProject(context: AppContext, project: Project): AppContext {
  const derived = derive(project, context.settings);
  return {
    ...context,
    project,
    making: derived.ok ? derived.value : context.making,
    problems: derived.ok ? [] : derived.problems,
    told: context.told && !derived.ok,
  };
}

function changed(context: AppContext, project: Project, typing: string | null): AppContext {
  const goesOn = typing !== null && typing === context.typing;
  const past = goesOn ? context.past : [...context.past, context.project].slice(-mostUndo);
  return { ...withProject(context, project), past, future: [], typing };
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
        { ...project, texts: { ...project.texts, [event.field]: event.text } },
        event.field,
      );
    case 'CHANGE':
      return changed(context, withAllSides({ ...project, ...event.project, texts: project.texts }), null);
    case 'CLEAR_WORKED':
      return changed(context, { ...project, texts: withoutWorked(project.texts), mishaps: [] }, null);
    case 'TAKE_SEEN':
      return changed(
        context,
        {
          ...project,
          texts: {
            ...withoutWorked(project.texts),
            ...textsOfSeen(event.seen, project, context.making.edge),
          },
          mishaps: [],
        },
        null,
      );
    case 'OPEN':
      return changed(context, event.project, null);
    case 'UNDO':
      return undone(context);
    case 'REDO':
      return redone(context);
    case 'CHECK':
      return { ...context, told: context.problems.length > 0, typing: null };
    case 'SETTLE':
      return withProject({ ...context, settings: { ...context.settings, ...event.settings } }, project);
    case 'SHOW':
      return { ...context, tab: event.tab, typing: null };
    case 'POINT':
      return { ...context, pointed: event.at };
    default:
      return context;
  }
}

function undone(context: AppContext): AppContext {
  const last = context.past.at(-1);
  if (!last) return context;
  const past = context.past.slice(0, -1);
  return { ...withProject(context, last), past, future: [context.project, ...context.future], typing: null };
}

function redone(context: AppContext): AppContext {
  const [next, ...future] = context.future;
  if (!next) return context;
  return { ...withProject(context, next), past: [...context.past, context.project], future, typing: null };
}

/** Playing rests at a question and at the end. */
function rests({ context }: SnapshotFrom<typeof makingMachine>): boolean {
  return context.place >= context.steps.length - 1 || context.steps.at(context.place).asks !== undefined;
}

export const appMachine = setup({
  types: {} as { context: AppContext; events: AppEvent; input: AppInput },
  actors: { making: makingMachine },
  delays: { pace: ({ context }) => context.settings.pace },
  guards: { mustRest: ({ context }) => context.mustRest },
  actions: {
    change: enqueueActions(({ context, event, enqueue }) => {
      const next = after(context, event);
      enqueue.assign(next);
      if (next.making === context.making) return;
      const place = event.type === 'OPEN' ? { place: event.place ?? 0, answered: event.answered ?? [] } : {};
      enqueue.sendTo('making', { type: 'TAKE', steps: next.making.steps, ...place });
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
    told: false,
    pointed: null,
    making: input.making,
    problems: input.problems,
    mustRest: false,
  }),
  invoke: {
    id: 'making',
    src: 'making',
    input: ({ context, event }) => makingInput(context, event),
    onSnapshot: { actions: assign({ mustRest: ({ event }) => rests(event.snapshot) }) },
  },
  initial: 'resting',
  on: {
    TYPE: { actions: 'change' },
    CHANGE: { actions: 'change' },
    CLEAR_WORKED: { actions: 'change' },
    TAKE_SEEN: { actions: 'change' },
    OPEN: { target: '.resting', actions: 'change' },
    UNDO: { actions: 'change' },
    REDO: { actions: 'change' },
    CHECK: { actions: 'change' },
    SETTLE: { actions: 'change' },
    SHOW: { actions: 'change' },
    POINT: { actions: 'change' },
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

function makingInput(context: AppContext, event: unknown): MakingInput {
  // The machine's own first event carries its input: where the making was left.
  const given = (event as { input?: AppInput }).input;
  return { steps: context.making.steps, place: given?.place ?? 0, answered: given?.answered ?? [] };
}
