/** Walk it: where in the making the work stands, the larger jumps, and playing through. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { icon } from '../controls/more-icons.ts';
import { segmented } from '../controls/segmented.ts';
import { sayAhead } from '../making/pace.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { stageName } from '../words/walk/where.ts';
import type { Aids } from './aids.ts';
import { sayAloudState } from './aloud.ts';
import { sayAwake } from './awake.ts';
import { openQuestion } from './open-question.ts';
import { JUMPS } from './step-bar.ts';

/** Milliseconds a stitch. Never quicker than three changes a second. */
const PACES = [
  { value: '3000', says: 'slow' },
  { value: '1200', says: 'steady' },
  { value: '600', says: 'quick' },
] as const;

export function walkPanel(snapshot: Snapshot, send: Send, aids: Aids): TemplateResult {
  return html`<div class="walk" data-keys="walk">
    <h2 class="unseen">Walk it</h2>
    ${jumps(snapshot, send)} ${playing(snapshot, send)}
    ${standBy(send, aids)} ${whereabouts(snapshot, send, aids)}
  </div>`;
}

/** Two switches whose words tell what really is, not what was wished. */
function standBy(send: Send, { awake, aloud }: Aids): TemplateResult {
  const on = awake.state();
  const voice = aloud.state();
  const keepOn = (): void => send({ type: 'SETTLE', settings: { stayAwake: !on.wanted } });
  const read = (): void => send({ type: 'SETTLE', settings: { readAloud: !voice.on } });
  return html`<section class="stand-by" aria-label="Beside your work">
    ${switchRow('Keep the screen on', on.wanted, sayAwake(on), keepOn)}
    ${switchRow('Read aloud', voice.on, sayAloudState(voice), read)}
  </section>`;
}

function switchRow(name: string, on: boolean, says: string, press: () => void): TemplateResult {
  return html`<button type="button" role="switch" class="switch" aria-checked=${on ? 'true' : 'false'} @click=${press}>
    <span class="switch-track" aria-hidden="true"></span>
    <span><b>${name}</b><span class="switch-says">${says}</span></span>
  </button>`;
}

/** The stretches of the making as a list; the one being worked is marked and the rest lead there. */
function whereabouts({ making, step, place }: Snapshot, send: Send, aids: Aids): TemplateResult {
  const ahead = sayAhead(step, aids.taps());
  const { steps, plan } = making;
  const stages = steps.stretches.filter(
    ({ stage, edging }, index) =>
      index === 0 ||
      steps.stretches[index - 1]?.stage !== stage ||
      steps.stretches[index - 1]?.edging !== edging,
  );
  return html`<section class="whereabouts" aria-labelledby="whereabouts-heading">
    <h3 id="whereabouts-heading">The whole making</h3>
    ${ahead ? html`<p class="muted">At your pace ${ahead}.</p>` : nothing}
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
