/**
 * Inside a stitch, on screen: the movement large, then its still; what the hand does now; all moves as small
 * pictures to jump to, so that before and after stay in sight.
 */
import { html, nothing, type TemplateResult } from 'lit-html';
import { many } from '../words/numbers.ts';
import { falseFriend } from '../words/terms.ts';
import type { Speech } from '../words/words.ts';
import { drawing, movingScene, stillScene } from './drawing.ts';
import type { StitchEvent } from './machine.ts';
import { sayLoops, sayMove, stitchName, termOf } from './say.ts';
import type { Variant } from './variant.ts';

/** What is shown: the stitch, how many moves are made, and how far the last one has got (1 = at rest). */
export type StitchView = { variant: Variant; done: number; of: number; t: number };

export type SendStitch = (event: StitchEvent) => void;

/** Nothing where no stitch is open. */
export function stitchPanel(
  view: StitchView | null,
  speech: Speech,
  send: SendStitch,
): TemplateResult | typeof nothing {
  if (view === null) return nothing;
  const { variant, done, of } = view;
  const note = termNote(variant);
  return html`<section class="stitch" aria-label="Inside the stitch">
    <header class="stitch-head">
      <h3>${stitchName(variant.kind, speech)}</h3>
      <p class="stitch-count">${done === 0 ? many(of, 'move') : `move ${done} of ${of}`}</p>
      <button type="button" class="button small" @click=${() => send({ type: 'CLOSE' })}>Close the stitch</button>
    </header>
    <figure class="stitch-figure">${large(view, speech)}<figcaption>${caption(view, speech)}</figcaption></figure>
    <p class="unseen" role="status">${spoken(view, speech)}</p>
    <div class="stitch-moves">
      ${goButton({ says: '‹ move', name: 'Back by one move', off: done === 0 }, () => send({ type: 'BACK' }))}
      ${goButton({ says: 'Next move ›', name: 'Next move', off: done === of, strong: true }, () => send({ type: 'NEXT' }))}
    </div>
    <ol class="stitch-strip">${Array.from({ length: of }, (_, i) => small(view, i + 1, speech, send))}</ol>
    ${note === null ? nothing : html`<p class="stitch-note">${note}</p>`}
  </section>`;
}

const termNote = ({ kind }: Variant): string | null => {
  const id = termOf(kind);
  return id === null ? null : falseFriend(id);
};

function large({ variant, done, t }: StitchView, speech: Speech): TemplateResult {
  const scene =
    t < 1 && done > 0
      ? movingScene(variant, done - 1, t, speech.hand)
      : stillScene(variant, done, speech.hand);
  return html`${drawing(scene)}`;
}

function caption({ variant, done }: StitchView, speech: Speech): TemplateResult {
  const loops = sayLoops(variant, done);
  const says = done === 0 ? 'This is where you begin.' : sayMove(variant, done - 1, speech);
  return html`<b>${says}</b>${loops === '' ? nothing : html` <span class="stitch-loops">${loops}.</span>`}`;
}

/** Only moves are told: that a stitch begins is told with its step. */
const spoken = ({ variant, done }: StitchView, speech: Speech): string =>
  done === 0 ? '' : `${sayMove(variant, done - 1, speech)} ${sayLoops(variant, done)}`;

function small(
  { variant, done }: StitchView,
  move: number,
  speech: Speech,
  send: SendStitch,
): TemplateResult {
  const says = sayMove(variant, move - 1, speech);
  return html`<li>
    <button type="button" class="stitch-still" aria-current=${move === done ? 'step' : nothing}
      aria-label="Move ${move}: ${says}" @click=${() => send({ type: 'JUMP', to: move })}>
      ${drawing(stillScene(variant, move, speech.hand))}<span aria-hidden="true">${move}</span>
    </button>
  </li>`;
}

/** What a button says, its name for those who do not see it, and how it looks. */
type GoButton = { says: string; name: string; off: boolean; strong?: boolean };

function goButton({ says, name, off, strong }: GoButton, go: () => void): TemplateResult {
  return html`<button type="button" class="button ${strong === true ? 'strong' : ''}" aria-label=${name}
    aria-disabled=${off ? 'true' : nothing} @click=${() => !off && go()}>${says}</button>`;
}
