/**
 * The fold in which mishaps are played with. What is in it is fetched when it is first opened; the fold itself
 * costs the first look next to nothing.
 */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Send, Snapshot } from '../../state/snapshot.ts';
import type { Chosen } from './panel.ts';

type Fetched = typeof import('./panel.ts');

export type MishapsSlot = {
  panel: (snapshot: Snapshot, send: Send) => TemplateResult;
  /** Calls back when the fold has to be drawn anew although the state is the same. */
  subscribe(listener: () => void): () => void;
};

export function mishapsSlot(fetchPanel: () => Promise<Fetched> = () => import('./panel.ts')): MishapsSlot {
  const listeners = new Set<() => void>();
  let fetched: Fetched | null = null;
  let state: 'unasked' | 'coming' | 'missing' = 'unasked';
  let chosen: Chosen | null = null;
  let open = false;
  const redraw = (): void => {
    for (const listener of listeners) listener();
  };
  const ask = (): void => {
    if (fetched || state === 'coming') return;
    state = 'coming';
    redraw();
    fetchPanel()
      .then((module) => {
        fetched = module;
      })
      .catch(() => {
        state = 'missing';
      })
      .finally(redraw);
  };
  const toggle = (event: Event): void => {
    open = (event.target as HTMLDetailsElement).open;
    redraw();
    if (open) ask();
  };
  const inside = (snapshot: Snapshot, send: Send): TemplateResult => {
    if (fetched)
      return fetched.mishapsPanel(snapshot, send, chosen ?? fetched.nothingChosen, (next) => {
        chosen = next;
        redraw();
      });
    if (state === 'missing')
      return html`<p>This part could not be fetched.</p>
        <button type="button" class="button" @click=${ask}>Try again</button>`;
    return html`<p class="muted">One moment.</p>`;
  };
  return {
    panel: (snapshot, send) => {
      const count = snapshot.project.mishaps.length;
      return html`<details class="fold mishaps-fold" .open=${open} @toggle=${toggle}>
        <summary>Put in a mishap and see${count > 0 ? html` <span class="tag">${count} in</span>` : nothing}</summary>
        ${open ? inside(snapshot, send) : nothing}
      </details>`;
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
