/** What somebody has sent, pasted: an address or lines, with whatever letter stands around them. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { openAgain } from '../controls/missing-part.ts';
import { type LinkProblem, linkMark, type ReadLink, readLink, writeLink } from '../input/link.ts';
import type { LineWords } from '../words/pattern/line-words.ts';
import { readLines } from './lines.ts';
import type { Place } from './place.ts';

type Trouble = LinkProblem | 'nothing';

/** The fragment that a text stands for. */
async function fragmentIn(text: string, words: LineWords): Promise<string | Trouble> {
  const address = new RegExp(`${linkMark}[\\w-]*`).exec(text)?.[0];
  const read: ReadLink | null = address ? await readLink(address) : readLines(text, words);
  if (read === null) return 'nothing';
  if (!read.ok) return read.why;
  return address ?? writeLink(read.shared);
}

const FIELD = 'field-sent';

export function openOpening(onChange: () => void): (place: Place) => TemplateResult {
  let text = '';
  let trouble: Trouble | null = null;
  const open = async (words: LineWords): Promise<void> => {
    const found = await fragmentIn(text, words);
    if (found.startsWith(linkMark)) {
      // Shown as any address: beside the own work, which stays as it is kept.
      if (location.hash === found) openAgain();
      else location.hash = found;
      return;
    }
    trouble = found as Trouble;
    onChange();
    document.getElementById(FIELD)?.focus();
  };
  return ({ say, lines }) => {
    const type = (event: Event): void => {
      text = (event.target as HTMLTextAreaElement).value;
      if (trouble === null) return;
      trouble = null;
      onChange();
    };
    return html`<section class="take-part">
      <h3>${say.opening}</h3>
      <p>${say.openingAbout}</p>
      <label class="take-field"><span>${say.openingField}</span>
        <textarea id=${FIELD} rows="3" spellcheck="false" autocomplete="off" .value=${text} aria-invalid=${trouble ? 'true' : 'false'} aria-describedby="sent-trouble" @input=${type}></textarea></label>
      <p id="sent-trouble" class=${trouble ? 'waits' : ''} role="status">${trouble ? say.openingTroubles[trouble] : nothing}</p>
      <button type="button" class="button" @click=${() => void open(lines)}>${say.openingOpen}</button>
    </section>`;
  };
}
