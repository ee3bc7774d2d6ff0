/** What is done before and after; short, once, in place. Usual for the trade. */
import { html, type TemplateResult } from 'lit-html';
import { term } from '../words/terms.ts';
import type { Place } from './place.ts';

export const beforeCare = (): TemplateResult => html`<details class="fold">
  <summary>Before you measure</summary>
  <ul class="cloth-list">
    <li>Wash and press the cloth as you will wash the finished piece. It may shrink.</li>
    <li>Pin the panel out flat, damp it, and let it dry.</li>
    <li>After cutting, zigzag or oversew the raw edge if it frays.</li>
  </ul>
</details>`;

export const afterCare = ({ cloth, pad, snapshot }: Place): TemplateResult => {
  const last =
    snapshot.making.edge.sides.length > 1 ? 'the side you joined last' : 'the quarter you joined last';
  const inside = cloth.becomes === 'cover' ? 'form' : pad;
  return html`<details class="fold">
    <summary>Afterwards</summary>
    <ul class="cloth-list">
      ${
        cloth.becomes === 'bag'
          ? html`<li>Finish the open side off: its edges hold by themselves, and slip stitches along them keep them from stretching.</li>`
          : html`<li>To wash it, undo the slip stitches of ${last}, take the ${inside} out, and join it anew afterwards.</li>`
      }
      <li>Count pins and needles. Keep needles and blades away from small children.</li>
      ${
        cloth.becomes === 'cushion'
          ? html`<li>No ${term('cushion', snapshot.settings.dialect)} belongs in a baby's sleeping place.</li>
            <li>To sell it: rules for filling and labels differ by country. Ask your trading-standards office.</li>`
          : ''
      }
    </ul>
  </details>`;
};
