/** To the field a message is about, wherever in the app it is. */
import { rowOf } from '../state/fields.ts';
import type { Field, Send, Snapshot } from '../state/snapshot.ts';
import { fieldId } from './fields.ts';

/** Frames to wait for a place of the app to be drawn; its parts may still have to be fetched. */
const MOST_FRAMES = 120;

/** Shows the place that has the field if this one has not, opens the folds it lies in, and puts the focus there. */
export function goToField(field: Field, { tab }: Pick<Snapshot, 'tab'>, send: Send): void {
  const tabs = rowOf(field)?.tabs ?? [tab];
  if (!tabs.includes(tab)) send({ type: 'SHOW', tab: tabs[0] });
  focusOnceThere(fieldId(field), MOST_FRAMES);
}

function focusOnceThere(id: string, frames: number): void {
  const found = document.getElementById(id);
  if (found) focusInside(found);
  else if (frames > 0) requestAnimationFrame(() => focusOnceThere(id, frames - 1));
}

function focusInside(element: HTMLElement): void {
  for (let fold = element.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null)
    fold.open = true;
  element.focus({ preventScroll: true });
  element.scrollIntoView({ block: 'center' });
}
