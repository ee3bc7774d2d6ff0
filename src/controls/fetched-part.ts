/** A part of the page that is fetched when it is first shown, with its arithmetic and its styles. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { missingPart } from './missing-part.ts';

export type Part = (snapshot: Snapshot, send: Send) => TemplateResult;

/** `onChange` asks for a new rendering; `heading` stands in the part's place until it has come. */
export function fetchedPart<Given extends unknown[] = [snapshot: Snapshot, send: Send]>(
  fetchPart: () => Promise<(...given: Given) => TemplateResult>,
  onChange: () => void,
  heading?: string,
): (...given: Given) => TemplateResult {
  let part: ((...given: Given) => TemplateResult) | null = null;
  let state: 'unasked' | 'coming' | 'missing' = 'unasked';
  const ask = (): void => {
    state = 'coming';
    fetchPart()
      .then((fetched) => {
        part = fetched;
      })
      .catch(() => {
        state = 'missing';
      })
      .finally(onChange);
  };
  return (...given) => {
    if (part) return part(...given);
    if (state === 'unasked') ask();
    return html`${heading ? html`<h2>${heading}</h2>` : nothing}
      ${state === 'missing' ? missingPart() : html`<p class="muted">One moment.</p>`}`;
  };
}
