/** Sewing the strip on, by hand or by machine, with the thread for it. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { machineThread, type SewingPlan } from '../../core/index.ts';
import { segmented } from '../controls/segmented.ts';
import { clothDefaults, seamLength } from '../state/cloth.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import { sayBand, sayLength, sayLong } from '../words/cloth/lengths.ts';
import { MACHINE, sayPasses, sayThread } from '../words/cloth/making.ts';
import { term } from '../words/terms.ts';
import { measureField } from './measure-field.ts';
import { choose, type Place } from './place.ts';

export function sewingPart(place: Place): TemplateResult {
  const { cloth, snapshot } = place;
  const { units } = snapshot.settings;
  const way = cloth.measures.chosen<'hand' | 'machine'>(f.sewing, 'hand');
  return html`<details class="fold">
    <summary>Sewing</summary>
    ${segmented(
      'Sewing',
      way,
      [
        { value: 'hand', says: 'by hand' },
        { value: 'machine', says: 'by machine' },
      ],
      (value) => choose(place, f.sewing, value),
    )}
    ${
      way === 'hand' && cloth.sewing
        ? byHand(place, cloth.sewing)
        : html`<p>${MACHINE}</p>
          <p>Thread: ${cloth.plan ? sayBand(machineThread(seamLength(cloth.plan)), (mm) => sayLong(mm, units)) : nothing}, upper and lower together. It is 2.5 times the seam and 10 to 15 % for waste.</p>`
    }
  </details>`;
}

function byHand(place: Place, sewing: SewingPlan): TemplateResult {
  const { cloth, snapshot } = place;
  const { units } = snapshot.settings;
  const working = cloth.measures.value(f.working) ?? clothDefaults.working;
  const isRound = cloth.shape === 'round';
  return html`<p>Running stitch, over 1 stitch of the strip and under the next. Go all round, turn, and sew back through the gaps.</p>
    <ol class="cloth-list">
      ${sewing.over.out.map((_, side) => html`<li>${isRound ? 'All round' : `Side ${side + 1}`}: ${sayPasses(sewing, side)}${corner(sewing, side)}</li>`)}
    </ol>
    <p class="muted">${isRound ? 'Begin anywhere.' : 'Begin in the middle of side 1. A corner counts as 1 place.'}</p>
    <h4>Thread</h4>
    <p>${sayThread(sewing, working, units)} Make both ends fast in the ${term('treble', snapshot.settings.dialect, 'many')}, and change away from corners.</p>
    ${sewing.changes.length > 0 ? html`<p class="muted">On the way out, change after: ${sewing.changes.map(({ side, stitch }, i) => `${i > 0 ? '; ' : ''}${isRound ? '' : `side ${side + 1}, `}stitch ${stitch}`).join('')}.</p>` : nothing}
    <div class="measures">${measureField(place, f.thickness)} ${measureField(place, f.working)} ${measureField(place, f.tail)}</div>
    <p class="muted">Left empty: ${sayLength(clothDefaults.thickness, units)} thick, ${sayLength(clothDefaults.working, units)} to sew with (45 to 60 cm is usual), ${sayLength(clothDefaults.tail, units)} at each end.</p>`;
}

const corner = ({ corners }: SewingPlan, side: number): string =>
  corners[side] === undefined ? '' : `; the needle comes out ${corners[side]} corner ${side + 1}`;
