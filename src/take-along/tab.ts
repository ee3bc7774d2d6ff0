/** The panel of "Take along". It and its styles are fetched when the tab is first shown. */
import { html, type TemplateResult } from 'lit-html';
import type { Send, Snapshot } from '../state/snapshot.ts';

type Panel = (snapshot: Snapshot, send: Send) => TemplateResult;
type Fetched = { openTakeAlong: (onChange: () => void) => Panel };

/** `onChange` asks for a new rendering where the snapshot is the same. */
export function takeAlongTab(
  onChange: () => void,
  fetchPanel: () => Promise<Fetched> = () => import('./panel.ts'),
): Panel {
  let panel: Panel | null = null;
  let state: 'unasked' | 'coming' | 'missing' = 'unasked';
  const ask = (): void => {
    state = 'coming';
    fetchPanel()
      .then(({ openTakeAlong }) => {
        panel = openTakeAlong(onChange);
      })
      .catch(() => {
        state = 'missing';
      })
      .finally(onChange);
  };
  const again = (): void => {
    ask();
    onChange();
  };
  return (snapshot, send) => {
    if (panel) return panel(snapshot, send);
    if (state === 'unasked') ask();
    if (state === 'missing')
      return html`<h2>Take along</h2><p>This part could not be fetched.</p>
        <button type="button" class="button" @click=${again}>Try again</button>`;
    return html`<h2>Take along</h2><p class="muted">One moment.</p>`;
  };
}
