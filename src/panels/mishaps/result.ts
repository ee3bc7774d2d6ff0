/** What went in, what comes of it, and the ways to see it or take it out again. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Gap, Mishap } from '../../../core/index.ts';
import type { Send, Snapshot } from '../../state/snapshot.ts';
import { mishapStory, sayMishapPlace } from '../../words/mishaps.ts';
import { many } from '../../words/numbers.ts';
import { sayVerdict } from '../../words/verdict.ts';
import { icon } from '../icons.ts';
import { stepWhere } from './where.ts';

export const RESULT_ID = 'mishaps-result';

/** So many gaps are told one by one; the rest are counted. */
const MOST_TOLD = 5;

export function mishapsResult(snapshot: Snapshot, send: Send): TemplateResult | typeof nothing {
  const { mishaps } = snapshot.project;
  if (mishaps.length === 0) return nothing;
  return html`<section class="mishaps-result" id=${RESULT_ID} tabindex="-1" aria-labelledby="mishaps-in">
    <h4 id="mishaps-in">${mishaps.length === 1 ? '1 mishap is in' : `${mishaps.length} mishaps are in`}</h4>
    <ul class="mishaps-list">${mishaps.map((mishap, index) => entry(snapshot, send, mishap, index))}</ul>
    ${outcome(snapshot)}
    ${
      mishaps.length > 1
        ? html`<button type="button" class="button" @click=${() => put(send, [])}>Take all out</button>`
        : nothing
    }
  </section>`;
}

const put = (send: Send, mishaps: readonly Mishap[]): void => send({ type: 'CHANGE', project: { mishaps } });

function entry(snapshot: Snapshot, send: Send, mishap: Mishap, index: number): TemplateResult {
  const { making, settings, project } = snapshot;
  const { title } = mishapStory(mishap.kind, mishap.round ?? 'foundation', making.plan, settings);
  // While a number cannot be read the making is the last good one, and may not hold this mishap.
  const to = making.mishaps[index] === mishap ? stepWhere(making, index) : -1;
  const without = project.mishaps.filter((_, other) => other !== index);
  return html`<li class="mishap-in">
    <div class="mishap-in-words">
      <p><b>${title}</b></p>
      <p class="muted">${sayMishapPlace(mishap, making.plan, settings)}</p>
    </div>
    <button type="button" class="icon-button" aria-label="Take it out: ${title}" title="Take it out"
      @click=${() => put(send, without)}>${icon('close')}</button>
    ${
      to < 0
        ? nothing
        : html`<button type="button" class="button go-there" aria-label="Go to where it happens: ${title}"
            @click=${() => goTo(send, to)}>Go to where it happens <span aria-hidden="true">›</span></button>`
    }
  </li>`;
}

function goTo(send: Send, to: number): void {
  send({ type: 'JUMP', to });
  const stage = document.querySelector('.stage');
  // In one column the drawing stands above: it is brought into view, and the way on with it.
  if (!stage || stage.getBoundingClientRect().top >= 0) return;
  stage.scrollIntoView({ block: 'start' });
  stage.querySelector<HTMLElement>('.next')?.focus({ preventScroll: true });
}

function outcome(snapshot: Snapshot): TemplateResult {
  const { making, settings, problems } = snapshot;
  const own = problems.filter(({ at }) => at.startsWith('mishaps'));
  if (own.length > 0)
    return html`<div class="mishaps-outcome">${own.map(({ says }) => html`<p class="problem-line">${says}.</p>`)}</div>`;
  const said = sayVerdict(making, settings);
  return html`<div class="mishaps-outcome outcome-${said.kind}">
    <p><b>${said.head}</b> ${said.body}</p>
    ${said.kind === 'meets' ? html`<p>Here it does no harm.</p>` : nothing}
    ${gaps(making.pairing.gaps, making.plan.edge.corners.length === 0)}
  </div>`;
}

function gaps(all: readonly Gap[], round: boolean): TemplateResult | typeof nothing {
  if (all.length === 0) return nothing;
  const told = all.slice(0, MOST_TOLD);
  return html`<ul class="mishaps-gaps">
    ${told.map((gap) => html`<li><span class="gap-mark" aria-hidden="true"></span>${sayGap(gap, round)}</li>`)}
    ${all.length > told.length ? html`<li class="muted">and ${many(all.length - told.length, 'more gap')}</li>` : nothing}
  </ul>`;
}

/** "Back side 3 lacks 1 stitch, after stitch 54". */
function sayGap({ short, frontSide, backSide, after, count }: Gap, round: boolean): string {
  const side = short === 'front' ? frontSide : backSide;
  const piece = short === 'front' ? 'Front' : 'Back';
  const where = round ? `The ${short}` : `${piece} side ${side + 1}`;
  const place = after === 0 ? 'at its first stitch' : `after stitch ${after}`;
  return `${where} lacks ${many(count, 'stitch', 'stitches')}, ${place}`;
}
