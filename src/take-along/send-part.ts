/** The panel for others, for two uses: to show it, and to be helped. */
import { html, type TemplateResult } from 'lit-html';
import type { Tab } from '../state/snapshot.ts';
import { handing, letter } from './handing.ts';
import { linesOf } from './lines.ts';
import { type Packer, sharedOf } from './links.ts';
import type { Place } from './place.ts';

type Use = { tab: Extract<Tab, 'edge' | 'wrong'>; says: 'sendShow' | 'sendHelp' };
const uses: readonly Use[] = [
  { tab: 'edge', says: 'sendShow' },
  { tab: 'wrong', says: 'sendHelp' },
];

export type Packers = Record<Use['tab'], Packer>;

export type Telling = { said: string; tell(sentence: string): void };

export function sendPart(place: Place, packers: Packers, { said, tell }: Telling): TemplateResult {
  const { snapshot, say, speaker, lines: words } = place;
  return html`<section class="take-part">
    <h3>${say.send}</h3>
    <p>${say.sendAbout}</p>
    ${uses.map(({ tab, says }) => {
      const shared = sharedOf(snapshot, tab);
      const link = packers[tab](snapshot, () => shared);
      const lines = letter(say[`${says}Letter`], say.sendHow, linesOf(shared, words));
      return html`<div class="take-use">
        <h4>${say[says]}</h4>
        <p class="muted">${say[`${says}About`]}</p>
        ${handing({ id: tab, what: say[says], link, lines, say, speaker, tell })}
      </div>`;
    })}
    <p role="status" class="muted">${said}</p>
  </section>`;
}
