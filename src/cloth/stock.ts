/** The cloth to buy with its cutting layout, and the pad or form. */
import { html, nothing, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';
import { type Layout, type PadRule, pieceBox } from '../../core/index.ts';
import { segmented } from '../controls/segmented.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import { layoutOf, padOf, piecesOf } from '../state/cloth-stock.ts';
import { opening } from '../words/cloth/fields.ts';
import { sayLength } from '../words/cloth/lengths.ts';
import { PAD_RULES, sayLayout, sayPad } from '../words/cloth/stock.ts';
import { measureField } from './measure-field.ts';
import { choose, type Place } from './place.ts';

export function stockPart(place: Place): TemplateResult {
  return html`<details class="fold">
      <summary>Cloth to buy</summary>
      <div class="measures">${measureField(place, f.pieces)} ${measureField(place, f.clothWidth)}</div>
      <div class="cloth-row"><span>Its pattern has a top</span>${segmented(
        'Its pattern has a top',
        place.cloth.measures.chosen<'yes' | 'no'>(f.way, 'no'),
        [
          { value: 'no', says: 'no' },
          { value: 'yes', says: 'yes' },
        ],
        (way) => choose(place, f.way, way),
      )}</div>
      <div class="measures">${measureField(place, f.repeat)}</div>
      ${layoutSaid(place)}
    </details>
    ${place.cloth.becomes === 'bag' ? nothing : padFold(place)}`;
}

function layoutSaid({ cloth, snapshot }: Place): TemplateResult {
  const { units } = snapshot.settings;
  const laid = layoutOf(cloth);
  if (!laid) return html`<p class="muted">Measure the panel and enter the width of the cloth.</p>`;
  if (!laid.ok) {
    const wanted = laid.problems.find(({ code }) => code === 'cloth-too-narrow')?.params.wanted;
    return html`<p class="consequence">${wanted === undefined ? 'Check the width, the number and the pattern.' : `1 piece needs a cloth ${sayLength(Number(wanted), units)} wide or more.`}</p>`;
  }
  return html`<p class="consequence">${sayLayout(laid.value, units)}</p>
    <figure class="cloth-figure">${layoutPicture(laid.value, cloth.measures.value(f.clothWidth) ?? 0, piecesFor(cloth), units)}</figure>
    <p class="muted">1 cm along each selvedge is not used.</p>`;
}

type Pieces = { width: number; height: number; count: number };
const piecesFor = (cloth: Place['cloth']): Pieces => {
  const box = cloth.plan ? pieceBox(cloth.plan.cut) : { width: 0, height: 0 };
  return { ...box, count: piecesOf(cloth) };
};

/** The width across, the length downwards; pieces in rows. */
function layoutPicture(
  layout: Layout,
  clothWidth: number,
  pieces: Pieces,
  units: 'cm' | 'inch',
): SVGTemplateResult {
  const [wide, high] = layout.isTurned ? [pieces.height, pieces.width] : [pieces.width, pieces.height];
  const shown = Math.min(layout.rows, 4);
  const length = (shown - 1) * layout.rowStep + high;
  const scale = Math.max(clothWidth, length) / 300;
  const margin = 34 * scale;
  const count = Math.min(pieces.count, shown * layout.across);
  return svg`<svg class="cloth-picture" viewBox="${-margin} ${-margin} ${clothWidth + 2 * margin} ${length + 2 * margin}" role="img" aria-label="Pieces laid on the cloth">
    <path class="picture-cloth" d="M0 0H${clothWidth}V${length}H0Z"/>
    ${Array.from({ length: count }, (_, i) => {
      const x = 10 + (i % layout.across) * wide;
      const y = Math.floor(i / layout.across) * layout.rowStep;
      return svg`<path class="picture-piece" stroke-width=${1.4 * scale} d="M${x} ${y}h${wide}v${high}h${-wide}Z"/>
        <text class="picture-word" x=${x + wide / 2} y=${y + high / 2} font-size=${14 * scale}>${i + 1}</text>`;
    })}
    <text class="picture-length" x=${clothWidth / 2} y=${-14 * scale} font-size=${15 * scale}>${sayLength(clothWidth, units)}</text>
    <text class="picture-word" x=${clothWidth / 2} y=${length + 16 * scale} font-size=${14 * scale}>${shown < layout.rows ? `${layout.rows} rows in all` : sayLength(length, units)}</text>
  </svg>`;
}

function padFold(place: Place): TemplateResult {
  const { cloth, snapshot } = place;
  const { units } = snapshot.settings;
  const found = padOf(cloth, units);
  const name = cloth.becomes === 'cover' ? 'form' : place.pad;
  return html`<details class="fold">
    <summary>${opening(name)}</summary>
    ${segmented<PadRule>(
      'Size',
      found?.rule ?? 'usual',
      [
        { value: 'usual', says: 'usual' },
        { value: 'full', says: 'fuller' },
        { value: 'same', says: 'the same' },
      ],
      (rule) => choose(place, f.padRule, rule),
    )}
    <p class="muted">${PAD_RULES[found?.rule ?? 'usual']} 1 source of 6 has it otherwise.</p>
    ${found ? html`<p class="consequence">${opening(name)}: ${sayPad(found.pad, units)}</p>` : html`<p class="muted">It stands here once the panel is measured.</p>`}
  </details>`;
}
