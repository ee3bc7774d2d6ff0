/** Checking a written pattern: its text, what was read of it, and after a yes what contradicts what. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { readWhole } from '../input/whole-number.ts';
import { readWrittenRounds, type WrittenRound } from '../input/written-rounds.ts';
import { patternFields as f } from '../state/pattern-fields.ts';
import type { Field } from '../state/snapshot.ts';
import { sayProblem } from '../words/catalogue.ts';
import { type Checked, checkWritten, type Worked } from './check.ts';
import { fieldText, type Place } from './place.ts';

/** The reading that the person has said is right. */
type Confirming = { read: string | null; confirm(text: string): void };

export function openCheck(onChange: () => void): (place: Place) => TemplateResult {
  let read: string | null = null;
  const confirm = (text: string): void => {
    read = text;
    onChange();
  };
  return (place) => checkPart(place, { read, confirm });
}

function checkPart(place: Place, confirming: Confirming): TemplateResult {
  const { snapshot, send, say } = place;
  const text = fieldText(snapshot, f.checked);
  const rounds = readWrittenRounds(text);
  const isRight = confirming.read === text && rounds.length > 0;
  const type = (field: Field, value: string): void => send({ type: 'TYPE', field, text: value });
  const number = (field: Field, label: string, usual: number): TemplateResult =>
    html`<label class="take-field"><span>${label}</span>
      <input type="text" inputmode="numeric" class="count-input" id="field-${field.replace('.', '-')}" autocomplete="off" spellcheck="false"
        .value=${fieldText(snapshot, field) || `${usual}`} @input=${(event: Event) => type(field, (event.target as HTMLInputElement).value)} /></label>`;
  return html`<p>${say.checkIntro}</p>
    <label class="take-field"><span>${say.checkField}</span>
      <textarea id="field-pattern-checked" rows="8" spellcheck="false" .value=${text}
        @input=${(event: Event) => type(f.checked, (event.target as HTMLTextAreaElement).value)}></textarea>
    </label>
    <div class="take-rule">
      ${number(f.checkSides, say.checkSides, usual(place).sideCount)} ${number(f.checkCorner, say.checkCorner, usual(place).corner)}
      ${number(f.checkArm, say.checkArm, usual(place).arm)}
    </div>
    <label class="tick"><input type="checkbox" .checked=${fieldText(snapshot, f.checkTakes) !== ''}
      @change=${(event: Event) => type(f.checkTakes, (event.target as HTMLInputElement).checked ? 'yes' : '')} /> ${say.checkTakes}</label>
    ${text === '' ? nothing : reading(rounds, place)}
    ${rounds.length === 0 || isRight ? nothing : html`<button type="button" class="button" @click=${() => confirming.confirm(text)}>${say.checkRight}</button>`}
    <div role="status">${isRight ? outcome(rounds, place) : nothing}</div>`;
}

/** Until something is typed, as the panel at hand. */
const usual = ({ snapshot: { making } }: Place): Worked => ({
  sideCount: Math.max(1, making.edge.corners.length) === 1 ? 4 : making.edge.sides.length,
  corner: making.edge.corners[0]?.size ?? 2,
  arm: making.plan.edgings[0]?.arm[0] ?? 1,
  takesCorners: false,
});

function workedOf(place: Place): Worked | null {
  const read = (field: Field, fallback: number): number | null => {
    const typed = readWhole(fieldText(place.snapshot, field) || `${fallback}`);
    return typed.ok && typed.value >= 0 ? typed.value : null;
  };
  const own = usual(place);
  const [sideCount, corner, arm] = [
    read(f.checkSides, own.sideCount),
    read(f.checkCorner, own.corner),
    read(f.checkArm, own.arm),
  ];
  if (sideCount === null || corner === null || arm === null) return null;
  return { sideCount, corner, arm, takesCorners: fieldText(place.snapshot, f.checkTakes) !== '' };
}

/** Every round with what was read of it: a person sees at once where it was read wrongly, or not at all. */
function reading(rounds: readonly WrittenRound[], { say, speaker }: Place): TemplateResult {
  if (rounds.length === 0) return html`<p>${say.checkNothing}</p>`;
  return html`<p>${say.checkRead}</p>
    <ol class="check-read">
      ${rounds.map(
        ({ round, line, read }) => html`<li class=${read ? '' : 'unread'}>
          <b>${read ? say.checkCount({ round, ...read }, speaker) : say.checkOpen({ round }, speaker)}</b>
          <span class="muted">${line}</span>
        </li>`,
      )}
    </ol>`;
}

function outcome(rounds: readonly WrittenRound[], place: Place): TemplateResult {
  const { say, speaker } = place;
  const worked = workedOf(place);
  if (!worked) return html`<p>${say.checkNumbers}</p>`;
  const checked = checkWritten(rounds, worked);
  if (!checked) return html`<p>${say.checkTooFew}</p>`;
  if (checked.problems.length === 0)
    return html`<p><b>${say.checkAgrees({ rounds: checked.compared }, speaker)}</b></p>`;
  return html`<ul>${told(checked, place).map((sentence) => html`<li>${sentence}</li>`)}</ul>
    ${checked.mend ? html`<p><b>${say.checkMend(checked.mend, speaker)}</b></p>` : html`<p>${say.checkNoMend}</p>`}`;
}

/** Rounds are told by the pattern's own numbers. */
const told = ({ problems, first }: Checked, { speaker }: Place): string[] =>
  problems.map((problem) => {
    const own =
      'round' in problem.params
        ? { ...problem, params: { ...problem.params, round: problem.params.round + first - 1 } }
        : problem;
    return `${sayProblem(own as typeof problem, speaker, '')}.`;
  });
