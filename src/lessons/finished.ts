/** The end of a lesson: how many were right, each step marked, and where to go from here. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Answer } from '../state/lesson-progress.ts';
import { LEVELS, type LessonId, lessonOf } from './lesson.ts';
import type { LessonsView } from './lessons.ts';
import type { LessonEvent } from './machine.ts';
import { countRight, isRight, type Question } from './questions.ts';
import { sayLesson, sayLevel } from './say.ts';

type Send = (event: LessonEvent) => void;

/** Lessons after which the piece itself says most, turning on the drawing. */
const TURNS: ReadonlySet<LessonId> = new Set(['whole', 'mirrored']);

export function finished(view: LessonsView, send: Send, turn: () => void): TemplateResult {
  const { lesson, level, speech } = view;
  if (lesson === null) return html``;
  const next = LEVELS[LEVELS.indexOf(level) + 1];
  const onward = next !== undefined && next !== 'memory' ? next : null;
  return html`<div class="lesson-end">
    <div class="lesson-words">
      <h3>${sayLesson(lesson, speech).title}</h3>
      <p class="lesson-score">${sayScore(view, lesson)}</p>
      ${marks(view, lesson)}
      <p>${onward === null ? 'Come back another day and try it from memory.' : `Next: ${lowerFirst(sayLevel(onward))}.`}</p>
    </div>
    <div class="lesson-moves">
      ${TURNS.has(lesson) ? html`<button type="button" class="button" @click=${turn}>See it turn</button>` : nothing}
      <button type="button" class="button" ?data-first=${onward === null} @click=${() => send({ type: 'LEAVE' })}>All lessons</button>
      ${
        onward === null
          ? nothing
          : html`<button type="button" class="button strong lesson-next" data-first
              @click=${() => send({ type: 'OPEN', lesson, level: onward })}>${sayLevel(onward)}</button>`
      }
    </div>
  </div>`;
}

const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** "5 of 7 right." — or that the part was seen, where nothing was asked. */
export function sayScore({ answers }: LessonsView, lesson: LessonId): string {
  const asked = answers.filter((answer) => answer !== null);
  if (asked.length === 0) return `${answers.length} steps seen.`;
  const questions = lessonOf(lesson).items.map(({ question }) => question);
  const options = answers.map((answer) => (isChosen(answer) ? answer.option : null));
  return `${countRight(questions, options)} of ${asked.length} right.`;
}

type Mark = { look: 'right' | 'wrong' | 'shown' | 'skipped'; sign: string; says: string };

const MARKS: Record<Mark['look'], Omit<Mark, 'look'>> = {
  right: { sign: '✓', says: 'right' },
  wrong: { sign: '✕', says: 'not right' },
  shown: { sign: '○', says: 'shown' },
  skipped: { sign: '–', says: 'left out' },
};

const isChosen = (answer: Answer | null): answer is { option: string } =>
  answer !== null && typeof answer === 'object';

function markOf(question: Question | null, answer: Answer): Mark['look'] {
  if (!isChosen(answer)) return answer;
  return question !== null && isRight(question, answer.option) ? 'right' : 'wrong';
}

/** One mark for every step that was asked. */
function marks({ answers }: LessonsView, lesson: LessonId): TemplateResult | typeof nothing {
  const { items } = lessonOf(lesson);
  const asked = answers.flatMap((answer, i) =>
    answer === null ? [] : [{ step: i + 1, look: markOf(items[i]?.question ?? null, answer) }],
  );
  if (asked.length === 0) return nothing;
  return html`<ol class="lesson-marks">${asked.map(
    ({ step, look }) =>
      html`<li class="lesson-mark ${look}"><span aria-hidden="true">${MARKS[look].sign}</span>
        <span class="unseen">Step ${step}: ${MARKS[look].says}</span><span aria-hidden="true" class="lesson-step">${step}</span></li>`,
  )}</ol>`;
}
