/** What went wrong: what was counted, the causes that give just these counts, and the ways to put it right. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { goToField } from '../controls/go-to.ts';
import { check, problemSummary } from '../controls/problem-summary.ts';
import { withoutAnswer } from '../state/answer-fields.ts';
import { fieldNames, rowOf } from '../state/fields.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { many } from '../words/numbers.ts';
import { sayLooking, sayTogether, sayWays } from '../words/wrong/causes.ts';
import { askSight, type StoryId, sayAskedFor, saySight, sayStory } from '../words/wrong/stories.ts';
import { sentIn } from './answer.ts';
import { type Answering, answerAmong, openAnswering, sentAnswer } from './answering.ts';
import { type Answer, createAsking } from './asking.ts';
import { type Choose, type Chosen, keyOf, nothingChosen } from './chosen.ts';
import { countFolds } from './counts.ts';
import { cureForAll, doneStrip } from './cures.ts';
import { focusSoon } from './focus.ts';
import { joinFold } from './join.ts';
import { lookedList, nextCountCard } from './next-count.ts';
import { causesList, openKey } from './result.ts';
import { startThread } from './search/page-thread.ts';
import type { Question } from './search/question.ts';
import { inThread } from './search/thread.ts';
import { backToCounts } from './showing.ts';
import { standsRow } from './stands.ts';
import { fieldAskedFor, seenOfStory, sightsFor, storiesFor } from './stories.ts';
import type { Answered, View } from './view.ts';

/** Something was counted, though it may not be readable yet, or was seen. */
const hasCounts = ({ making, problems }: Snapshot, { looked }: Chosen): boolean =>
  looked.length > 0 ||
  Object.keys(making.seen).length > 0 ||
  problems.some(({ at }) => rowOf(at)?.bears === 'counts');

const RESULT_ID = 'wrong-result';

/** `onChange` asks for a new rendering where the snapshot is the same. */
export function openWrong(onChange: () => void): (snapshot: Snapshot, send: Send) => TemplateResult {
  const answering = openAnswering(onChange);
  const ask = createAsking(onChange, inThread(startThread));
  let chosen = nothingChosen;
  let question: Question | null = null;
  const choose: Choose = (part) => {
    chosen = { ...chosen, ...part };
    onChange();
  };
  return (snapshot, send) => {
    const { making, problems } = snapshot;
    const isCounted = hasCounts(snapshot, chosen);
    // A cure that is looked at changes the counts on the drawing, not the question.
    const isLooking = snapshot.preview !== null && chosen.previewed !== null;
    if (!isLooking)
      question =
        isCounted && problems.length === 0
          ? {
              plan: making.plan,
              seen: making.seen,
              looked: [...chosen.looked],
              stands: snapshot.project.stands,
            }
          : null;
    const answer = question && ask(question);
    if (chosen.arriving && answer?.fresh) {
      chosen = { ...chosen, arriving: false };
      focusSoon(RESULT_ID);
    }
    return wrongPanel({ snapshot, send, chosen, choose }, answer, answering);
  };
}

function wrongPanel(view: View, answer: Answer | null, answering: Answering): TemplateResult {
  const { snapshot, send, chosen, choose } = view;
  const isCounted = hasCounts(snapshot, chosen);
  const isDone = chosen.done !== null && chosen.done.project === snapshot.project;
  return html`<div class="wrong-panel">
    ${problemSummary(snapshot, send)}
    <h2 class="unseen">What went wrong</h2>
    ${doneStrip(snapshot, send, chosen, choose)}
    ${isDone && chosen.done ? answering(snapshot, chosen.done) : nothing}
    ${isDone ? nothing : html`<p class="intro">${isCounted ? 'Every count narrows it down. Leave empty what you did not count.' : 'Your count is off? It has a cause, and mostly a cheap cure.'}</p>`}
    ${isCounted || isDone ? nothing : stories(snapshot, send, choose)}
    <section class="seen" aria-labelledby="seen-heading">
      <h3 id="seen-heading">${isCounted || isDone ? 'What you counted' : 'Or enter what you counted'}</h3>
      ${isCounted || isDone ? nothing : html`<p>An empty field means: not counted. 1 number is enough to begin.</p>`}
      ${chosen.asked && !isDone ? html`<p class="asked-for" role="status">${sayAskedFor(chosen.asked)}</p>` : nothing}
      ${standsRow(snapshot, send)} ${countFolds(snapshot, send)} ${joinFold(view)}
      ${isCounted ? html`<button type="button" class="button" @click=${() => clear(view)}>Clear all counts</button>` : nothing}
    </section>
    ${isCounted && !isDone ? result(view, answer) : nothing}
    ${
      isCounted || isDone
        ? html`<details class="fold"><summary>Usual stories</summary>${stories(snapshot, send, choose)}</details>`
        : nothing
    }
  </div>`;
}

function clear({ snapshot: { project }, send, choose }: View): void {
  choose({ ...nothingChosen });
  if (sentIn(project)) send({ type: 'CHOOSE', project: withoutAnswer(project) });
  send({ type: 'CLEAR_COUNTS' });
}

function stories(snapshot: Snapshot, send: Send, choose: Choose): TemplateResult {
  const { plan } = snapshot.making;
  const tell = (id: StoryId): void => {
    const seen = seenOfStory(id, plan);
    if (!seen) return;
    const asked = fieldAskedFor(id, plan);
    choose({ ...nothingChosen, arriving: asked === null, asked: asked === null ? null : id });
    send({ type: 'TAKE_SEEN', seen });
    if (asked !== null) goToField(asked, snapshot, send);
  };
  return html`<section class="stories" aria-label="Usual stories">
    <h3>Which of these is yours?</h3>
    <ul>
      ${storiesFor(plan).map((id) => html`<li><button type="button" class="story" @click=${() => tell(id)}>${sayStory(id)}</button></li>`)}
    </ul>
    <h3>${askSight}</h3>
    <ul>
      ${sightsFor(plan).map(({ id, edging, looked }) => {
        const see = (): void => choose({ ...nothingChosen, arriving: true, looked: [looked] });
        return html`<li><button type="button" class="story" @click=${see}>${saySight(id, edging, plan.edgings.length)}</button></li>`;
      })}
    </ul>
  </section>`;
}

function result(of: View, answer: Answer | null): TemplateResult {
  const { snapshot, send } = of;
  const inside = (): TemplateResult => {
    if (!answer)
      return html`<p>Some numbers cannot be read yet.</p>
        <button type="button" class="button" @click=${() => check(snapshot, send)}>Check my counts</button>`;
    const { explained } = answer;
    return html`${progress(answer)}${explained ? html`${sentAnswer({ ...of, explained }, answer)}${found({ ...of, explained })}` : nothing}`;
  };
  return html`<section class="wrong-result" id=${RESULT_ID} tabindex="-1" aria-labelledby="wrong-heading">
    <h3 id="wrong-heading">What happened</h3>
    ${otherShown(of, answer)}
    ${inside()}
  </section>`;
}

const progress = ({ settled, slow, causes }: Answer): TemplateResult | typeof nothing =>
  settled || !slow ? nothing : html`<p class="muted wrong-progress">${sayLooking(causes)}</p>`;

/** The way back where the entry of what is shown is closed, or not on the list any more. */
function otherShown(
  { snapshot, send, chosen }: View,
  answer: Answer | null,
): TemplateResult | typeof nothing {
  const { preview } = snapshot;
  if (!preview) return nothing;
  const explanations = answer?.explained?.explanations ?? [];
  const open = openKey(explanations, chosen);
  const isOpen = explanations.some((one) => one.mishaps === preview.mishaps && keyOf(one) === open);
  return isOpen ? nothing : backToCounts(send);
}

function found(view: Answered): TemplateResult {
  const { snapshot, send, chosen, choose } = view;
  const { explanations, nearest } = view.explained;
  const [best] = explanations;
  if (best && best.causes.length === 0)
    return html`<p class="wrong-says"><b>All that you counted is as the recipe has it.</b></p>
      <p>Count something else. The last edging shows most.</p>`;
  if (!best)
    return html`<p class="wrong-says" role="status"><b>Nothing fits all of it, not even 3 mishaps at once.</b></p>
      <p>${nearest ? `The nearest is ${many(nearest.off, 'stitch', 'stitches')} off. Count once more where it differs.` : 'Count once more, side by side.'}</p>
      ${lookedList(snapshot, chosen, choose)} ${causesList(view, nearest ? [nearest.explanation] : [])} ${recount(snapshot, send)}`;
  const { named, others } = answerAmong(view, explanations);
  const simple = others.filter(({ causes }) => causes.length === best.causes.length);
  const rest = others.filter((one) => !simple.includes(one));
  return html`<p class="wrong-says" role="status"><b>${sayWays(explanations)}</b></p>
    ${lookedList(snapshot, chosen, choose)} ${cureForAll(view)} ${nextCountCard(view)}
    ${simple.length === 0 ? nothing : causesList(view, simple, named === null)}
    ${rest.length === 0 ? nothing : html`<details class="fold together"><summary>${sayTogether(rest.length, best.causes.length + 1)}</summary>${causesList(view, rest, false)}</details>`}
    ${recount(snapshot, send)}`;
}

/** The front itself may be miscounted, whatever else fits. */
function recount(snapshot: Snapshot, send: Send): TemplateResult | typeof nothing {
  const { seen } = snapshot.making;
  if (seen.front || Object.keys(seen).length === 0) return nothing;
  return html`<div class="recount"><p>A miscounted front looks just like this, more often than you think.</p>
    <button type="button" class="button" @click=${() => goToField(fieldNames.frontAgain(0), snapshot, send)}>Count the front again</button></div>`;
}
