/** The lessons on screen: choosing one, being shown, being asked and told. A function of the view. */
import { html, nothing, type SVGTemplateResult, type TemplateResult } from 'lit-html';
import { drawing, forHand, stepDrawing, stillScene, wholeScene } from '../stitch/drawing.ts';
import { movesOf } from '../stitch/moves.ts';
import { rightAndWrong, sayMistake } from '../stitch/pairs.ts';
import { stitchName } from '../stitch/say.ts';
import type { Variant } from '../stitch/variant.ts';
import { sayOtherTerms } from '../words/other-terms.ts';
import { dialectName } from '../words/terms.ts';
import type { Speech } from '../words/words.ts';
import { choosing } from './choosing.ts';
import { finished, sayScore } from './finished.ts';
import { gapPicture } from './gap-picture.ts';
import { pairFor, sayNudge } from './leads.ts';
import { type Item, sayItem } from './lesson.ts';
import type { LessonsView } from './lessons.ts';
import type { LessonEvent } from './machine.ts';
import { askedPicture } from './picture.ts';
import { isRight, surpluses } from './questions.ts';
import {
  sayFeedback,
  sayItemWhere,
  sayJump,
  sayLesson,
  sayLevel,
  sayMishap,
  sayOption,
  sayQuestion,
  sayWhy,
} from './say.ts';
import { bothWays } from './scenes.ts';
import { sayReason } from './why.ts';

export type SendLesson = (event: LessonEvent) => void;

/** @param turn shows the person's own back turning over onto the front, on the drawing */
export function lessonsPanel(view: LessonsView, send: SendLesson, turn: () => void): TemplateResult {
  return html`<section class="lessons" aria-label="Lessons">
    <p class="unseen" role="status">${spoken(view)}</p>
    ${view.stage === 'choosing' ? choosing(view, send) : view.stage === 'finished' ? finished(view, send, turn) : doing(view, send)}
  </section>`;
}

type Words = { act: string; why: string; leads: string; mood: '' | 'right' | 'wrong' };

/** What is written beside the picture: after an answer what it was worth, else the act and how to tell. */
function wordsOf(view: LessonsView, item: Item): Words {
  const { stage, answer, speech } = view;
  const isChosen = answer !== null && typeof answer === 'object';
  const feedback = stage === 'told' && isChosen ? sayFeedback(item, answer.option, speech) : null;
  if (feedback !== null)
    return {
      act: `${feedback.head} ${feedback.body}`,
      why: feedback.why,
      leads: feedback.leads,
      mood: feedback.right ? 'right' : 'wrong',
    };
  const isOther = item.question?.kind === 'gap' || item.question?.kind === 'faces';
  if (isOther || stage === 'told')
    return { act: title(item, view), why: sayWhy(item, speech), leads: '', mood: '' };
  if (item.pair !== undefined) return { ...sayMistake(item.pair, speech), leads: '', mood: '' };
  return { act: title(item, view), why: check(item, speech), leads: sayReason(item, speech), mood: '' };
}

const check = (item: Item, speech: Speech): string => sayItem(item, speech).check ?? '';

/** One message for each press, in a place that stays; a question is read as it takes the focus. */
function spoken(view: LessonsView): string {
  const { stage, lesson, item, speech } = view;
  if (stage === 'finished' && lesson !== null) return sayScore(view, lesson);
  if (item === null || (stage !== 'showing' && stage !== 'told')) return '';
  const { act, why, leads } = wordsOf(view, item);
  return [sayJump(item, view.before), act, why, leads, `${sayItemWhere(item, speech)}.`]
    .filter(Boolean)
    .join(' ');
}

function words(view: LessonsView, item: Item): TemplateResult {
  const { act, why, leads, mood } = wordsOf(view, item);
  // While the stitch moves, the eyes are on it: the reasons keep their room and come when it rests.
  const isMoving = view.variant !== null && view.moves && view.t < 1;
  return html`<div class="lesson-talk">
    <div class="lesson-words ${mood} ${isMoving ? 'is-moving' : ''}">
      <p class="lesson-act">${act}</p>
      ${why === '' && leads === '' ? nothing : html`<p>${why} <span class="lesson-leads">${leads}</span></p>`}
      ${view.speech.bothTerms ? html`<p class="other-terms">${sayOtherTerms(`${act} ${why} ${leads}`, view.speech.dialect)}</p>` : nothing}
    </div>
  </div>`;
}

function doing(view: LessonsView, send: SendLesson): TemplateResult {
  const { item } = view;
  if (item === null || view.lesson === null) return html``;
  const body =
    view.stage === 'asking'
      ? asking(view, item, send)
      : view.stage === 'told'
        ? told(view, item, send)
        : showing(view, item, send);
  return html`<div class="lesson" data-stage=${view.stage}>${head(view, item, send)}${body}</div>`;
}

function head(
  { lesson, level, at, of, before, speech }: LessonsView,
  item: Item,
  send: SendLesson,
): TemplateResult {
  return html`<header class="lesson-head">
    <h3>${lesson === null ? '' : sayLesson(lesson, speech).title}</h3>
    <p class="lesson-place"><b>${at + 1} of ${of}</b> · ${sayLevel(level)} · ${dialectName(speech.dialect)}<br />${sayJump(item, before)} ${sayItemWhere(item, speech)}</p>
    <button type="button" class="button" @click=${() => send({ type: 'LEAVE' })}>All lessons</button>
  </header>`;
}

function showing(view: LessonsView, item: Item, send: SendLesson): TemplateResult {
  return html`<div class="lesson-pictures">${shownPictures(item, view)}</div>
    ${words(view, item)} ${buttons(view, send)}`;
}

/** The place the hook goes, and beside it the movement of the whole stitch; a chain has no place of its own. */
function shownPictures(item: Item, view: LessonsView): unknown {
  const { speech, variant } = view;
  if (item.pair !== undefined) return rightAndWrong(item.pair, speech);
  if (item.question?.kind === 'gap') return gap(item, view, true);
  if (item.question?.kind === 'faces') return facing(view);
  const place = stepDrawing(item.step, item.making, speech);
  if (variant === null) return figure(place, '');
  const movement = figure(movementOf(variant, view), stitchName(variant.kind, speech));
  return variant.kind === 'chain' ? movement : [figure(place, 'In here'), movement];
}

/** The whole stitch on its way; for those who want no movement, what it leaves after each move. */
function movementOf(variant: Variant, { t, moves, speech }: LessonsView): TemplateResult | SVGTemplateResult {
  const of = movesOf(variant.kind).length;
  if (moves || of === 1) return drawing(wholeScene(variant, t, speech.hand));
  const stills = Array.from({ length: of }, (_, i) => drawing(stillScene(variant, i + 1, speech.hand)));
  return html`<div class="lesson-stills ${of > 4 ? 'many' : ''}">${stills}</div>`;
}

/** Both pieces with their sides numbered, each from its own right side, then the back as the front sees it. */
const facing = ({ speech }: LessonsView): TemplateResult =>
  figure(drawing(forHand(bothWays(), speech.hand)), '');

/** What the step is about: the mishap, the facing sides, or simply the act. */
function title(item: Item, { speech }: LessonsView): string {
  const { question, making } = item;
  if (question?.kind === 'gap') return sayMishap(question.mishap, making.plan, speech);
  if (question?.kind === 'faces')
    return `Back side ${question.side + 1} faces front side ${question.right[0]}.`;
  return sayItem(item, speech).act;
}

/** The picture fills its frame, however much room that has: the frame's height is the sheet's to give. */
const figure = (picture: unknown, says: string): TemplateResult =>
  html`<figure class="lesson-figure">
    <div class="lesson-frame">${picture}</div>
    ${says === '' ? nothing : html`<figcaption>${says}</figcaption>`}
  </figure>`;

function gap(
  { question, making }: Item,
  { speech }: LessonsView,
  isTold: boolean,
): TemplateResult | typeof nothing {
  if (question?.kind !== 'gap') return nothing;
  const surplus = isTold ? surpluses(making.plan, question.mishap) : null;
  return figure(
    gapPicture(making.plan, surplus, speech.hand, 'The back inside the front, its sides numbered'),
    isTold ? 'Dashed: no partner. Doubled: 1 too many.' : '',
  );
}

function asking(view: LessonsView, item: Item, send: SendLesson): TemplateResult {
  const { speech } = view;
  const { question } = item;
  if (question === null) return html``;
  const answer = (option: string): void => send({ type: 'ANSWER', option });
  const asks = sayQuestion(item, speech);
  return html`<div class="lesson-pictures">
      ${question.kind === 'gap' ? gap(item, view, false) : figure(askedPicture(item, speech, asks, answer), '')}
    </div>
    <div class="lesson-talk">
      ${question.kind === 'gap' ? html`<p class="lesson-story">${sayMishap(question.mishap, item.making.plan, speech)}</p>` : nothing}
      <fieldset class="lesson-options" tabindex="-1" data-first>
        <legend class="lesson-act">${asks}</legend>
        ${question.options.map(
          (
            option,
            i,
          ) => html`<button type="button" class="button lesson-option" @click=${() => answer(option)}>
            <span class="lesson-number" aria-hidden="true">${i + 1}</span>${sayOption(question, option, speech)}
          </button>`,
        )}
      </fieldset>
      ${speech.bothTerms ? html`<p class="other-terms">${sayOtherTerms([asks, ...question.options.map((option) => sayOption(question, option, speech))].join(' '), speech.dialect)}</p>` : nothing}
      ${view.nudged ? html`<p class="lesson-nudge" role="status">${sayNudge(item, speech)}</p>` : nothing}
    </div>
    <div class="lesson-moves">
      ${backButton(view, send)}
      ${
        view.nudged
          ? html`<button type="button" class="button" @click=${() => send({ type: 'SHOW' })}>Show me</button>`
          : html`<button type="button" class="button" @click=${() => send({ type: 'NUDGE' })}>Hint</button>`
      }
      <button type="button" class="button" @click=${() => send({ type: 'SKIP' })}>Leave it out</button>
    </div>`;
}

function told(view: LessonsView, item: Item, send: SendLesson): TemplateResult {
  return html`<div class="lesson-pictures">${toldPicture(item, view)}</div>
    ${words(view, item)} ${buttons(view, send, wordsOf(view, item).mood === 'wrong')}`;
}

/** After a wrong answer right and wrong stand side by side, where there are pictures of both. */
function toldPicture(item: Item, view: LessonsView): unknown {
  const { question, step } = item;
  const { answer } = view;
  const chosen = answer !== null && typeof answer === 'object' ? answer.option : null;
  const pair =
    chosen !== null && question !== null && !isRight(question, chosen) ? pairFor(item, chosen) : null;
  if (pair !== null) return rightAndWrong(pair, view.speech);
  if (question?.kind === 'gap') return gap(item, view, true);
  return question?.kind === 'faces' ? facing(view) : figure(stepDrawing(step, item.making, view.speech), '');
}

function buttons(view: LessonsView, send: SendLesson, again = false): TemplateResult {
  const mayMove = view.variant !== null && view.moves;
  return html`<div class="lesson-moves">
    ${backButton(view, send)}
    ${again ? html`<button type="button" class="button" @click=${() => send({ type: 'AGAIN' })}>Try again</button>` : nothing}
    ${mayMove ? html`<button type="button" class="button" @click=${() => send({ type: 'AGAIN' })}>Move again</button>` : nothing}
    <button type="button" class="button strong lesson-next" data-first @click=${() => send({ type: 'NEXT' })}>Next <span aria-hidden="true">›</span></button>
  </div>`;
}

const backButton = ({ at }: LessonsView, send: SendLesson): TemplateResult =>
  html`<button type="button" class="button" aria-label="Back by one step" aria-disabled=${at === 0 ? 'true' : nothing}
    @click=${() => at > 0 && send({ type: 'BACK' })}>‹ Back</button>`;
