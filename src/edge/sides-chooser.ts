/** How many sides the panel has: a figure to press for round and 3 to 12, and a list for more. */

import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';
import { limits } from '../../core/index.ts';
import { outline } from '../controls/around.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';

const QUICK = [0, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
const MORE = Array.from({ length: limits.sides - 12 }, (_, index) => index + 13);

export function sidesChooser({ project }: Snapshot, send: Send): TemplateResult {
  const choose = (sideCount: number): void => send({ type: 'CHANGE', project: { sideCount } });
  const beyond = project.sideCount > 12;
  return html`<fieldset class="sides">
    <legend>How many sides?</legend>
    <div class="sides-row">
      ${QUICK.map(
        (count) => html`<label class="figure">
          <input type="radio" name="side-count" value=${count} .checked=${project.sideCount === count} @change=${() => choose(count)} />
          <svg viewBox="0 0 48 48" aria-hidden="true">${figure(count)}<text x="24" y=${count === 3 ? 29 : 24}>${count === 0 ? 'round' : count}</text></svg>
          <span class="unseen">${count === 0 ? 'round, no corners' : `${count} sides`}</span>
        </label>`,
      )}
      <label class="sides-more">
        <span class="unseen">more sides</span>
        <select class=${beyond ? 'chosen' : ''} @change=${(event: Event) => choose(Number.parseInt((event.target as HTMLSelectElement).value, 10))}>
          <option value="12" ?selected=${!beyond} disabled>13+</option>
          ${MORE.map((count) => html`<option value=${count} ?selected=${project.sideCount === count}>${count}</option>`)}
        </select>
      </label>
    </div>
  </fieldset>`;
}

function figure(count: number): SVGTemplateResult {
  if (count === 0) return svg`<circle cx="24" cy="24" r="20"/>`;
  const points = outline(
    Array.from({ length: count }, () => 1),
    'right',
    40,
    40,
  );
  const lifted = count === 3 ? 2 : 4;
  return svg`<polygon points=${points.map(({ x, y }) => `${(x + 4).toFixed(1)},${(48 - lifted - y).toFixed(1)}`).join(' ')}/>`;
}
