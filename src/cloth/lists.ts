/** What to have at hand, how long it takes, and what it costs at the maker's own prices. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { ballsFor, together } from '../../core/index.ts';
import { sayDuration } from '../making/pace.ts';
import { clothFields as f, type Price } from '../state/cloth-fields.ts';
import { ballFor, layoutOf, partsOf } from '../state/cloth-stock.ts';
import {
  COST,
  type Cost,
  costUnit,
  sayCost,
  sayTime,
  sayTools,
  sayTotal,
  TIME_HEADING,
  TOOLS_HEADING,
} from '../words/cloth/shopping.ts';
import { toBuy } from '../words/cloth/stock.ts';
import { measureField } from './measure-field.ts';
import type { Place } from './place.ts';
import { type Colour, needsOf } from './yarn.ts';

export function toolsFold({ cloth, snapshot }: Place): TemplateResult {
  // A marker a corner, and 2 for where rounds begin.
  const markers = snapshot.making.edge.corners.length + 2;
  const tools = sayTools(markers, cloth.pins?.length ?? null, !cloth.isByMachine);
  return html`<details class="fold"><summary>${TOOLS_HEADING}</summary>
    <ul class="cloth-list">${tools.map((tool) => html`<li>${tool}</li>`)}</ul>
  </details>`;
}

const stitchesOf = ({ cloth, snapshot }: Place): number =>
  partsOf(snapshot.making, cloth).reduce((sum, part) => sum + part.stitches, 0);

/** Stitches at the maker's pace; sewing goes over each strip stitch once. */
export function timeFold(place: Place): TemplateResult {
  const stitches = stitchesOf(place);
  const time = place.pace === null ? null : sayDuration(place.pace * stitches);
  return html`<details class="fold"><summary>${TIME_HEADING}</summary>
    <p>${sayTime(time, stitches)}</p>
  </details>`;
}

/** Nothing is assumed: only what has a price is added up. */
export function costFold(place: Place): TemplateResult {
  const costs = costsOf(place);
  const total = sayTotal(costs.reduce((sum, { amount }) => sum + amount, 0));
  const { units } = place.snapshot.settings;
  return html`<details class="fold"><summary>${COST.heading}</summary>
    <p>${COST.how}</p>
    <div class="measures">${pricesFor(place).map((of) => measureField(place, f.price(of), costUnit(of, units)))}</div>
    ${costs.length > 0 ? html`<ul class="cloth-list">${costs.map((cost) => html`<li>${sayCost(cost, place.inside)}</li>`)}</ul><p><b>${total.amount}</b>${total.rest}</p>` : nothing}
  </details>`;
}

const pricesFor = ({ cloth }: Place): Price[] => [
  'foundation-ball',
  'edging-ball',
  'cloth',
  ...(cloth.becomes === 'bag' ? [] : ['pad' as const]),
  'thread',
  'hour',
];

function costsOf(place: Place): Cost[] {
  const { measures } = place.cloth;
  return pricesFor(place).flatMap((of): Cost[] => {
    const price = measures.value(f.price(of));
    if (price === undefined) return [];
    if (of === 'foundation-ball' || of === 'edging-ball') return ballCost(place, of, price);
    if (of === 'cloth') return clothCost(place, price);
    if (of === 'hour')
      return place.pace === null
        ? []
        : [{ of, amount: (price * place.pace * stitchesOf(place)) / 3_600_000 }];
    return [{ of, amount: price }];
  });
}

function ballCost(place: Place, of: 'foundation-ball' | 'edging-ball', each: number): Cost[] {
  const colour: Colour = of === 'foundation-ball' ? 'foundation' : 'edging';
  const ball = ballFor(place.cloth.measures, colour);
  const metres = together(needsOf(place, colour), 'metres');
  if (!ball || !metres) return [];
  // The upper end of a band: a ball too many can be kept.
  const balls = ballsFor(metres, ball)[1];
  return [{ of, amount: balls * each, balls, each }];
}

/** A piece's share of the length that is bought. */
function clothCost({ cloth, snapshot }: Place, price: number): Cost[] {
  const { units } = snapshot.settings;
  const laid = layoutOf(cloth);
  if (!laid?.ok) return [];
  const lengths = toBuy(laid.value.length, units) / (units === 'cm' ? 1000 : 914.4);
  return [{ of: 'cloth', amount: (price * lengths) / (cloth.measures.value(f.pieces) ?? 1) }];
}
