/** Sending an answer to whoever asked, and showing one that came. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Explanation } from '../../core/index.ts';
import { answerFields } from '../state/answer-fields.ts';
import type { Snapshot } from '../state/snapshot.ts';
import { handing, letter } from '../take-along/handing.ts';
import { linesOf } from '../take-along/lines.ts';
import { openPacker, sharedOf } from '../take-along/links.ts';
import { takeAlongIn } from '../words/pattern/catalogue.ts';
import { speakerOf } from '../words/speaker.ts';
import { sayAnswer } from '../words/wrong/answer.ts';
import { isCause, sentIn, withAnswer } from './answer.ts';
import type { Answer } from './asking.ts';
import type { Done } from './chosen.ts';
import { causesList } from './result.ts';
import type { Answered, View } from './view.ts';

export type Answering = (snapshot: Snapshot, done: Done) => TemplateResult;

/** Under a cure that was taken: the panel as it was, with the cause and the cure. */
export function openAnswering(onChange: () => void): Answering {
  const packer = openPacker(onChange);
  let said = '';
  let saidOf: Done | null = null;
  return (snapshot, done) => {
    const speaker = speakerOf(snapshot.settings);
    const { takeAlong: say, lines: words } = takeAlongIn(speaker);
    const shared = sharedOf(snapshot, 'wrong', withAnswer(done));
    const greeting = sayAnswer.letter(done.answer.says, done.cured.title);
    const tell = (sentence: string): void => {
      said = sentence;
      saidOf = done;
      onChange();
    };
    return html`<details class="fold take-part"><summary>${sayAnswer.send}</summary>
      <p>${sayAnswer.sendAbout}</p>
      ${handing({
        id: 'answer',
        what: sayAnswer.what,
        link: packer(done, () => shared),
        lines: letter(greeting, say.sendHow, linesOf(shared, words)),
        say,
        speaker,
        tell,
      })}
      <p role="status" class="muted">${saidOf === done ? said : ''}</p>
    </details>`;
  };
}

/** The explanation that an answer names, apart from the others. */
export function answerAmong(
  { snapshot }: View,
  explanations: readonly Explanation[],
): { named: Explanation | null; others: readonly Explanation[] } {
  const sent = sentIn(snapshot.project);
  const named = explanations.find((one) => isCause(sent, one)) ?? null;
  return { named, others: explanations.filter((one) => one !== named) };
}

/** Above what was found here. */
export function sentAnswer(
  view: Answered,
  { settled }: Pick<Answer, 'settled'>,
): TemplateResult | typeof nothing {
  const { snapshot, send, explained } = view;
  const sent = sentIn(snapshot.project);
  if (!sent) return nothing;
  const { named } = answerAmong(view, explained.explanations);
  if (!named && sent.cause !== '' && !settled) return nothing;
  const takeAway = (): void => {
    for (const field of Object.values(answerFields)) send({ type: 'TYPE', field, text: '' });
  };
  const told = (): TemplateResult => {
    if (named) return causesList(view, [named]);
    return html`<p>${sent.cause === '' ? sayAnswer.anyCause : sayAnswer.lost}</p>`;
  };
  return html`<section class="sent-answer" aria-labelledby="sent-answer">
    <h4 id="sent-answer">${sayAnswer.sent}</h4>
    ${told()}
    <button type="button" class="button" @click=${takeAway}>${sayAnswer.takeAway}</button>
  </section>`;
}
