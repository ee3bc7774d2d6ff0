/** Puts the panels on the page and keeps them true: one rendering for any number of changes in a frame. */
import { render } from 'lit-html';
import { fieldId } from '../controls/fields.ts';
import { PANEL_ID, QUESTION_ID } from '../controls/ids.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { openQuestion } from '../walk/open-question.ts';
import { PROBLEM_PREFIX } from '../words/problems-view.ts';
import { announcer } from './announcer.ts';
import { type Rect, regionRects, TABLE_ID, type TableControls, type ViewId } from './drawing/table-region.ts';
import { type Slots, shell } from './shell.ts';

export type PanelsHost = {
  /** Calls back on every change; answers how to stop. */
  subscribe(listener: () => void): () => void;
  snapshot(): Snapshot;
  send: Send;
  /** A part could not be fetched. */
  onMissing?(): void;
} & Partial<Omit<Slots, 'later'>>;

export type Panels = {
  /** Where the canvas goes. */
  table: HTMLElement;
  /** Where the two views lie on it, in CSS px; zero wide where one is not shown. */
  regions(): Record<ViewId, Rect>;
  /** Calls back when the views may lie elsewhere: after a resize and after a change of tab. */
  onRegions(listener: () => void): () => void;
  /** The drawing is ready: its buttons act on this from now on. */
  connect(controls: TableControls): void;
  /** What the first look does not need has come too, or will not. */
  complete: Promise<void>;
  stop(): void;
};

export function mountPanels(root: HTMLElement, host: PanelsHost): Panels {
  let controls: TableControls | null = null;
  const slots: Slots = { ...host, controls: () => controls ?? host.controls?.() ?? null, later: null };
  const regionListeners = new Set<() => void>();
  const voice = announcer(document.body);
  let shown = host.snapshot();
  let frame = 0;

  const draw = (): void => {
    frame = 0;
    const now = host.snapshot();
    const held = root.contains(document.activeElement);
    render(shell(now, host.send, slots), root);
    setTitle(now);
    followQuestion(shown, now);
    // What was pressed is gone: the keyboard goes on from the panel.
    if (held && !root.contains(document.activeElement))
      document.getElementById(PANEL_ID)?.focus({ preventScroll: true });
    const message = now.playing ? '' : slots.later?.sayChange(shown, now);
    if (message) voice.say(message);
    if (shown.tab !== now.tab) for (const listener of regionListeners) listener();
    shown = now;
  };
  let stopped = false;
  const drawSoon = (): void => {
    frame ||= requestAnimationFrame(draw);
  };

  root.replaceChildren();
  draw();
  focusFirst(shown);
  let stopKeys = (): void => {};
  const complete = import('./later.ts')
    .then(({ openLater, listenToKeys }) => {
      if (stopped) return;
      stopKeys = listenToKeys(host.snapshot, host.send);
      slots.later = openLater(host.snapshot(), drawSoon, () => host.openLessons?.());
      drawSoon();
    })
    .catch(() => host.onMissing?.());
  const stopListening = host.subscribe(() => {
    slots.later?.follow(host.snapshot());
    drawSoon();
  });
  const stopNotices = host.notices?.subscribe(drawSoon);
  const sizes = new ResizeObserver(() => {
    for (const listener of regionListeners) listener();
  });
  for (const region of root.querySelectorAll('[data-region], #table')) sizes.observe(region);

  return {
    table: root.querySelector(`#${TABLE_ID}`) as HTMLElement,
    regions: () => regionRects(root),
    onRegions: (listener) => {
      regionListeners.add(listener);
      return () => regionListeners.delete(listener);
    },
    connect: (table) => {
      controls = table;
      drawSoon();
    },
    complete,
    stop: () => {
      stopped = true;
      cancelAnimationFrame(frame);
      slots.later?.stop();
      stopListening();
      stopNotices?.();
      stopKeys();
      sizes.disconnect();
      voice.stop();
    },
  };
}

/** A question takes the focus when the walk comes to it; Next is gone meanwhile. */
function followQuestion(before: Snapshot, now: Snapshot): void {
  if (openQuestion(now) === null || openQuestion(before) !== null || now.tab !== 'walk') return;
  const held = document.activeElement;
  if (held === document.body || held?.closest('[data-keys="walk"]'))
    document.getElementById(QUESTION_ID)?.focus();
}

function setTitle({ isChecked, problems }: Snapshot): void {
  document.title = isChecked && problems.length > 0 ? `${PROBLEM_PREFIX}Ringtrue` : 'Ringtrue';
}

/** With a mouse the first number is ready to be typed over; on a touch screen a keyboard would hide the page. */
function focusFirst({ tab }: Snapshot): void {
  if (tab !== 'edge' || !matchMedia('(hover: hover) and (pointer: fine)').matches) return;
  const field = document.getElementById(fieldId('side.0')) as HTMLInputElement | null;
  field?.focus({ preventScroll: true });
  field?.select();
}
