/** The lessons on screen: choosing one, being shown, being asked and told. A function of the view. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { drawing, forHand, stepDrawing, wholeScene } from '../stitch/drawing.ts';
import { stitchName } from '../stitch/say.ts';
import { mirrored } from '../stitch/stage-whole.ts';
import { sayStep } from '../words/step.ts';
import { dialectName } from '../words/terms.ts';
import { gapPicture } from './gap-picture.ts';
import { type Item, LESSON_IDS, LEVELS, type LessonId, type Level, lessonOf } from './lesson.ts';
import type { LessonsView } from './lessons.ts';
import type { LessonEvent } from './machine.ts';
import { askedPicture } from './picture.ts';
import { mayRemember } from './progress.ts';
import { countRight, surpluses } from './questions.ts';
import {
  sayFeedback,
  sayItemWhere,
  sayLesson,
  sayLevel,
  sayMishap,
  sayOption,
  sayQuestion,
  sayWhy,
} from './say.ts';

export type SendLesson = (event: LessonEvent) => void;

export function lessonsPanel(view: LessonsView, send: SendLesson): TemplateResult {
  return html`<section class="lessons" aria-label="Lessons">
    ${view.stage === 'choosing' ? choosing(view, send) : view.stage === 'finished' ? finished(view, send) : doing(view, send)}
  </section>`;
}

// --- choosing ---

function choosing(view: LessonsView, send: SendLesson): TemplateResult {
  return html`<h3>Practise a part</h3>
    <p class="lessons-lead">A small piece of its own. Your work stays where it is.</p>
    <ul class="lesson-list">${LESSON_IDS.map((id) => lessonCard(id, view, send))}</ul>`;
}

function lessonCard(
  id: LessonId,
  { speech, progress, today }: LessonsView,
  send: SendLesson,
): TemplateResult {
  const { title, about } = sayLesson(id, speech);
  const done = progress[id]?.levels ?? [];
  const offered = LEVELS.filter((level) => level !== 'memory' || mayRemember(progress, id, today));
  return html`<li class="lesson-card">
    <h4>${title}</h4>
    <p>${about}</p>
    <div class="lesson-levels" role="group" aria-label=${title}>
      ${offered.map((level) => levelButton(id, level, done.includes(level), send))}
    </div>
  </li>`;
}

function levelButton(lesson: LessonId, level: Level, done: boolean, send: SendLesson): TemplateResult {
  return html`<button type="button" class="button lesson-level" @click=${() => send({ type: 'OPEN', lesson, level })}>
    ${done ? html`<span class="lesson-done" aria-hidden="true">✓</span>` : nothing}${sayLevel(level)}${done ? html`<span class="unseen">, done</span>` : nothing}
  </button>`;
}

// --- under way ---

function doing(view: LessonsView, send: SendLesson): TemplateResult {
  const { item } = view;
  if (item === null || view.lesson === null) return html``;
  const body =
    view.stage === 'asking'
      ? asking(view, item, send)
      : view.stage === 'told'
        ? told(view, item, send)
        : showing(view, item, send);
  return html`${head(view, item, send)}${body}`;
}

function head({ lesson, level, at, of, speech }: LessonsView, item: Item, send: SendLesson): TemplateResult {
  return html`<header class="lesson-head">
    <h3>${lesson === null ? '' : sayLesson(lesson, speech).title}</h3>
    <p class="lesson-place">${at + 1} of ${of} · ${sayLevel(level)} · ${dialectName(speech.dialect)}<br />${sayItemWhere(item, speech)}</p>
    <button type="button" class="button" @click=${() => send({ type: 'LEAVE' })}>Leave the lesson</button>
  </header>`;
}

function showing(view: LessonsView, item: Item, send: SendLesson): TemplateResult {
  const { speech } = view;
  const said = sayStep(item.step, item.making, speech);
  return html`<div class="lesson-pictures">${shownPictures(item, view)}</div>
    <div class="lesson-words" role="status">
      <p class="lesson-act">${title(item, view)}</p>
      ${reason(item, view, said.check)}
    </div>
    ${buttons(view, send)}`;
}

/** The place the hook goes, and beside it the movement of the whole stitch; a chain has no place of its own. */
function shownPictures(item: Item, view: LessonsView): unknown {
  const { speech, variant, t } = view;
  if (item.question?.kind === 'gap') return gap(item, view, true);
  if (item.question?.kind === 'faces') return facing(view);
  const place = stepDrawing(item.step, speech);
  if (variant === null) return figure(place, '');
  const movement = figure(drawing(wholeScene(variant, t, speech.hand)), stitchName(variant.kind, speech));
  return variant.kind === 'chain' ? movement : [figure(place, 'In here'), movement];
}

/** Both pieces with their sides numbered, each from its own right side, then the back as the front sees it. */
const facing = ({ speech }: LessonsView): TemplateResult =>
  figure(drawing(forHand(mirrored('front', 'back', 'back, seen / from the front'), speech.hand)), '');

/** What the step is about: the mishap, the facing sides, or simply the act. */
function title({ question, step, making }: Item, { speech }: LessonsView): string {
  if (question?.kind === 'gap') return sayMishap(question.mishap, making.plan, speech);
  if (question?.kind === 'faces')
    return `Back side ${question.side + 1} faces front side ${question.right[0]}.`;
  return sayStep(step, making, speech).act;
}

function reason(
  item: Item,
  { speech }: LessonsView,
  check: string | undefined,
): TemplateResult | typeof nothing {
  const why = item.question?.kind === 'gap' || item.question?.kind === 'faces' ? sayWhy(item, speech) : check;
  return why === undefined || why === '' ? nothing : html`<p>${why}</p>`;
}

const figure = (picture: unknown, says: string): TemplateResult =>
  html`<figure class="lesson-figure">${picture}${says === '' ? nothing : html`<figcaption>${says}</figcaption>`}</figure>`;

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
    ${question.kind === 'gap' ? html`<p class="lesson-act">${sayMishap(question.mishap, item.making.plan, speech)}</p>` : nothing}
    <fieldset class="lesson-options">
      <legend class="lesson-act">${asks}</legend>
      ${question.options.map(
        (option, i) => html`<button type="button" class="button lesson-option" @click=${() => answer(option)}>
          <span class="lesson-number" aria-hidden="true">${i + 1}</span>${sayOption(question, option, speech)}
        </button>`,
      )}
    </fieldset>
    <div class="lesson-moves">
      ${backButton(view, send)}
      <button type="button" class="button" @click=${() => send({ type: 'SHOW' })}>Show me this step</button>
      <button type="button" class="button" @click=${() => send({ type: 'SKIP' })}>Leave it out</button>
    </div>`;
}

function told(view: LessonsView, item: Item, send: SendLesson): TemplateResult {
  const { speech, answer } = view;
  const feedback =
    answer !== null && typeof answer === 'object' ? sayFeedback(item, answer.option, speech) : null;
  return html`<div class="lesson-pictures">
      ${toldPicture(item, view)}
    </div>
    <div class="lesson-words ${feedback === null ? '' : feedback.right ? 'right' : 'wrong'}" role="status">
      <p class="lesson-act">${feedback === null ? title(item, view) : html`${feedback.head} ${feedback.body}`}</p>
      <p>${feedback === null ? sayWhy(item, speech) : feedback.why}</p>
    </div>
    ${buttons(view, send, feedback?.right === false)}`;
}

function toldPicture(item: Item, view: LessonsView): unknown {
  const { question, step } = item;
  if (question?.kind === 'gap') return gap(item, view, true);
  return question?.kind === 'faces' ? facing(view) : figure(stepDrawing(step, view.speech), '');
}

function buttons(view: LessonsView, send: SendLesson, again = false): TemplateResult {
  const { variant } = view;
  return html`<div class="lesson-moves">
    ${backButton(view, send)}
    ${again ? html`<button type="button" class="button" @click=${() => send({ type: 'AGAIN' })}>Try again</button>` : nothing}
    ${variant === null ? nothing : html`<button type="button" class="button" @click=${() => send({ type: 'AGAIN' })}>Move again</button>`}
    <button type="button" class="button strong" @click=${() => send({ type: 'NEXT' })}>Next ›</button>
  </div>`;
}

const backButton = ({ at }: LessonsView, send: SendLesson): TemplateResult =>
  html`<button type="button" class="button" aria-label="Back by one step" aria-disabled=${at === 0 ? 'true' : nothing}
    @click=${() => at > 0 && send({ type: 'BACK' })}>‹ Back</button>`;

// --- finished ---

function finished(view: LessonsView, send: SendLesson): TemplateResult {
  const { lesson, level, answers, speech } = view;
  if (lesson === null) return html``;
  const next = LEVELS[LEVELS.indexOf(level) + 1];
  const onward = next !== undefined && next !== 'memory' ? next : null;
  return html`<div class="lesson-words" role="status">
      <h3>${sayLesson(lesson, speech).title}</h3>
      <p class="lesson-act">${sayScore(view, answers.length)}</p>
      <p>${onward === null ? 'Come back another day and try it from memory.' : `Next: ${lowerFirst(sayLevel(onward))}.`}</p>
    </div>
    <div class="lesson-moves">
      <button type="button" class="button" @click=${() => send({ type: 'LEAVE' })}>All lessons</button>
      ${onward === null ? nothing : html`<button type="button" class="button strong" @click=${() => send({ type: 'OPEN', lesson, level: onward })}>${sayLevel(onward)}</button>`}
    </div>`;
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** "5 of 7 right." — or that the part was seen, where nothing was asked. */
function sayScore({ answers, lesson }: LessonsView, of: number): string {
  const asked = answers.filter((answer) => answer !== null);
  if (lesson === null || asked.length === 0) return `${of} steps seen.`;
  const questions = lessonOf(lesson).items.map(({ question }) => question);
  const options = answers.map((answer) =>
    answer !== null && typeof answer === 'object' ? answer.option : null,
  );
  return `${countRight(questions, options)} of ${asked.length} right.`;
}
