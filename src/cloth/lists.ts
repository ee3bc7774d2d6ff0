/** What to buy, what to have at hand, how long it takes, and what it costs at the maker's own prices. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { ballsFor, machineThread, together } from '../../core/index.ts';
import { sayDuration } from '../making/pace.ts';
import { seamLength } from '../state/cloth.ts';
import { clothFields as f, type Price } from '../state/cloth-fields.ts';
import { ballFor, layoutOf, padOf, partsOf } from '../state/cloth-stock.ts';
import { sayCut } from '../words/cloth/cut.ts';
import { sayBand, sayLong, sayMoney } from '../words/cloth/lengths.ts';
import { sayBalls, sayNeed, sayPad, toBuy } from '../words/cloth/stock.ts';
import { measureField } from './measure-field.ts';
import type { Place } from './place.ts';
import { needsOf } from './yarn.ts';

export function listsPart(place: Place): TemplateResult {
  return html`<section class="cloth-part" aria-labelledby="shopping-heading">
    <h3 id="shopping-heading">Shopping list</h3>
    <ul class="cloth-list shopping">${shopping(place).map((line) => html`<li>${line}</li>`)}</ul>
    <details class="fold"><summary>At hand</summary>
      <ul class="cloth-list">${tools(place).map((tool) => html`<li>${tool}</li>`)}</ul>
    </details>
    ${timeFold(place)} ${costFold(place)}
  </section>`;
}

export function shopping(place: Place): string[] {
  const { cloth, snapshot } = place;
  const { units } = snapshot.settings;
  const needs = needsOf(place);
  const laid = layoutOf(cloth);
  const pad = padOf(cloth, units);
  const yarn = (part: 'foundation' | 'edging'): string => {
    const own = needs.filter((need) => (need.part === 'foundation') === (part === 'foundation'));
    const balls = sayBalls(own, ballFor(cloth.measures, part));
    const name = part === 'foundation' ? 'Foundation yarn' : 'Edging and join yarn';
    return balls
      ? `${name}: ${balls}`
      : `${name}: ${own.map((need) => (own.length > 1 ? `${need.part} ${sayNeed(need, units)}` : sayNeed(need, units))).join('; ')}`;
  };
  const cloths = !cloth.plan
    ? 'Cloth: measure the panel first'
    : laid?.ok
      ? `Cloth: ${sayLong(toBuy(laid.value.length, units), units)}`
      : `Cloth: a piece ${sayCut(cloth.plan, units).size}${cloth.isMirrored ? ', twice' : ''}`;
  return [
    yarn('foundation'),
    yarn('edging'),
    cloths,
    ...(cloth.plan ? [`Thread: ${threadSaid(place)}`] : []),
    ...(pad
      ? [
          `${cloth.becomes === 'cover' ? 'Form' : place.pad.charAt(0).toUpperCase() + place.pad.slice(1)}: ${sayPad(pad.pad, units)}`.replace(
            /\.$/,
            '',
          ),
        ]
      : []),
  ];
}

function threadSaid({ cloth, snapshot }: Place): string {
  const { units } = snapshot.settings;
  const times = cloth.isMirrored ? 2 : 1;
  if (cloth.measures.chosen<'hand' | 'machine'>(f.sewing, 'hand') === 'hand')
    return sayLong((cloth.sewing?.cut ?? 0) * times, units);
  return sayBand(machineThread(cloth.plan ? seamLength(cloth.plan) * times : 0), (mm) => sayLong(mm, units));
}

function tools({ cloth, snapshot }: Place): string[] {
  const isByHand = cloth.measures.chosen<'hand' | 'machine'>(f.sewing, 'hand') === 'hand';
  const markers = snapshot.making.edge.corners.length + 2;
  return [
    'Hook, tape, scissors',
    `${markers} stitch markers`,
    `${cloth.pins?.length ?? 'Enough'} pins`,
    isByHand ? 'Sewing needle' : 'Sewing machine, straight stitch',
    'Yarn needle for the closings',
    'Iron',
  ];
}

/** Stitches at the maker's pace; sewing goes over each strip stitch once. */
function timeFold({ cloth, snapshot, pace }: Place): TemplateResult {
  const stitches = partsOf(snapshot.making, cloth).reduce((sum, part) => sum + part.stitches, 0);
  return html`<details class="fold"><summary>Time</summary>
    ${
      pace === null
        ? html`<p>Walk 12 stitches or more beside your work, and the time stands here.</p>`
        : html`<p>At your pace the ${stitches} stitches take ${sayDuration(pace * stitches)}. Pinning and sewing come on top.</p>`
    }
  </details>`;
}

/** Nothing is assumed: only what has a price is added up. */
function costFold(place: Place): TemplateResult {
  const costs = costOf(place);
  const total = costs.reduce((sum, { amount }) => sum + amount, 0);
  const hasPad = place.cloth.becomes !== 'bag';
  const shown: Price[] = [
    'foundation-ball',
    'edging-ball',
    'cloth',
    ...(hasPad ? ['pad' as const] : []),
    'thread',
    'hour',
  ];
  const unit = place.snapshot.settings.units === 'cm' ? 'a metre' : 'a yard';
  return html`<details class="fold"><summary>Cost, for 1 piece</summary>
    <p>In your own money. Only what you fill in is counted.</p>
    <div class="measures">${shown.map((of) => measureField(place, f.price(of), of === 'cloth' ? unit : ''))}</div>
    ${costs.length > 0 ? html`<ul class="cloth-list">${costs.map(({ says, amount }) => html`<li>${says}: ${sayMoney(amount)}</li>`)}</ul><p><b>${sayMoney(total)}</b> in all</p>` : nothing}
  </details>`;
}

function costOf(place: Place): { says: string; amount: number }[] {
  const { cloth, snapshot, pace } = place;
  const { units } = snapshot.settings;
  const price = (of: Price): number | undefined => cloth.measures.value(f.price(of));
  const needs = needsOf(place);
  const yarn = (part: 'foundation' | 'edging', says: string) => {
    const each = price(`${part}-ball`);
    const ball = ballFor(cloth.measures, part);
    const metres = together(
      needs.filter((need) => (need.part === 'foundation') === (part === 'foundation')),
      'metres',
    );
    if (each === undefined || !ball || !metres) return [];
    // The upper end of a band: a ball too many can be kept.
    const balls = ballsFor(metres, ball)[1];
    return [{ says: `${says}, ${balls} × ${sayMoney(each)}`, amount: balls * each }];
  };
  const laid = layoutOf(cloth);
  const clothPrice = price('cloth');
  const metre = units === 'cm' ? 1000 : 914.4;
  const bought = laid?.ok ? toBuy(laid.value.length, units) / metre : null;
  const hour = price('hour');
  const stitches = partsOf(snapshot.making, cloth).reduce((sum, part) => sum + part.stitches, 0);
  const single = (of: 'pad' | 'thread', says: string) => {
    const amount = price(of);
    return amount === undefined ? [] : [{ says, amount }];
  };
  return [
    ...yarn('foundation', 'Foundation yarn'),
    ...yarn('edging', 'Edging yarn'),
    ...(clothPrice === undefined || bought === null
      ? []
      : [{ says: 'Cloth', amount: (clothPrice * bought) / (cloth.measures.value(f.pieces) ?? 1) }]),
    ...(cloth.becomes === 'bag' ? [] : single('pad', cloth.becomes === 'cover' ? 'Form' : place.pad)),
    ...single('thread', 'Thread'),
    ...(hour === undefined || pace === null
      ? []
      : [{ says: 'Time', amount: (hour * pace * stitches) / 3_600_000 }]),
  ];
}
