/** What went in, what comes of it, and the ways to see it or take it out again. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { type Mishap, stepOfAct } from '../../../core/index.ts';
import { icon } from '../../controls/more-icons.ts';
import type { Send, Snapshot } from '../../state/snapshot.ts';
import { many } from '../../words/numbers.ts';
import { sayInApp } from '../../words/problems-view.ts';
import { sayFinding, sayVerdict } from '../../words/verdict.ts';
import { mishapStory, sayMishapPlace, sayPassed } from '../../words/wrong/mishaps.ts';
import type { Choose, Chosen, Putting } from './chosen.ts';
import { questionsBefore } from './questions.ts';

export const RESULT_ID = 'mishaps-result';

/** So many causes are told one by one; the rest are counted. */
const MOST_TOLD = 6;

export function mishapsResult(
  snapshot: Snapshot,
  send: Send,
  chosen: Chosen,
  choose: Choose,
): TemplateResult | typeof nothing {
  const { mishaps } = snapshot.project;
  if (mishaps.length === 0) return nothing;
  return html`<section class="mishaps-result" id=${RESULT_ID} tabindex="-1" aria-labelledby="mishaps-in">
    <h4 id="mishaps-in">${mishaps.length === 1 ? '1 mishap is in' : `${mishaps.length} mishaps are in`}</h4>
    ${outcome(snapshot)}
    <ul class="mishaps-list">${mishaps.map((mishap, index) => entry(mishap, index, { snapshot, send, chosen, choose }))}</ul>
    ${
      mishaps.length > 1
        ? html`<button type="button" class="button" @click=${() => put(send, [])}>Take all out</button>`
        : nothing
    }
  </section>`;
}

/** The way back to where the work stood before a mishap was looked at. */
export function wayBack(
  { place }: Snapshot,
  send: Send,
  chosen: Chosen,
  choose: Choose,
): TemplateResult | typeof nothing {
  const { from } = chosen;
  if (from === null || from === place) return nothing;
  const back = (): void => {
    send({ type: 'JUMP', to: from });
    choose((now) => ({ ...now, from: null }));
  };
  return html`<button type="button" class="button way-back" @click=${back}><span aria-hidden="true">‹</span> Back to your step ${from + 1}</button>`;
}

const put = (send: Send, mishaps: readonly Mishap[]): void => send({ type: 'CHANGE', project: { mishaps } });

function entry(mishap: Mishap, index: number, { snapshot, send, choose }: Putting): TemplateResult {
  const { making, settings, project, place } = snapshot;
  const { title } = mishapStory(mishap.kind, mishap.round ?? 'foundation', making.plan, settings);
  // One that has no place on this panel is not in the making.
  const made = making.acts.indexOf(mishap);
  const to = made >= 0 ? stepOfAct(making, making.acts, made) : -1;
  const passed = questionsBefore(snapshot, to);
  const without = project.mishaps.filter((_, other) => other !== index);
  const go = (): void => {
    choose((now) => ({ ...now, from: now.from ?? place }));
    for (const { at, asks } of passed) {
      send({ type: 'JUMP', to: at });
      send({ type: 'ANSWER', asks });
    }
    send({ type: 'JUMP', to });
    showStage();
  };
  return html`<li class="mishap-in">
    <div class="mishap-in-words">
      <p><b>${title}</b></p>
      <p class="muted">${sayMishapPlace(mishap, making.plan, settings)}</p>
    </div>
    <button type="button" class="icon-button" aria-label="Take it out: ${title}" title="Take it out"
      @click=${() => put(send, without)}>${icon('close')}</button>
    ${to < 0 ? nothing : goThere(title, to === place, go)}
    ${passed.length > 0 && to >= 0 ? html`<p class="muted on-the-way">${sayPassed(passed.map(({ asks }) => asks))}</p>` : nothing}
  </li>`;
}

function goThere(title: string, isThere: boolean, go: () => void): TemplateResult {
  if (isThere) return html`<p class="here-it-is">The walk stands here.</p>`;
  return html`<button type="button" class="button go-there" aria-label="Go to where it happens: ${title}"
    @click=${go}>Go to where it happens <span aria-hidden="true">›</span></button>`;
}

/** In one column the drawing stands above, at the page's top: it is brought into view, and the way on with it. */
function showStage(): void {
  const bar = document.querySelector('.bar');
  if (!bar || bar.getBoundingClientRect().top >= 0) return;
  scrollTo({ top: 0 });
  bar.querySelector<HTMLElement>('.next')?.focus({ preventScroll: true });
}

function outcome(snapshot: Snapshot): TemplateResult {
  const { making, settings, unfit } = snapshot;
  if (unfit.length > 0)
    return html`<div class="mishaps-outcome">${unfit.map((problem) => html`<p class="problem-line">${sayInApp(problem, snapshot)}.</p>`)}</div>`;
  const { kind, head } = sayVerdict(making, settings);
  const { findings } = making.pairing;
  const told = findings.slice(0, MOST_TOLD).map((finding) => sayFinding(finding, making.edge.sides.length));
  return html`<div class="mishaps-outcome outcome-${kind}">
    ${kind === 'meets' ? html`<p><b>${head}</b> Here it does no harm.</p>` : nothing}
    ${told.map(({ says, more }, index) => html`<p>${index === 0 ? html`<b>${says}</b>` : says} ${more}</p>`)}
    ${findings.length > told.length ? html`<p class="muted">${many(findings.length - told.length, 'more cause')}.</p>` : nothing}
  </div>`;
}
