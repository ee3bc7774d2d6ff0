/** The way to all panels: the one in hand by its drawing and its name. */
import './panel-row.css';
import { html, type TemplateResult } from 'lit-html';
import { drawIcon } from '../controls/icons.ts';
import type { Snapshot } from '../state/snapshot.ts';
import { panelsSay, sayName } from '../words/panels.ts';
import { smallDrawing } from './small-drawing.ts';

const down = 'M6 9.5l6 6 6-6';

type Ways = { openPanels?: () => unknown };

export function panelRow({ project, settings }: Snapshot, { openPanels }: Ways): TemplateResult {
  return html`<button type="button" class="panel-way" aria-haspopup="dialog" @click=${() => openPanels?.()}>
    ${smallDrawing(project, settings.hand)}<span class="panel-way-name">${sayName(project.name)}</span>
    <span class="panel-way-more">${panelsSay.heading}${drawIcon(down)}</span>
  </button>`;
}
