/** Where the lesson on the screen stands: the tab's own, so that a reload leads back into it. */
import { readLessonPlace } from '../input/lesson-progress.ts';
import type { LessonPlace } from '../state/lesson-progress.ts';

const key = 'ringtrue.lesson';

export function keepLessonPlace(place: LessonPlace | null): void {
  try {
    if (place) sessionStorage.setItem(key, JSON.stringify(place));
    else sessionStorage.removeItem(key);
  } catch {
    // Where the tab keeps nothing, a reload leads back to the work.
  }
}

export function keptLessonPlace(): LessonPlace | null {
  try {
    return readLessonPlace(sessionStorage.getItem(key));
  } catch {
    return null;
  }
}
