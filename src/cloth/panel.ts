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
import { afterCare, beforeCare } from './care.ts';
import { liesPart } from './lies.ts';
import { costFold, timeFold, toolsFold } from './lists.ts';
import { checkMeasures, measurePart, measureSummary, onceDrawn, RESULT_ID } from './measure.ts';
import { PINS_ID, pinsPart } from './pins.ts';
import type { Look, Place } from './place.ts';
import { printSheets } from './print.ts';
import { resultPart } from './result.ts';
import { fileOf } from './saving.ts';
import { sewingPart } from './sewing.ts';
import { SHOPPING_ID, shoppingPart } from './shopping.ts';
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
  return (snapshot, send) => {
    const cloth = clothOfSnapshot(snapshot);
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
      onChange();
      checkMeasures(cloth.problems.length === 0);
    };
    if (startsFromSize()) onceDrawn(() => goDown(fieldId(f.wantedWidth)));
    return clothPanel(place, check);
  };
}

function clothPanel(place: Place, check: () => void): TemplateResult {
  const { plan } = place.cloth;
  return html`<div class="cloth">
    ${measureSummary(place)}
    <h2 class="unseen">${PLACE_HEADING}</h2>
    ${plan ? waysDown() : nothing}
    <div class="cloth-column">
      ${whatPart(place)}
      <div class="folds">${wantedPart(place)} ${beforeCare()}</div>
      ${measurePart(place, check)}
    </div>
    <div class="cloth-column">
      ${resultPart(place)}
      ${plan ? html`<div class="folds">${pinsPart(place)} ${sewingPart(place)} ${liesPart(place, plan)}</div>` : nothing}
      ${shoppingPart(place)}
      <div class="folds">${toolsFold(place)} ${timeFold(place)} ${costFold(place)} ${afterCare(place)}</div>
    </div>
    ${plan ? printSheets(place) : nothing}
  </div>`;
}

/** Where the measures are already in, nobody scrolls past them. */
const waysDown = (): TemplateResult => html`<nav class="cloth-ways" aria-label=${WAYS.heading}>
  ${(['cut', 'pins', 'shopping'] as const).map(
    (way) =>
      html`<button type="button" class="button cloth-way" @click=${() => goDown(WAY_IDS[way])}>${WAYS[way]}</button>`,
  )}
</nav>`;

const WAY_IDS = { cut: RESULT_ID, pins: PINS_ID, shopping: SHOPPING_ID } as const;

/** To a heading, or to a fold, which opens. */
function goDown(id: string): void {
  const aim = document.getElementById(id);
  const fold = aim?.closest('details');
  if (fold) fold.open = true;
  aim?.focus({ preventScroll: true });
  (fold ?? aim)?.scrollIntoView({ block: 'start' });
}
