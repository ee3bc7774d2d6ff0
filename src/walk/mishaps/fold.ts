/** The fold in which mishaps are played with. What is in it is fetched when it is first opened. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Send, Snapshot } from '../../state/snapshot.ts';
import type { Chosen } from './chosen.ts';

type Fetched = typeof import('./panel.ts');

/** `onChange` asks for a new rendering where the snapshot is the same. */
export function mishapsFold(
  onChange: () => void,
  fetchPanel: () => Promise<Fetched> = () => import('./panel.ts'),
): (snapshot: Snapshot, send: Send) => TemplateResult {
  let fetched: Fetched | null = null;
  let state: 'unasked' | 'coming' | 'missing' = 'unasked';
  let chosen: Chosen | null = null;
  let open = false;

  const ask = (): void => {
    if (fetched || state === 'coming') return;
    state = 'coming';
    onChange();
    fetchPanel()
      .then((panel) => {
        fetched = panel;
      })
      .catch(() => {
        state = 'missing';
      })
      .finally(onChange);
  };
  const toggle = (event: Event): void => {
    open = (event.target as HTMLDetailsElement).open;
    onChange();
    if (open) ask();
  };
  const inside = (snapshot: Snapshot, send: Send): TemplateResult => {
    if (fetched)
      return fetched.mishapsPanel(snapshot, send, chosen ?? fetched.nothingChosen, (next) => {
        chosen = next;
        onChange();
      });
    if (state === 'missing')
      return html`<p>This part could not be fetched.</p>
        <button type="button" class="button" @click=${ask}>Try again</button>`;
    return html`<p class="muted">One moment.</p>`;
  };
  return (snapshot, send) => {
    const count = snapshot.project.mishaps.length;
    return html`<details class="fold mishaps-fold" .open=${open} @toggle=${toggle}>
      <summary>Put in a mishap and see${count > 0 ? html` <span class="tag">${count} in</span>` : nothing}</summary>
      ${open ? inside(snapshot, send) : nothing}
    </details>`;
  };
}
