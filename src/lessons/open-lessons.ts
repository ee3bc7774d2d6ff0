/**
 * The lessons, on a sheet of their own over the work. Fetched when they are first opened; what has been learnt is
 * kept on the device beside the work, and the work itself stays as it is.
 */
import { html, render } from 'lit-html';
import { readProgressText } from '../input/lesson-progress.ts';
import type { Store as Device } from '../keep/device.ts';
import { keepLessonPlace, keptLessonPlace } from '../keep/lesson-place.ts';
import type { Progress } from '../state/lesson-progress.ts';
import type { Store } from '../state/store.ts';
import type { Lessons } from './index.ts';
import { together } from './progress.ts';

const key = 'ringtrue.lessons';

/** The person's day, `YYYY-MM-DD`, by the clock on the wall. */
function today(): string {
  const now = new Date();
  const two = (value: number): string => `${value}`.padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function readText(device: Device | null): string | null {
  try {
    return device?.getItem(key) ?? null;
  } catch {
    return null;
  }
}

/** Another tab may have kept more meanwhile: nothing learnt is lost. */
function keepProgress(device: Device | null, progress: Progress): void {
  try {
    device?.setItem(key, JSON.stringify(together(readProgressText(readText(device)), progress)));
  } catch {
    // A full device is told of where the work itself is kept.
  }
}

/** Gives back what opens the lessons. */
export function offerLessons(store: Store, device: Device | null): () => Promise<void> {
  let sheet: HTMLDialogElement | null = null;
  let lessons: Lessons | null = null;
  let fetched: typeof import('./index.ts') | null = null;
  let begun: Promise<void> | null = null;

  const draw = (): void => {
    if (!sheet || !lessons || !fetched) return;
    const view = lessons.view(store.snapshot().settings);
    const held = sheet.contains(document.activeElement);
    render(
      html`<div class="sheet-head">
          <h2 id="lessons-heading">Lessons</h2>
          <button type="button" class="button small" @click=${() => sheet?.close()}>Back to your work</button>
        </div>
        ${fetched.lessonsPanel(view, lessons.send, turn)}`,
      sheet,
    );
    // What was pressed is gone: the first thing to press now takes its place.
    if (held && !sheet.contains(document.activeElement))
      sheet.querySelector<HTMLElement>('[data-first]')?.focus({ preventScroll: true });
  };
  /** The drawing of the whole comes to the eye, and the back turns: off the front, or onto it. */
  const turn = (): void => {
    sheet?.close();
    document.getElementById('view-whole')?.click();
    const { arrangement } = store.snapshot().settings;
    store.send({
      type: 'SETTLE',
      settings: { arrangement: arrangement === 'together' ? 'apart' : 'together' },
    });
  };
  const begin = async (): Promise<void> => {
    fetched = await import('./index.ts');
    const made = fetched.createLessons({
      progress: readProgressText(readText(device)),
      place: keptLessonPlace(),
      today,
      onChange: () => {
        if (lessons) {
          keepProgress(device, lessons.progress());
          // A movement may still run once the lesson was left: that is no place to come back to.
          if (sheet?.open) keepLessonPlace(lessons.place());
        }
        draw();
      },
    });
    lessons = made;
    sheet = document.createElement('dialog');
    sheet.className = 'sheet sheet-lessons';
    sheet.setAttribute('aria-labelledby', 'lessons-heading');
    sheet.addEventListener('close', () => keepLessonPlace(null));
    document.body.append(sheet);
    store.subscribe(draw);
  };
  return () => {
    // Pressed again while they are being fetched, they are not begun twice.
    begun ??= begin();
    return begun.then(() => {
      draw();
      if (!sheet || sheet.open) return;
      sheet.showModal();
      if (lessons) keepLessonPlace(lessons.place());
    });
  };
}
