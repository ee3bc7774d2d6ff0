/** Choosing a lesson: a card for each, with a picture of what it is about and its levels. */
import { html, nothing, type SVGTemplateResult, type TemplateResult } from 'lit-html';
import { drawing, forHand } from '../stitch/drawing.ts';
import { type MoveScenes, sceneAfter } from '../stitch/frame.ts';
import { slipStitchScenes } from '../stitch/frames/join.ts';
import { closed } from '../stitch/frames/needle.ts';
import { doubleCrochetScenes } from '../stitch/frames/short.ts';
import { tallScenes } from '../stitch/frames/tall.ts';
import type { Scene } from '../stitch/scene.ts';
import * as cushion from '../stitch/stages/cushion.ts';
import * as edge from '../stitch/stages/edge.ts';
import { twoWays } from '../stitch/stages/whole.ts';
import type { Speech } from '../words/words.ts';
import { gapPicture } from './gap-picture.ts';
import { LESSON_IDS, LEVELS, type LessonId, type Level, lessonOf } from './lesson.ts';
import type { LessonsView } from './lessons.ts';
import type { LessonEvent } from './machine.ts';
import { mayRemember } from './progress.ts';
import { surpluses } from './questions.ts';
import { sayLesson, sayLevel } from './say.ts';

type Send = (event: LessonEvent) => void;

export function choosing(view: LessonsView, send: Send): TemplateResult {
  return html`<div class="lessons-intro">
      <h3 tabindex="-1" data-first>Practise a part</h3>
      <p class="lessons-lead">A small piece of its own. Your work stays where it is.</p>
    </div>
    <ul class="lesson-list">${LESSON_IDS.map((id) => lessonCard(id, view, send))}</ul>`;
}

function lessonCard(id: LessonId, { speech, progress, today }: LessonsView, send: Send): TemplateResult {
  const { title, about } = sayLesson(id, speech);
  const done = progress[id]?.levels ?? [];
  const offered = LEVELS.filter((level) => level !== 'memory' || mayRemember(progress, id, today));
  return html`<li class="lesson-card">
    <div class="lesson-thumb" aria-hidden="true">${cardPicture(id, speech)}</div>
    <div class="lesson-about">
      <h4>${title}</h4>
      <p>${about}</p>
    </div>
    <div class="lesson-levels" role="group" aria-label=${title}>
      ${offered.map((level) => levelButton(id, level, done.includes(level), send))}
    </div>
  </li>`;
}

function levelButton(lesson: LessonId, level: Level, done: boolean, send: Send): TemplateResult {
  return html`<button type="button" class="button lesson-level" @click=${() => send({ type: 'OPEN', lesson, level })}>
    ${done ? html`<span class="lesson-done" aria-hidden="true">✓</span>` : nothing}${sayLevel(level)}${done ? html`<span class="unseen">, done</span>` : nothing}
  </button>`;
}

const inserted = (scenes: MoveScenes, moves: number): Scene => sceneAfter(scenes, moves);

/** The telling moment of each lesson. */
function cardPicture(id: LessonId, speech: Speech): SVGTemplateResult {
  if (id === 'miscounts') return gapCard(speech);
  const scenes: Record<Exclude<LessonId, 'miscounts'>, () => Scene> = {
    whole: () => cushion.whole('square'),
    counting: () => edge.counting('first'),
    cloth: () => cushion.pinned('corners', 'square'),
    foundation: () => inserted(tallScenes('foundation-treble'), 2),
    closing: () => closed({ adds: 1, yarn: 'foundation' }),
    edging: () => inserted(doubleCrochetScenes(), 1),
    joining: () => inserted(slipStitchScenes(), 1),
    mirrored: twoWays,
  };
  return drawing(forHand(scenes[id](), speech.hand));
}

function gapCard({ hand }: Speech): SVGTemplateResult {
  const first = lessonOf('miscounts').items[0];
  if (first?.question?.kind !== 'gap') return drawing([]);
  const { plan } = first.making;
  return gapPicture(plan, surpluses(plan, first.question.mishap), hand, '');
}
