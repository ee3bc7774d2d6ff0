/** The pins as a list, side by side, and the way to print them. */
import { html, type TemplateResult } from 'lit-html';
import type { Pin } from '../../core/index.ts';
import { paperOf } from '../controls/paper.ts';
import { segmented } from '../controls/segmented.ts';
import { clothDefaults } from '../state/cloth.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import { sayLength } from '../words/cloth/lengths.ts';
import { sayPin, sayPinCount } from '../words/cloth/making.ts';
import { joined } from './lies.ts';
import { measureField } from './measure-field.ts';
import { choose, type Place } from './place.ts';

export type PinGroup = { sides: number[]; pins: Pin[] };

/** Sides with the same pins are listed once. In the order in which a side is pinned: centre, then from its corners. */
export function pinGroups(pins: readonly Pin[]): PinGroup[] {
  const groups = new Map<string, PinGroup>();
  for (const side of new Set(pins.map((pin) => pin.side))) {
    const own = pins.filter((pin) => pin.side === side);
    const key = own.map(({ kind, distance, stitch }) => `${kind} ${distance.toFixed(2)} ${stitch}`).join();
    const group = groups.get(key) ?? { sides: [], pins: own };
    group.sides.push(side + 1);
    groups.set(key, group);
  }
  return [...groups.values()];
}

export function pinsPart(place: Place): TemplateResult {
  const { cloth, snapshot } = place;
  const { units } = snapshot.settings;
  const pins = cloth.pins ?? [];
  const isRound = cloth.shape === 'round';
  return html`<details class="fold">
    <summary>Pins <span class="tag">${sayPinCount(pins)}</span></summary>
    <p>${isRound ? 'Quarters first, then halfway, then between.' : 'Centres first, then corners, then from each corner to the centre.'} Count them in, and out again.</p>
    <div class="measures">${measureField(place, f.spacing)}</div>
    <p class="muted">Left empty: every ${sayLength(clothDefaults.spacing, units)}. A pin goes into the nearest stitch, and its distance is that stitch's.</p>
    ${pinGroups(pins).map(
      (
        group,
      ) => html`<h4>${isRound ? 'All round' : group.sides.length === 1 ? `Side ${group.sides[0]}` : `Sides ${joined(group.sides)}, each`}</h4>
        <ol class="pin-list">${group.pins.map((pin) => html`<li>${sayPin(pin, units, isRound ? 'where the round begins' : 'the corner')}</li>`)}</ol>`,
    )}
    <div class="cloth-row"><span>Paper</span>${segmented(
      'Paper',
      paperOf(snapshot.project),
      [
        { value: 'a4', says: 'A4' },
        { value: 'letter', says: 'Letter' },
      ],
      (paper) => choose(place, f.paper, paper),
    )}</div>
    <button type="button" class="button" @click=${() => window.print()}>Print the list and a strip with marks</button>
    <p class="muted">Print at 100 %, not fitted to the page. The check line must measure ${sayLength(100, 'cm')}.</p>
  </details>`;
}
