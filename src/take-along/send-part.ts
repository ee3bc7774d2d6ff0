/** The panel as an address, for two uses: to show it, and to be helped. The address itself holds the panel. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Links, LinkTab } from './links.ts';
import type { Place } from './place.ts';

/** Some programs cut longer addresses. */
const safeLength = 2000;

type Use = { tab: LinkTab; says: 'sendShow' | 'sendHelp'; about: 'sendShowAbout' | 'sendHelpAbout' };
const uses: readonly Use[] = [
  { tab: 'edge', says: 'sendShow', about: 'sendShowAbout' },
  { tab: 'wrong', says: 'sendHelp', about: 'sendHelpAbout' },
];

type Told = (sentence: string) => void;

/** @param links null while they are packed */
export function sendPart(place: Place, links: Links | null, tell: Told): TemplateResult {
  const { say } = place;
  return html`<section class="take-part">
    <h3>${say.send}</h3>
    <p>${say.sendAbout}</p>
    ${uses.map((use) => way(use, links?.[use.tab] ?? '', { place, tell }))}
  </section>`;
}

function way(
  { tab, says, about }: Use,
  link: string,
  { place, tell }: { place: Place; tell: Told },
): TemplateResult {
  const { say, speaker } = place;
  const id = `send-${tab}`;
  const copy = (): void => {
    const done = navigator.clipboard?.writeText(link) ?? Promise.reject();
    done.then(
      () => tell(say.sendCopied),
      () => {
        (document.getElementById(id) as HTMLInputElement | null)?.select();
        tell(say.sendSelected);
      },
    );
  };
  return html`<div class="take-field">
    <label for=${id}>${say[about]}</label>
    <div class="take-send">
      <input type="text" id=${id} readonly .value=${link} @focus=${(event: Event) => (event.target as HTMLInputElement).select()} />
      <button type="button" class="button" aria-label="${say[says]}: ${say[about]}" @click=${copy}>${say[says]}</button>
    </div>
    ${link.length > safeLength ? html`<p class="muted">${say.sendLong({ signs: link.length }, speaker)}</p>` : nothing}
  </div>`;
}
