/** A fold whose inside is fetched when it is first opened. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { fetchedPart } from '../controls/fetched-part.ts';
import type { Place } from './place.ts';

type Inside = (place: Place) => TemplateResult;

/** `isFilled`: something stands in it already, so it is open from the start. */
export function openLateFold(
  onChange: () => void,
  fetchInside: () => Promise<Inside>,
): (place: Place, summary: string, isFilled?: boolean) => TemplateResult {
  const inside = fetchedPart<[Place]>(fetchInside, onChange);
  let wasOpened = false;
  return (place, summary, isFilled = false) => {
    const toggle = (event: Event): void => {
      if (wasOpened || !(event.target as HTMLDetailsElement).open) return;
      wasOpened = true;
      onChange();
    };
    return html`<details class="fold" ?open=${isFilled} @toggle=${toggle}><summary>${summary}</summary>${wasOpened || isFilled ? inside(place) : nothing}</details>`;
  };
}
