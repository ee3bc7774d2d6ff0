/** The shopping list: a line each for yarns, cloth, thread and pad; a line opened says by what it is reckoned. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { machineThread } from '../../core/index.ts';
import { segmented } from '../controls/segmented.ts';
import { clothDefaults, seamLength } from '../state/cloth.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import { layoutOf, padOf, selvedge } from '../state/cloth-stock.ts';
import { sayCut } from '../words/cloth/cut.ts';
import { opening } from '../words/cloth/fields.ts';
import { SAVE_LAYOUT, TRUE_SIZE } from '../words/cloth/figures.ts';
import { sayBand, sayLong, sayRough } from '../words/cloth/lengths.ts';
import { sayThread, sayThreadDefaults, sayThreadEnds } from '../words/cloth/making.ts';
import { MACHINE_THREAD, SHOPPING, sayPieceOf, saySelvedge, sayTooNarrow } from '../words/cloth/shopping.ts';
import { PAD_WAITS, sayLayout, sayPad, sayPadSize, toBuy } from '../words/cloth/stock.ts';
import { showFigure } from './figure.ts';
import { measureField } from './measure-field.ts';
import { padRuleChoice } from './pad.ts';
import { choose, type Place } from './place.ts';
import { figureOf } from './saving.ts';
import { yarnAmounts, yarnDetails } from './yarn.ts';

const SHOPPING_ID = 'shopping-heading';

/** One thing to buy: how much, and what is asked to know it better. */
type Line = { name: string; amounts: readonly string[]; more: TemplateResult };

export function shoppingPart(place: Place): TemplateResult {
  return html`<section class="cloth-part" aria-labelledby=${SHOPPING_ID}>
    <h3 id=${SHOPPING_ID}>${SHOPPING.heading}</h3>
    <p class="muted">${SHOPPING.how}</p>
    <div class="folds shopping">
      ${shopping(place).map(
        ({ name, amounts, more }) => html`<details class="fold buy">
          <summary><span class="buy-name">${name}</span> <span class="buy-amount">${amounts.map((amount) => html`<span>${amount}</span> `)}</span></summary>
          ${more}
        </details>`,
      )}
    </div>
  </section>`;
}

function shopping(place: Place): Line[] {
  const { cloth } = place;
  const yarn = (part: 'foundation' | 'edging'): Line => ({
    name: SHOPPING[part],
    amounts: yarnAmounts(place, part),
    more: yarnDetails(place, part),
  });
  return [
    yarn('foundation'),
    yarn('edging'),
    { name: SHOPPING.cloth, amounts: [clothAmount(place)], more: clothDetails(place) },
    { name: SHOPPING.thread, amounts: [threadAmount(place)], more: threadDetails(place) },
    ...(cloth.becomes === 'bag' ? [] : [padLine(place)]),
  ];
}

function clothAmount({ cloth, snapshot }: Place): string {
  const { units } = snapshot.settings;
  const laid = layoutOf(cloth);
  if (!cloth.plan) return SHOPPING.measureFirst;
  return laid?.ok
    ? sayLong(toBuy(laid.value.length, units), units)
    : sayPieceOf(sayCut(cloth.plan, units).size, cloth.isMirrored);
}

function clothDetails(place: Place): TemplateResult {
  return html`<div class="measures">${measureField(place, f.pieces)} ${measureField(place, f.clothWidth)}</div>
    <div class="cloth-row"><span>${SHOPPING.way}</span>${segmented(
      SHOPPING.way,
      place.cloth.measures.chosen<'yes' | 'no'>(f.way, 'no'),
      (['no', 'yes'] as const).map((value) => ({ value, says: SHOPPING[value] })),
      (way) => choose(place, f.way, way),
    )}</div>
    <div class="measures">${measureField(place, f.repeat)}</div>
    ${layoutSaid(place)}`;
}

function layoutSaid(place: Place): TemplateResult {
  const { cloth, snapshot, saved, saveFigure } = place;
  const { units } = snapshot.settings;
  const laid = layoutOf(cloth);
  if (!laid)
    return html`<p class="muted">${cloth.plan ? SHOPPING.layoutNeeds : opening(SHOPPING.measureFirst)}</p>`;
  if (!laid.ok) {
    const wanted = laid.problems.find(({ code }) => code === 'cloth-too-narrow')?.params.wanted;
    return html`<p class="consequence">${wanted === undefined ? SHOPPING.layoutUnread : sayTooNarrow(Number(wanted), units)}</p>`;
  }
  const figure = figureOf(place, 'layout');
  return html`<p class="consequence">${sayLayout(laid.value, units)}</p>
    <figure class="cloth-figure">
      ${figure ? showFigure(figure) : nothing}
      <figcaption>${saySelvedge(selvedge, units)}</figcaption>
      <button type="button" class="button" @click=${() => saveFigure('layout')}>${SAVE_LAYOUT}</button>
      <p class="muted" role="status">${saved?.what === 'layout' ? `${saved.says} ${TRUE_SIZE}` : nothing}</p>
    </figure>`;
}

function threadAmount({ cloth, snapshot }: Place): string {
  const { units } = snapshot.settings;
  if (!cloth.plan) return SHOPPING.measureFirst;
  const strips = cloth.isMirrored ? 2 : 1;
  return cloth.isByMachine
    ? sayBand(machineThread(seamLength(cloth.plan) * strips), (mm) => sayRough(mm, units))
    : sayRough((cloth.sewing?.cut ?? 0) * strips, units);
}

function threadDetails(place: Place): TemplateResult {
  const { cloth, snapshot } = place;
  const { units, dialect } = snapshot.settings;
  if (cloth.isByMachine) return html`<p>${MACHINE_THREAD}</p>`;
  const working = cloth.measures.value(f.working) ?? clothDefaults.working;
  return html`${cloth.sewing ? html`<p>${sayThread(cloth.sewing, working, units)} ${sayThreadEnds(dialect)}</p>` : nothing}
    <div class="measures">${measureField(place, f.thickness)} ${measureField(place, f.working)} ${measureField(place, f.tail)}</div>
    <p class="muted">${sayThreadDefaults(clothDefaults, units)}</p>`;
}

function padLine(place: Place): Line {
  const { cloth, snapshot, inside } = place;
  const { units } = snapshot.settings;
  const found = padOf(cloth, units);
  return {
    name: opening(inside),
    amounts: [found ? sayPadSize(found.pad, units) : SHOPPING.measureFirst],
    more: html`${padRuleChoice(place)}
      <p class=${found ? 'consequence' : 'muted'}>${found ? `${opening(inside)}: ${sayPad(found.pad, units)}` : PAD_WAITS}</p>`,
  };
}
