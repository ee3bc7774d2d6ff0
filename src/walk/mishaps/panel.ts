/** Play with mishaps: choose one, say where it happens, put it in, and see what comes of it. */
import { html, nothing, type TemplateResult } from 'lit-html';
import {
  type ActKind,
  type ActRound,
  actRounds,
  type Bounds,
  checkActs,
  entryOf,
  has,
  kindsIn,
  type Mishap,
  needs,
  type Plan,
  whyNot,
} from '../../../core/index.ts';
import { numberField } from '../../controls/number-field.ts';
import { segmented } from '../../controls/segmented.ts';
import type { AppEvent, Send, Snapshot } from '../../state/snapshot.ts';
import { sayProblem } from '../../words/catalogue.ts';
import { sayInApp } from '../../words/problems-view.ts';
import { speakerOf } from '../../words/speaker.ts';
import { countLabel, directionWords, mishapStory, sayWhyNot, TIMES } from '../../words/wrong/mishaps.ts';
import { type Choose, type Chosen, type Putting, withDraft } from './chosen.ts';
import { countFor, type Draft, fitted, placesFor, readDraft } from './draft.ts';
import { mishapsResult, RESULT_ID, wayBack } from './result.ts';

export { nothingChosen } from './chosen.ts';

export function mishapsPanel(snapshot: Snapshot, send: Send, chosen: Chosen, choose: Choose): TemplateResult {
  const draft = fitted(chosen.draft, snapshot.making.plan);
  const shown = { ...chosen, draft };
  const { round } = draft.when;
  return html`<div class="mishaps">
    ${snapshot.project.mishaps.length === 0 ? html`<p>Choose what a hand can do by mistake. The walk and the drawing then show it.</p>` : nothing}
    ${mishapsResult(snapshot, send, shown, choose)} ${wayBack(snapshot, send, shown, choose)}
    <div class="mishaps-choice">
      <h4 id="mishaps-when">${snapshot.project.mishaps.length === 0 ? 'When does it happen?' : 'Put in one more'}</h4>
      ${segmented(
        'When does it happen?',
        round,
        actRounds.map((value) => ({ value, says: TIMES[value] })),
        (round: ActRound) =>
          choose((now) => withDraft(now, { when: { ...now.draft.when, round }, kind: null })),
      )}
      ${round === 'edging' && snapshot.making.plan.edgings.length > 1 ? whichEdging(shown, choose, snapshot.making.plan) : nothing}
      <ul class="mishap-kinds" aria-labelledby="mishaps-when">
        ${kindsIn(round).map((kind) => html`<li>${kindEntry(kind, { snapshot, send, chosen: shown, choose })}</li>`)}
      </ul>
    </div>
  </div>`;
}

function whichEdging(chosen: Chosen, choose: Choose, { edgings }: Plan): TemplateResult {
  const { draft } = chosen;
  const options = edgings.map((_, edging) => `round ${edging + 1}`);
  return chooser(
    { label: 'edging round', id: 'mishap-edging', options, chosen: draft.when.edging },
    (edging) =>
      choose((now) => withDraft(now, { when: { ...now.draft.when, edging }, place: null, count: null })),
  );
}

function kindEntry(kind: ActKind, { snapshot, send, chosen, choose }: Putting): TemplateResult {
  const { draft } = chosen;
  const { plan } = snapshot.making;
  const why = whyNot(kind, draft.when, plan);
  const { title, story } = mishapStory(kind, draft.when.round, plan, snapshot.settings);
  const open = draft.kind === kind && why === null;
  const id = `mishap-${kind}`;
  const press = (): void => {
    if (why !== null) return;
    choose((now) => withDraft(now, { kind: open ? null : kind, place: null, count: null }));
  };
  return html`<button type="button" class="mishap-kind" aria-expanded=${open ? 'true' : 'false'}
      aria-controls=${open ? id : nothing} aria-disabled=${why === null ? nothing : 'true'} @click=${press}>
      <span class="mishap-title">${title}</span>
      <span class="mishap-story">${why === null ? story : sayWhyNot(why)}</span>
    </button>
    ${open ? html`<div class="mishap-place" id=${id}>${placing({ snapshot, send, chosen, choose })}</div>` : nothing}`;
}

function placing({ snapshot, send, chosen, choose }: Putting): TemplateResult {
  const { draft } = chosen;
  const { plan } = snapshot.making;
  const kind = draft.kind as ActKind;
  const change = (part: Partial<Draft>): void => choose((now) => withDraft(now, part));
  const count = countFor(draft, plan);
  return html`
    ${needs(kind, 'side') && plan.edge.sides.length > 1 ? sideChooser(draft, plan, change) : nothing}
    ${needs(kind, 'corner') ? cornerChooser(draft, plan, change) : nothing}
    ${needs(kind, 'place') ? number({ at: 'place', label: 'stitch of the side', bounds: placesFor(draft, plan) }, snapshot, chosen, change) : nothing}
    ${count ? number({ at: 'count', label: countLabel(kind, plan), bounds: count }, snapshot, chosen, change) : nothing}
    ${ways(draft, plan, change)}
    ${otherProblems(chosen, snapshot)}
    <button type="button" class="button action" @click=${() => putIn(snapshot, send, choose)}>Put it in</button>`;
}

/** Adds the mishap if core can carry it out; otherwise tells what is in the way. */
function putIn({ project, making }: Snapshot, send: Send, choose: Choose): void {
  let mishaps: readonly Mishap[] | null = null;
  choose((now) => {
    const read = readDraft(fitted(now.draft, making.plan), making.plan);
    const all = read.ok ? [...project.mishaps, read.mishap] : project.mishaps;
    const problems = read.ok ? checkActs(all, making.plan) : read.problems;
    if (problems.length > 0) return { ...now, problems };
    mishaps = all;
    return withDraft(now, { kind: null });
  });
  if (!mishaps) return;
  send({ type: 'CHANGE', project: { mishaps } });
  // The result stands above, drawn with the next frame.
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      const result = document.getElementById(RESULT_ID);
      result?.focus({ preventScroll: true });
      result?.scrollIntoView({ block: 'nearest' });
    }),
  );
}

function otherProblems({ problems }: Chosen, snapshot: Snapshot): TemplateResult | typeof nothing {
  const others = problems.filter(({ at }) => at !== 'mishap.place' && at !== 'mishap.count');
  if (others.length === 0) return nothing;
  return html`<div role="alert">${others.map((problem) => html`<p class="problem-line">${sayInApp(problem, snapshot)}.</p>`)}</div>`;
}

type Change = (part: Partial<Draft>) => void;

function sideChooser(draft: Draft, plan: Plan, change: Change): TemplateResult {
  const isFront = draft.kind !== null && entryOf(draft.kind).onFront === true;
  const options = plan.faces.map((front, side) =>
    isFront ? `${side + 1}` : `${side + 1}, faces front ${front + 1}`,
  );
  return chooser(
    { label: isFront ? 'front side' : 'back side', id: 'mishap-side', options, chosen: draft.side },
    (side) => change({ side, place: null, count: null }),
  );
}

function cornerChooser(draft: Draft, plan: Plan, change: Change): TemplateResult {
  const options = plan.cornerFaces.map((_, corner) => `${corner + 1}, after side ${corner + 1}`);
  return chooser({ label: 'back corner', id: 'mishap-corner', options, chosen: draft.corner }, (corner) =>
    change({ corner, count: null }),
  );
}

type Choosing = { label: string; id: string; options: readonly string[]; chosen: number };

function chooser({ label, id, options, chosen }: Choosing, choose: (index: number) => void): TemplateResult {
  const pick = (event: Event): void => choose((event.target as HTMLSelectElement).selectedIndex);
  return html`<div class="count wide">
    <label class="count-label" for=${id}>${label}</label>
    <select id=${id} @change=${pick}>
      ${options.map((says, index) => html`<option .selected=${index === chosen}>${says}</option>`)}
    </select>
  </div>`;
}

/** A field of the page's own kind, whose text goes into the draft and not into the project. */
function number(
  { at, label, bounds }: { at: 'place' | 'count'; label: string; bounds: Bounds },
  { settings }: Snapshot,
  { draft, problems }: Chosen,
  change: Change,
): TemplateResult {
  const take = (event: AppEvent): void => {
    if (event.type === 'TYPE') change({ [at]: event.text });
  };
  const { least, most, usual } = bounds;
  const field = `mishap.${at}`;
  const problem = problems.find((one) => one.at === field);
  return numberField(
    {
      field,
      label,
      text: draft[at] ?? `${usual}`,
      least,
      most,
      wide: true,
      problem: problem && sayProblem(problem, speakerOf(settings), label),
    },
    take,
  );
}

/** The either-or questions of a kind, each as two words of which one is pressed. */
function ways(draft: Draft, plan: Plan, change: Change): TemplateResult {
  const kind = draft.kind as ActKind;
  const arm = plan.edgings[draft.when.edging]?.arm ?? [0, 0];
  const ends = { before: 'before the corner', after: 'after the corner' };
  const pieces = { back: 'two of the back', front: 'two of the front' };
  const thens = { 'from-corner': 'from the corner', 'from-total': 'from the total' };
  return html`
    ${
      entryOf(kind).isSigned
        ? way('Early or late', draft.late ? 'late' : 'early', directionWords(kind), (value) =>
            change({ late: value === 'late', count: null }),
          )
        : nothing
    }
    ${
      needs(kind, 'end') && arm[0] > 0 && arm[1] > 0
        ? way('Before or after', draft.end, ends, (end) => change({ end }))
        : nothing
    }
    ${has(kind, 'of') ? way('Which piece gives two', draft.of, pieces, (of) => change({ of })) : nothing}
    ${
      has(kind, 'then')
        ? html`<p class="mishap-ask">You count the next side</p>
            ${way('You count the next side', draft.then, thens, (then) => change({ then }))}`
        : nothing
    }`;
}

function way<Value extends string>(
  name: string,
  chosen: Value,
  words: Record<Value, string>,
  choose: (value: Value) => void,
): TemplateResult {
  const options = (Object.entries(words) as [Value, string][]).map(([value, says]) => ({ value, says }));
  return segmented(name, chosen, options, choose);
}
