/** Two or three short words of which one is chosen; one press changes it. */
import { html, type TemplateResult } from 'lit-html';

export type SegmentOption<Value> = { value: Value; says: string | TemplateResult; name?: string };

export function segmented<Value extends string>(
  name: string,
  chosen: Value,
  options: readonly SegmentOption<Value>[],
  choose: (value: Value) => void,
): TemplateResult {
  return html`<div class="segments" role="group" aria-label=${name}>
    ${options.map(
      ({ value, says, name: full }) => html`<button
        type="button"
        class="segment"
        aria-pressed=${value === chosen ? 'true' : 'false'}
        aria-label=${full ?? (typeof says === 'string' ? says : value)}
        @click=${() => choose(value)}
      >${says}</button>`,
    )}
  </div>`;
}
