/** The fold in which mishaps are played with. What is in it is fetched when it is first opened. */
import { html, nothing } from 'lit-html';
import { fetchedPart, type Part } from '../../controls/fetched-part.ts';
import type { Choose, Chosen } from './chosen.ts';

/** `onChange` asks for a new rendering where the snapshot is the same. */
export function mishapsFold(onChange: () => void): Part {
  let open = false;
  const inside = fetchedPart(async () => {
    const { mishapsPanel, nothingChosen } = await import('./panel.ts');
    let chosen: Chosen = nothingChosen;
    const choose: Choose = (change) => {
      chosen = change(chosen);
      onChange();
    };
    return (snapshot, send) => mishapsPanel(snapshot, send, chosen, choose);
  }, onChange);
  const toggle = (event: Event): void => {
    open = (event.target as HTMLDetailsElement).open;
    onChange();
  };
  return (snapshot, send) => {
    const count = snapshot.project.mishaps.length;
    return html`<details class="fold mishaps-fold" .open=${open} @toggle=${toggle}>
      <summary>Put in a mishap and see${count > 0 ? html` <span class="tag">${count} in</span>` : nothing}</summary>
      ${open ? inside(snapshot, send) : nothing}
    </details>`;
  };
}
