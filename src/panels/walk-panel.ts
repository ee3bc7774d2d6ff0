/** Walk it: where in the making the work stands, the larger jumps, and playing through. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { stageName } from '../words/where.ts';
import { icon } from './icons.ts';
import { openQuestion } from './question-card.ts';
import { segmented } from './segmented.ts';
import { JUMPS } from './step-bar.ts';

/** Milliseconds a stitch. Never quicker than three changes a second. */
const PACES = [
  { value: '3000', says: 'slow' },
  { value: '1200', says: 'steady' },
  { value: '600', says: 'quick' },
] as const;

export function walkPanel(snapshot: Snapshot, send: Send): TemplateResult {
  return html`<div class="walk" data-keys="walk">
    <h2 class="unseen">Walk it</h2>
    ${whereabouts(snapshot, send)} ${jumps(snapshot, send)} ${playing(snapshot, send)}
  </div>`;
}

/** The stretches of the making as a list; the one being worked is marked and the rest lead there. */
function whereabouts({ making, step, place }: Snapshot, send: Send): TemplateResult {
  const { steps, plan } = making;
  const stages = steps.stretches.filter(
    ({ stage, edging }, index) =>
      index === 0 ||
      steps.stretches[index - 1]?.stage !== stage ||
      steps.stretches[index - 1]?.edging !== edging,
  );
  return html`<section class="whereabouts" aria-labelledby="whereabouts-heading">
    <h3 id="whereabouts-heading">The whole making</h3>
    <ol>
      ${stages.map((stretch, index) => {
        const end = stages[index + 1]?.from ?? steps.length;
        const here = place >= stretch.from && place < end;
        const state = here ? 'here' : place >= end ? 'made' : 'to-come';
        const done = here
          ? `${step.ofRound > 0 ? `${step.done} of ${step.ofRound}` : 'here'}`
          : place >= end
            ? 'made'
            : '';
        return html`<li class="stretch ${state}">
          <button type="button" aria-current=${here ? 'step' : nothing} @click=${() => send({ type: 'JUMP', to: stretch.from })}>
            <span class="stretch-mark" aria-hidden="true"></span>
            <span>${stageName(stretch, { plan })}</span><span class="stretch-done">${done}</span>
          </button>
        </li>`;
      })}
    </ol>
  </section>`;
}

function jumps(snapshot: Snapshot, send: Send): TemplateResult {
  const asked = openQuestion(snapshot) !== null;
  return html`<section class="jumps" aria-label="Jumps">
    <h3>Jump by</h3>
    <div class="jump-grid">
      ${JUMPS.map(
        ({ by, says }) => html`<div class="jump" role="group" aria-label="By ${says}">
          <button type="button" class="icon-button" aria-label="Back by one ${says}" @click=${() => send({ type: 'BACK', by })}>${icon('left')}</button>
          <span>${says}</span>
          <button type="button" class="icon-button" aria-label="On to the next ${says}" aria-disabled=${asked ? 'true' : nothing}
            @click=${() => !asked && send({ type: 'NEXT', by })}>${icon('right')}</button>
        </div>`,
      )}
    </div>
  </section>`;
}

function playing({ playing: isPlaying, settings }: Snapshot, send: Send): TemplateResult {
  const nearest = PACES.reduce((best, pace) =>
    Math.abs(Number.parseInt(pace.value, 10) - settings.pace) <
    Math.abs(Number.parseInt(best.value, 10) - settings.pace)
      ? pace
      : best,
  );
  return html`<section class="playing" aria-label="Play through">
    <button type="button" class="button play" @click=${() => send({ type: isPlaying ? 'STOP' : 'PLAY' })}>
      ${icon(isPlaying ? 'stop' : 'play')} ${isPlaying ? 'Stop' : 'Play through'}
    </button>
    ${segmented('Pace', nearest.value, PACES, (pace) => send({ type: 'SETTLE', settings: { pace: Number.parseInt(pace, 10) } }))}
  </section>`;
}
