/** One panel in the list: its drawing, its name to be typed over, and what can be done with it. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Hand, Project } from '../state/snapshot.ts';
import type { Start } from '../state/store.ts';
import { panelsSay as say, sayChanged, sayCounts, sayDeleted, sayName } from '../words/panels.ts';
import type { Listed } from './listed.ts';
import { smallDrawing } from './small-drawing.ts';

export type ItemActs = {
  open(): void;
  rename(name: string): void;
  copy(): void;
  save(): void;
  /** Hands out what cannot be read, as it is. */
  saveText(): void;
  remove(): void;
};

const countsOf = ({ sideCount, texts }: Project): string =>
  sayCounts(
    sideCount,
    Array.from({ length: Math.max(1, sideCount) }, (_, side) => texts[`side.${side}`] ?? ''),
  );

/** Where the field does not grow with its text by itself. */
const rowsOf = (name: string): number => Math.max(1, Math.ceil(name.length / 22));

/** A name has one line: Enter ends it. */
function leaveOnEnter(event: KeyboardEvent): void {
  if (event.key !== 'Enter') return;
  event.preventDefault();
  (event.target as HTMLElement).blur();
}

/** @param isWhole all that can be done with a panel can be done just now */
export function panelItem(
  { work, changed, isInHand }: Listed & { work: Start },
  { acts, hand, isWhole }: { acts: ItemActs; hand: Hand; isWhole: boolean },
): TemplateResult {
  const { project } = work;
  const name = sayName(project.name);
  const button = (says: string, act: () => void): TemplateResult =>
    html`<button type="button" class="button" aria-label=${`${says}: ${name}`} @click=${act}>${says}</button>`;
  const told = [countsOf(project), isInHand ? '' : sayChanged(changed, Date.now())]
    .filter(Boolean)
    .join(' · ');
  return html`<li class="shelf-panel">
    ${smallDrawing(project, hand)}
    <div class="shelf-words">
      <textarea class="shelf-name" aria-label=${say.name} autocomplete="off" spellcheck="false" rows=${rowsOf(name)} .value=${project.name}
        placeholder=${say.unnamed} @keydown=${leaveOnEnter}
        @change=${(event: Event) => acts.rename((event.target as HTMLTextAreaElement).value)}></textarea>
      <p class="muted">${told}${isInHand ? html` <span class="tag">${say.inHand}</span>` : nothing}</p>
    </div>
    <div class="shelf-acts">
      ${isWhole && !isInHand ? button(say.open, acts.open) : nothing}
      ${isWhole ? html`${button(say.copy, acts.copy)} ${button(say.save, acts.save)} ${button(say.remove, acts.remove)}` : nothing}
    </div>
  </li>`;
}

/** What this version cannot read: handed out as it is. */
export const unreadItem = ({ saveText, remove }: ItemActs): TemplateResult =>
  html`<li class="shelf-panel is-unread"><p>${say.unread}</p>
    <div class="shelf-acts">
      <button type="button" class="button" @click=${saveText}>${say.saveThis}</button>
      <button type="button" class="button" @click=${remove}>${say.remove}</button>
    </div></li>`;

export const deletedItem = (name: string, undo: () => void): TemplateResult =>
  html`<li class="shelf-panel is-gone"><p>${sayDeleted(name)}</p>
    <button type="button" class="button" aria-label=${`${say.undo}: ${sayDeleted(name)}`} @click=${undo}>${say.undo}</button></li>`;
