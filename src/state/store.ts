/** Puts the app and the making together into one snapshot, and tells those who listen when it is another. */
import { createActor, type SnapshotFrom } from 'xstate';
import type { makingMachine } from '../making/machine.ts';
import { placeToldLater } from '../making/moving.ts';
import { appMachine } from './app.ts';
import type { Cloth } from './cloth-types.ts';
import { derive } from './derive.ts';
import { example } from './project.ts';
import { settleSides } from './settle.ts';
import type { AppEvent, Project, Settings, Snapshot, Tab } from './snapshot.ts';

export type Start = {
  project: Project;
  settings: Settings;
  tab: Tab;
  place: number;
  /** The place was kept when the walk told fewer steps. */
  fewerSteps?: true;
  answered: Snapshot['answered'];
};

export type Store = {
  snapshot(): Snapshot;
  send(event: AppEvent): void;
  /** Called after every change, once an event. Gives back how to stop. */
  subscribe(listener: (snapshot: Snapshot) => void): () => void;
  /** Takes what reads the cloth, once it is there. */
  learnCloth(read: ClothReader): void;
  stop(): void;
};

export type ClothReader = (snapshot: Pick<Snapshot, 'project' | 'settings' | 'making'>) => Cloth;

type MakingSnapshot = SnapshotFrom<typeof makingMachine>;

export function openStore(start: Start): Store {
  const { project, settled } = settleSides(start.project);
  const own = derive(project, start.settings);
  // A project that cannot be read just now still shows a drawing: the example's.
  const derived = own.making ? own : derive(project, start.settings, derive(example, start.settings));
  const { making } = derived;
  if (!making) throw new Error('The example must always be readable');
  const place = start.fewerSteps ? placeToldLater(making.steps, start.place) : start.place;
  const actor = createActor(appMachine, { input: { ...start, place, project, settled, derived, making } });
  const listeners = new Set<(snapshot: Snapshot) => void>();
  actor.start();
  const child = actor.getSnapshot().children.making;
  if (!child) throw new Error('The making is begun with the app');
  let readCloth: ClothReader | null = null;
  let current = compose(actor.getSnapshot(), child.getSnapshot(), readCloth);
  let told: { app: unknown; making: unknown } = { app: null, making: null };
  let sending = false;
  const refresh = (): void => {
    // An event may change both machines: it is told once, when both have done with it.
    if (sending) return;
    const app = actor.getSnapshot();
    const walk = child.getSnapshot();
    // Between the app's change and the making's both would not fit together: wait for the second.
    if (app.context.making.steps !== walk.context.steps) return;
    if (told.app === app && told.making === walk) return;
    told = { app, making: walk };
    current = compose(app, walk, readCloth);
    for (const listener of listeners) listener(current);
  };
  actor.subscribe(refresh);
  child.subscribe(refresh);
  return {
    snapshot: () => current,
    send: (event) => {
      sending = true;
      try {
        actor.send(event);
      } finally {
        sending = false;
      }
      refresh();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    learnCloth: (read) => {
      readCloth = read;
      told = { app: null, making: null };
      refresh();
    },
    stop: () => actor.stop(),
  };
}

function compose(
  app: SnapshotFrom<typeof appMachine>,
  walk: MakingSnapshot,
  readCloth: ClothReader | null,
): Snapshot {
  const { context } = app;
  return {
    project: context.project,
    settings: context.settings,
    problems: context.derived.problems,
    unfit: context.derived.unfit,
    isChecked: context.isChecked,
    isStale: context.derived.isStale,
    making: context.making,
    preview: context.preview && {
      mishaps: context.preview.project.mishaps,
      place: context.preview.place,
      answered: context.preview.answered,
    },
    settled: context.settled,
    tab: context.tab,
    place: walk.context.place,
    step: walk.context.steps.at(walk.context.place),
    stage: pathOf(walk.value),
    answered: walk.context.answered,
    playing: app.value === 'playing',
    canUndo: context.past.length > 0,
    canRedo: context.future.length > 0,
    cloth: readCloth?.(context) ?? null,
    pointed: context.pointed,
    finding: context.finding,
  };
}

/** A machine's value as a path: `{ join: 'side' }` → `join.side`. */
function pathOf(value: unknown): string {
  if (typeof value === 'string') return value;
  const [parent, child] = Object.entries(value as Record<string, unknown>)[0] ?? ['', ''];
  return `${parent}.${pathOf(child)}`;
}
