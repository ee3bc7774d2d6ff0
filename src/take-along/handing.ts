/** A panel to be sent: its address, and the same as a few lines for where no address may stand. */
import './handing.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import { canShare, copy, type Handed, type Parcel, share } from '../controls/hand-over.ts';
import type { TakeAlongMessages } from '../words/pattern/messages.ts';
import type { Speaker } from '../words/speaker.ts';

/** Some programs cut longer addresses. */
const safeLength = 2000;

export type Handing = {
  /** Its fields are `send-ID` and `send-ID-lines`. */
  id: string;
  /** What is sent, in the names of its buttons. */
  what: string;
  /** Null while it is packed. */
  link: string | null;
  lines: string;
  say: TakeAlongMessages;
  speaker: Speaker;
  tell(sentence: string): void;
};

export function handing({ id, what, link, lines, say, speaker, tell }: Handing): TemplateResult {
  const done =
    (field: string, copied: string) =>
    (handed: Handed): void => {
      if (handed === 'copied') tell(copied);
      if (handed !== 'refused') return;
      (document.getElementById(field) as HTMLInputElement | HTMLTextAreaElement | null)?.select();
      tell(say.sendSelected);
    };
  const button = (says: string, act: () => Promise<Handed>, then: (handed: Handed) => void): TemplateResult =>
    html`<button type="button" class="button" aria-label="${says}: ${what}" @click=${() => void act().then(then)}>${says}</button>`;
  const select = (event: Event): void => (event.target as HTMLInputElement).select();
  const parcels: { address: Parcel; text: Parcel } = { address: { url: link ?? '' }, text: { text: lines } };
  const address = `send-${id}`;
  const text = `${address}-lines`;
  return html`<div class="handing"><label class="take-field"><span>${say.sendAddress}</span>
      <input type="text" id=${address} readonly aria-label="${say.sendAddress}: ${what}" .value=${link ?? ''} @focus=${select} /></label>
    ${link && link.length > safeLength ? html`<p class="muted">${say.sendLong({ signs: link.length }, speaker)}</p>` : nothing}
    <div class="take-buttons">
      ${canShare() ? button(say.sendShare, () => share(parcels.address), done(address, say.sendCopied)) : nothing}
      ${button(say.sendCopy, () => copy(parcels.address), done(address, say.sendCopied))}
      ${button(say.sendCopyLines, () => copy(parcels.text), done(text, say.sendLinesCopied))}
    </div>
    <details class="fold"><summary>${say.sendLines}</summary>
      <p class="muted">${say.sendLinesAbout}</p>
      <div class="take-field"><textarea id=${text} class="take-lines" readonly rows="9" aria-label="${say.sendLines}: ${what}" .value=${lines} @focus=${select}></textarea></div>
    </details></div>`;
}

/** Lines that are read back, under what a person reads first. */
export const letter = (greeting: string, how: string, lines: string): string =>
  `${greeting}\n\n${lines}\n\n${how}`;
