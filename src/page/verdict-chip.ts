/** The verdict: a mark that differs by shape, and the sentence. */
import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';
import type { Severity } from '../../core/index.ts';
import type { Snapshot } from '../state/snapshot.ts';
import { type SaidVerdict, SCALE, saySeverity, sayVerdict } from '../words/verdict.ts';

/** While a number cannot be read the drawing keeps the last ones; the chip says so quietly. */
export function verdictChip({ making, settings, problems }: Snapshot): TemplateResult {
  const said = sayVerdict(making, settings);
  const waits = problems.length > 0;
  return html`<p class="verdict ${waits ? 'waiting' : `verdict-${said.kind}`}">
    <svg class="verdict-mark" viewBox="0 0 40 26" aria-hidden="true">${verdictMark(said.kind)}</svg>
    <span><b class="verdict-head">${said.head}</b>${said.body ? html` <span class="verdict-body">${said.body}</span>` : nothing}${said.severity && !waits ? howBad(said.severity) : nothing}${waits ? html`<span class="verdict-waits"> From your last numbers.</span>` : nothing}</span>
  </p>`;
}

/** How bad it is, as a word and as steps of a scale. Our own judgement, and said to be. */
function howBad(severity: Severity): TemplateResult {
  const step = SCALE.indexOf(severity);
  return html`<span class="how-bad" title="Our own judgement, from the share along the side and from the place."
    ><span class="how-bad-steps" aria-hidden="true">${SCALE.map((_, index) => html`<i class=${index <= step ? 'on' : ''}></i>`)}</span
    > <span class="how-bad-word">We judge: ${saySeverity(severity)}.</span></span>`;
}

/** Meets: two lanes joined by bars. Easing: bars that lean together. Does not meet: a dashed hollow place. */
function verdictMark(kind: SaidVerdict['kind']): SVGTemplateResult {
  if (kind === 'meets') return svg`<path d="M4 6h32M4 20h32M10 6v14M20 6v14M30 6v14"/>`;
  if (kind === 'meets-with-easing')
    return svg`<path d="M4 6h32M4 20h32M8 6v14M18 6l2 14M26 6l-4 14M33 6v14"/>`;
  return svg`<rect class="hollow" x="5" y="4" width="30" height="18" rx="7"/>`;
}
