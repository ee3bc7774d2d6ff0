/** What the page does beside showing the work: keeps it, and opens the panels and the lessons. Fetched after the first look. */
import type { Store as Simple } from './keep/device.ts';
import type { Opened } from './keep/keep-types.ts';
import { keptLessonPlace } from './keep/lesson-place.ts';
import type { offerWaysOn } from './keep/sent.ts';
import { watchOver } from './keep/watch.ts';
import type { Store } from './state/store.ts';
import type { Notice } from './words/notices.ts';

/** What came with the address: a panel that is not kept yet, or why there is none; and what was kept and cannot be read. */
export type Sent = { offerWaysOn?: typeof offerWaysOn; notice?: Notice; aside?: string | null };

export type Cares = {
  notify: (notice: Notice) => void;
  onMissing: () => void;
  /** What kept the work so far, and how things stood when the page opened. */
  early: Opened & { stop(): void };
  sent: Sent;
};

export type LookedAfter = {
  /** The work is kept from now on, and all that was to come has come. */
  ready: Promise<unknown>;
  openLessons(): Promise<unknown>;
  openPanels(file?: File): Promise<unknown>;
};

export function lookAfter(store: Store, device: Simple | null, cares: Cares): LookedAfter {
  const { notify, onMissing, early, sent } = cares;
  let lessons: Promise<() => Promise<void>> | null = null;
  const saveText = (text: string, name: string): unknown =>
    import('./take-along/save.ts')
      .then(({ saveFile }) => saveFile(text, 'application/json', name))
      .catch(onMissing);
  const openPanels = (file?: File): Promise<unknown> =>
    Promise.all([import('./panels/open-panels.ts'), keeping])
      .then(([part, kept]) => part.openPanels(store, kept, file))
      .catch(onMissing);
  const keeping = watchOver(store, device, { notify, early, sent, saveText, openPanels });
  const openLessons = (): Promise<unknown> => {
    lessons ??= import('./lessons/open-lessons.ts').then(({ offerLessons }) => offerLessons(store, device));
    return lessons.then((open) => open()).catch(onMissing);
  };
  if (keptLessonPlace()) void openLessons();
  if (sent.notice) notify(sent.notice);
  // Not before: a first keeping takes whatever the store tells for a change.
  const cloth = Promise.all([import('./state/cloth.ts'), keeping.catch(() => {})])
    .then(([{ clothOfSnapshot }]) => store.learnCloth(clothOfSnapshot))
    .catch(onMissing);
  return {
    ready: Promise.all([keeping, cloth]),
    openPanels,
    openLessons,
  };
}
