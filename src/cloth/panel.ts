/** Cloth: what it is to be, measured, cut, pinned, sewn, and what to buy. */
import './cloth.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import { fieldId } from '../controls/fields.ts';
import { clothOfSnapshot } from '../state/cloth.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { saveFile } from '../take-along/save.ts';
import { savedAs } from '../words/cloth/figures.ts';
import { sayInside } from '../words/cloth/stock.ts';
import { PLACE_HEADING, WAYS } from '../words/cloth/what.ts';
import { term } from '../words/terms.ts';
import { answerPart } from './answer.ts';
import { afterCare, beforeCare } from './care.ts';
import { liesPart } from './lies.ts';
import { costFold, timeFold, toolsFold } from './lists.ts';
import { checkMeasures, MEASURE_ID, measurePart, measureSummary, onceDrawn } from './measure.ts';
import { PINS_ID, pinsPart } from './pins.ts';
import type { Look, Place } from './place.ts';
import { printSheets } from './print.ts';
import { DRAWN_ID, resultPart } from './result.ts';
import { fileOf } from './saving.ts';
import { sewingPart } from './sewing.ts';
import { wantedPart } from './wanted.ts';
import { whatPart } from './what.ts';

/**
 * @param pace milliseconds a stitch, once it is known
 * @param startsFromSize whether it is opened for a panel that is not made yet; asked at every drawing, true once
 */
export function openCloth(
  onChange: () => void,
  pace: () => number | null,
  startsFromSize: () => boolean,
): (snapshot: Snapshot, send: Send) => TemplateResult {
  let told = false;
  let look: Look = 'laid';
  let saved: Place['saved'] = null;
  // Who comes back finds the answer first. While one types it stays below: nothing moves under a finger.
  let isAnswerFirst = false;
  return (snapshot, send) => {
    const cloth = clothOfSnapshot(snapshot);
    const isOpening = document.querySelector('.cloth') === null;
    if (isOpening) isAnswerFirst = cloth.plan !== null;
    else if (!cloth.plan && !isBegun(snapshot)) isAnswerFirst = false;
    if (told && cloth.problems.length === 0) told = false;
    const pad = term('cushion-pad', snapshot.settings.dialect);
    const place: Place = {
      snapshot,
      send,
      cloth,
      problems: cloth.problems,
      told,
      pad,
      inside: sayInside(cloth.becomes, pad),
      pace: pace(),
      look,
      lookAt: (next) => {
        look = next;
        onChange();
      },
      saved,
      saveFigure: (what) => {
        const file = fileOf(place, what);
        if (!file) return;
        saveFile(file.text, 'image/svg+xml', file.name);
        saved = { what, says: savedAs(file.name) };
        onChange();
      },
    };
    const check = (): void => {
      told = cloth.problems.length > 0;
      isAnswerFirst ||= cloth.plan !== null;
      onChange();
      checkMeasures(cloth.problems.length === 0);
    };
    if (startsFromSize()) onceDrawn(() => goDown(fieldId(f.wantedWidth)));
    return clothPanel(place, isAnswerFirst, check);
  };
}

const isBegun = ({ project }: Snapshot): boolean =>
  Object.entries(project.texts).some(([field, text]) => field.startsWith('cloth.') && text !== '');

function clothPanel(place: Place, isAnswerFirst: boolean, check: () => void): TemplateResult {
  const { plan } = place.cloth;
  return html`<div class="cloth ${isAnswerFirst ? 'answer-first' : ''}">
    ${measureSummary(place)}
    <h2 class="unseen">${PLACE_HEADING}</h2>
    ${isAnswerFirst ? html`${answerPart(place)} ${plan ? waysDown() : nothing}` : nothing}
    <div class="cloth-column cloth-asked">
      ${whatPart(place)}
      <div class="folds">${wantedPart(place)} ${beforeCare()}</div>
      ${measurePart(place, check)}
    </div>
    <div class="cloth-column cloth-rest">
      ${isAnswerFirst ? nothing : answerPart(place)}
      ${resultPart(place)}
      ${plan ? html`<div class="folds">${pinsPart(place)} ${sewingPart(place)} ${liesPart(place, plan)}</div>` : nothing}
      <div class="folds">${toolsFold(place)} ${timeFold(place)} ${costFold(place)} ${afterCare(place)}</div>
    </div>
    ${plan ? printSheets(place) : nothing}
  </div>`;
}

/** Ways down a long page, past what is known. */
const waysDown = (): TemplateResult => html`<nav class="cloth-ways" aria-label=${WAYS.heading}>
  ${(['measures', 'drawing', 'pins'] as const).map(
    (way) =>
      html`<button type="button" class="button cloth-way" @click=${() => goDown(WAY_IDS[way])}>${WAYS[way]}</button>`,
  )}
</nav>`;

const WAY_IDS = { measures: MEASURE_ID, drawing: DRAWN_ID, pins: PINS_ID } as const;

/** To a heading, or to a fold, which opens. */
function goDown(id: string): void {
  const aim = document.getElementById(id);
  const fold = aim?.closest('details');
  if (fold) fold.open = true;
  aim?.focus({ preventScroll: true });
  (fold ?? aim)?.scrollIntoView({ block: 'start' });
}
