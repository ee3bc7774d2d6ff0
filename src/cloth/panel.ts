/** Cloth: what it is to be, measured, cut, pinned, sewn, and what to buy. */
import './cloth.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import { clothOfSnapshot } from '../state/cloth.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { term } from '../words/terms.ts';
import { afterCare, beforeCare } from './care.ts';
import { liesPart } from './lies.ts';
import { listsPart } from './lists.ts';
import { checkMeasures, measurePart, measureSummary } from './measure.ts';
import { pinsPart } from './pins.ts';
import type { Place } from './place.ts';
import { printSheets } from './print.ts';
import { resultPart } from './result.ts';
import { sewingPart } from './sewing.ts';
import { stockPart } from './stock.ts';
import { wantedPart } from './wanted.ts';
import { whatPart } from './what.ts';
import { yarnPart } from './yarn.ts';

export function openCloth(
  onChange: () => void,
  pace: () => number | null,
): (snapshot: Snapshot, send: Send) => TemplateResult {
  let told = false;
  return (snapshot, send) => {
    const cloth = clothOfSnapshot(snapshot);
    if (told && cloth.problems.length === 0) told = false;
    const place: Place = {
      snapshot,
      send,
      cloth,
      problems: cloth.problems,
      told,
      pad: term('cushion-pad', snapshot.settings.dialect),
      pace: pace(),
    };
    const check = (): void => {
      told = cloth.problems.length > 0;
      onChange();
      checkMeasures(cloth.problems.length === 0);
    };
    return clothPanel(place, check);
  };
}

function clothPanel(place: Place, check: () => void): TemplateResult {
  const { plan } = place.cloth;
  return html`<div class="cloth">
    ${measureSummary(place)}
    <h2 class="unseen">Cloth</h2>
    <div class="cloth-column">
      ${whatPart(place)} ${wantedPart(place)} ${beforeCare()} ${measurePart(place, check)}
    </div>
    <div class="cloth-column">
      ${resultPart(place)}
      ${plan ? html`${liesPart(place, plan)} ${pinsPart(place)} ${sewingPart(place)}` : nothing}
      ${yarnPart(place)} ${stockPart(place)} ${listsPart(place)} ${afterCare(place)}
    </div>
    ${plan ? printSheets(place) : nothing}
  </div>`;
}
