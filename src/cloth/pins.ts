/** The pins as a list, side by side, and the way to print them. */
import { html, type TemplateResult } from 'lit-html';
import type { Pin } from '../../core/index.ts';
import { paperOf } from '../controls/paper.ts';
import { segmented } from '../controls/segmented.ts';
import { clothDefaults } from '../state/cloth.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import {
  PINS,
  pinsFrom,
  sayPin,
  sayPinCount,
  sayPinGroup,
  sayPinSpacing,
  sayPrinting,
} from '../words/cloth/making.ts';
import { measureField } from './measure-field.ts';
import { choose, type Place } from './place.ts';

export const PINS_ID = 'cloth-pins';

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
    <summary id=${PINS_ID}>${PINS.heading} <span class="tag">${sayPinCount(pins)}</span></summary>
    <p>${isRound ? PINS.round : PINS.straight} ${PINS.count}</p>
    <div class="measures">${measureField(place, f.spacing)}</div>
    <p class="muted">${sayPinSpacing(clothDefaults.spacing, units)}</p>
    ${pinGroups(pins).map(
      (group) => html`<h4>${sayPinGroup(group.sides, isRound)}</h4>
        <ol class="pin-list">${group.pins.map((pin) => html`<li>${sayPin(pin, units, pinsFrom(isRound))}</li>`)}</ol>`,
    )}
    <div class="cloth-row"><span>${PINS.paper}</span>${segmented(
      PINS.paper,
      paperOf(snapshot.project),
      (['a4', 'letter'] as const).map((value) => ({ value, says: PINS[value] })),
      (paper) => choose(place, f.paper, paper),
    )}</div>
    <button type="button" class="button" @click=${() => window.print()}>${PINS.print}</button>
    <p class="muted">${sayPrinting(units)}</p>
  </details>`;
}
