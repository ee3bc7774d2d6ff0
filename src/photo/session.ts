/** Counting one side on a photo: what is held, what every act does, and what is kept of it. */
import type { KeptPhoto } from '../input/kept-photo.ts';
import type { Field, Send, Snapshot } from '../state/snapshot.ts';
import { photoWords } from '../words/photo.ts';
import {
  afterCounting,
  alongOf,
  begun,
  type CountingEvent,
  lineOf,
  lookedAlong,
  openStretch,
  savesNothing,
} from './counting.ts';
import { problemOf } from './file.ts';
import { forgetPhoto, keepPhoto, keptPhoto } from './kept.ts';
import { photoThread, startThread } from './thread.ts';
import { type Acts, pitchIn, type View } from './view.ts';

export type Session = Acts & {
  view(): View;
  /** Takes a photo in; one that was there goes, with its marks, once the new one could be read. */
  take(file: File): void;
  propose(): void;
  /** Ends the comparing at once. */
  stop(): void;
  lookOver(): void;
  forget(): void;
  /** What was put into the field. */
  counted(text: string): void;
  end(): void;
};

/** Milliseconds after the last change until it is kept. */
const keepAfter = 400;

type Of = { field: Field; name: string; snapshot: Snapshot; send: Send };

/** @param onChange asks for a new drawing */
export function openSession(of: Of, onChange: () => void): Session {
  const thread = photoThread(startThread);
  let photo: Blob | null = null;
  let timer = 0;
  let stripOf: unknown = null;
  let view: View = {
    ...of,
    photo: null,
    isReading: true,
    problem: null,
    counting: begun(),
    strip: null,
    inHand: null,
    cross: null,
    place: 0,
    zoom: 0,
    left: 0,
    width: 320,
    progress: null,
    said: '',
    counted: null,
    panel: of.snapshot.project.name,
  };
  const change = (part: Partial<View>): void => {
    view = { ...view, ...part };
    onChange();
  };
  const keepNow = async (): Promise<void> => {
    clearTimeout(timer);
    timer = 0;
    if (!photo) return;
    const { counting, counted, panel } = view;
    const { through, marks } = counting.now;
    const kept: KeptPhoto = {
      photo,
      ...counting.now,
      through: [...through],
      marks: [...marks],
      counted,
      panel,
    };
    if (!(await keepPhoto(of.field, kept))) change({ said: photoWords.notKept });
  };
  const keepSoon = (): void => {
    clearTimeout(timer);
    timer = window.setTimeout(keepNow, keepAfter);
  };

  const open = async (next: Blob, kept: KeptPhoto | null): Promise<void> => {
    change({ isReading: true, problem: null, said: '' });
    const answer = await thread.open(next);
    if (answer.kind !== 'opened') {
      // One that was there stays: only the new file is refused.
      if (photo) await thread.open(photo).then((old) => 'picture' in old && old.picture.close());
      return change({ isReading: false, problem: 'broken' });
    }
    photo = next;
    stripOf = null;
    change({
      isReading: false,
      photo: answer,
      counting: begun(kept ?? undefined),
      strip: null,
      inHand: null,
      cross: null,
      place: 0,
      left: 0,
      zoom: 0,
      counted: kept?.counted ?? null,
      panel: kept?.panel ?? of.snapshot.project.name,
    });
    change({ left: -pitchIn(view) });
    straighten();
    if (!kept) keepSoon();
  };
  /** The strip for the line as it is now; asked for once a line. */
  const straighten = async (): Promise<void> => {
    const { through } = view.counting.now;
    const line = lineOf({ through });
    if (!line || stripOf === through) return;
    stripOf = through;
    const half = Math.round(Math.max(24, Math.min(420, line.length / 20)));
    const answer = await thread.ask({ kind: 'strip', through, half });
    if (answer?.kind !== 'strip') return;
    if (stripOf === through) change({ strip: answer });
    else answer.picture.close();
  };
  const stop = (): void => {
    thread.callOff();
    change({ progress: null, said: photoWords.stopped });
  };
  const propose = async (): Promise<void> => {
    if (view.progress !== null) return;
    const { now } = view.counting;
    change({ progress: 0, said: '' });
    const along = alongOf(now);
    const marks = along.filter((_, i) => !now.marks[i]?.isProposed);
    const ask = { kind: 'propose', through: now.through, marks, lookedTo: lookedAlong(now) } as const;
    const answer = await thread.ask(ask, (done) => view.progress !== null && change({ progress: done }));
    // Called off, or something else was marked meanwhile.
    if (view.progress === null) return;
    if (answer?.kind !== 'proposed') return change({ progress: null, said: photoWords.stopped });
    change({ progress: null });
    if (view.counting.now !== now) return;
    act(answer.places.length > 0 ? { type: 'PROPOSE', places: answer.places } : { type: 'DROP_PROPOSED' });
    if (answer.places.length === 0) return change({ said: photoWords.nothingLeft });
    if (!answer.isAlike) change({ said: photoWords.onlyEvenly });
    showStretch();
  };
  /** The stretch to look over comes into sight. */
  const showStretch = (): void => {
    const stretch = openStretch(view.counting.now);
    const first = stretch && alongOf(view.counting.now)[stretch.from];
    if (typeof first === 'number') change({ left: first - 0.8 * pitchIn(view), place: first, zoom: 0 });
  };
  const act = (event: CountingEvent): void => {
    const counting = afterCounting(view.counting, event);
    if (counting === view.counting) return;
    const { through } = counting.now;
    const inHand = view.inHand !== null && view.inHand < through.length ? view.inHand : null;
    const isLaid = lineOf(view.counting.now) === null && through.length > 1;
    change({ counting, inHand, said: '' });
    if (isLaid) change({ left: -pitchIn(view) });
    straighten();
    keepSoon();
  };

  keptPhoto(of.field).then((kept) => {
    if (kept) open(kept.photo, kept);
    else change({ isReading: false });
  });

  return {
    view: () => view,
    act,
    change,
    take: (file) => {
      const problem = problemOf(file);
      if (problem) change({ problem });
      else open(file, null);
    },
    propose,
    stop,
    lookOver: () => {
      const { righted } = view.counting.now;
      const size = openStretch(view.counting.now)?.size ?? 0;
      act({ type: 'LOOK_OVER' });
      if (!openStretch(view.counting.now)) return;
      if (savesNothing(righted, size)) {
        act({ type: 'DROP_PROPOSED' });
        change({ said: photoWords.savesNothing });
      } else if (righted > 0) propose();
      else showStretch();
    },
    forget: async () => {
      clearTimeout(timer);
      photo = null;
      thread.callOff();
      const isGone = await forgetPhoto(of.field);
      view.photo?.picture.close();
      change({
        photo: null,
        strip: null,
        counting: begun(),
        counted: null,
        progress: null,
        problem: null,
        said: isGone ? photoWords.forgotten : photoWords.notForgotten,
      });
    },
    counted: (text) => {
      change({ counted: text });
      keepNow();
    },
    end: () => {
      if (timer) keepNow();
      thread.callOff();
      view.photo?.picture.close();
      view.strip?.picture.close();
    },
  };
}
