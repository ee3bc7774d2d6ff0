/** Take along: the pattern written out, for one size or several. */
import './handing.css';
import './take-along.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import { fetchedPart } from '../controls/fetched-part.ts';
import { clothFields } from '../state/cloth-fields.ts';
import { patternFields as f } from '../state/pattern-fields.ts';
import type { Field, Send, Snapshot } from '../state/snapshot.ts';
import { takeAlongIn } from '../words/pattern/catalogue.ts';
import type { Block, Written } from '../words/pattern/document.ts';
import { toHtml, toMarkdown, toText } from '../words/pattern/formats.ts';
import type { TakeAlongMessages } from '../words/pattern/messages.ts';
import { writeOut, writeSizes } from '../words/pattern/write-out.ts';
import type { WriteOptions } from '../words/pattern/writing.ts';
import { speakerOf } from '../words/speaker.ts';
import type { DrawClip } from './clip/frames.ts';
import { openLateFold } from './late-fold.ts';
import { openPacker, sharedOf } from './links.ts';
import { openOpening } from './open-part.ts';
import { fieldText, type Place } from './place.ts';
import { fileNameOf, saveFile } from './save.ts';
import { type Packers, sendPart } from './send-part.ts';
import type { DrawForPrint } from './sheets/pictures.ts';
import type { Handed } from './sheets/sheet-of.ts';
import { readSizes } from './sizes.ts';
import { sizesPart } from './sizes-part.ts';

/** @param fetchDrawing what draws on paper, fetched when a sheet is first shown; `fetchClip` what draws a clip, when one is made */
export function openTakeAlong(
  onChange: () => void,
  fetchDrawing: () => Promise<DrawForPrint>,
  fetchClip: () => Promise<DrawClip>,
): (snapshot: Snapshot, send: Send) => TemplateResult {
  let said = '';
  let saidSent = '';
  const packers: Packers = { edge: openPacker(onChange), wrong: openPacker(onChange) };
  const opening = openOpening(onChange);
  const clip = openLateFold(onChange, async () =>
    (await import('./clip/clip-part.ts')).openClip(onChange, fetchClip),
  );
  const check = openLateFold(onChange, async () => (await import('./check-part.ts')).openCheck(onChange));
  const sheets = fetchedPart<[Handed]>(
    async () => (await import('./sheets/sheets-part.ts')).openSheets(onChange, fetchDrawing),
    onChange,
  );
  const tell = (sentence: string): void => {
    said = sentence;
    onChange();
  };
  const tellSent = (sentence: string): void => {
    saidSent = sentence;
    onChange();
  };
  return (snapshot, send) => {
    const speaker = speakerOf(snapshot.settings);
    const sizes = readSizes(fieldText(snapshot, f.sizes), { ...snapshot.making, project: snapshot.project });
    const { takeAlong: say, sheets: sheetWords, lines } = takeAlongIn(speaker);
    const place: Place = { snapshot, send, speaker, say, sheets: sheetWords, lines, sizes };
    const written = writtenFrom(place);
    return panel(place, written, {
      said,
      tell,
      sending: html`${sendPart(place, packers, { said: saidSent, tell: tellSent })} ${opening(place)}`,
      folds: html`${clip(place, say.clip)} ${check(place, say.check, fieldText(snapshot, f.checked) !== '')}`,
      printing: sheets({ place, written, link: packers.edge(snapshot, () => sharedOf(snapshot, 'edge')) }),
    });
  };
}

type Held = {
  said: string;
  tell: (sentence: string) => void;
  folds: TemplateResult;
  sending: TemplateResult;
  printing: TemplateResult;
};

function panel(
  place: Place,
  written: Written,
  { said, tell, folds, sending, printing }: Held,
): TemplateResult {
  const { say, snapshot } = place;
  return html`<div class="take-along">
    <div class="take-column">
      <h2>${say.heading}</h2>
      <p>${say.intro}</p>
      ${own(place)} ${sizesPart(place)} ${sending} ${folds}
    </div>
    <div class="take-column">
      ${snapshot.problems.length > 0 ? html`<p class="waits">${say.waits}</p>` : nothing}
      ${printing}
      ${buttons(place, written, tell)}
      <p role="status" class="muted">${said}</p>
      ${sheet(written, say)}
    </div>
  </div>`;
}

/** What is the designer's own. */
function own({ snapshot, send, say }: Place): TemplateResult {
  const type = (field: Field) => (event: Event) =>
    send({ type: 'TYPE', field, text: (event.target as HTMLInputElement).value });
  const isBoth = fieldText(snapshot, f.terms) === 'both';
  const line = (field: Field, label: string): TemplateResult => html`<label class="take-field">
    <span>${label}</span>
    <input type="text" id="field-${field.replace('.', '-')}" autocomplete="off" .value=${fieldText(snapshot, field)} @input=${type(field)} />
  </label>`;
  return html`<section class="take-part">
    <h3>${say.yours}</h3>
    ${line(f.title, say.title)} ${line(f.designer, say.designer)}
    <label class="take-field"><span>${say.notes}</span>
      <textarea id="field-pattern-notes" rows="3" .value=${fieldText(snapshot, f.notes)} @input=${type(f.notes)}></textarea>
    </label>
    <label class="tick"><input type="checkbox" .checked=${isBoth}
      @change=${(event: Event) => send({ type: 'TYPE', field: f.terms, text: (event.target as HTMLInputElement).checked ? 'both' : '' })} />
      <span>${say.terms}: ${say.termsBoth}</span></label>
  </section>`;
}

/** All sizes where every one of them works; else the panel at hand. */
function writtenFrom({ snapshot, sizes, speaker }: Place): Written {
  const { making, project, settings } = snapshot;
  const options: WriteOptions = {
    terms: fieldText(snapshot, f.terms) === 'both' ? 'both' : settings.dialect,
    hand: settings.hand,
    units: settings.units,
    language: speaker.language,
    title: fieldText(snapshot, f.title) || project.name,
    designer: fieldText(snapshot, f.designer),
    notes: fieldText(snapshot, f.notes),
    isOfCloth: project.texts[clothFields.front] === 'cloth',
    ...(making.becomes && { becomes: making.becomes }),
  };
  const good = sizes.flatMap((size) => ('plan' in size ? [size] : []));
  const [first, ...others] = good;
  if (!first || others.length === 0)
    return writeOut(making.plan, {
      ...options,
      adjustments: project.adjustments,
      ...(snapshot.cloth?.plan && { cloth: snapshot.cloth.plan }),
    });
  return writeSizes(
    { names: good.map(({ name }) => name), plans: [first.plan, ...others.map(({ plan }) => plan)] },
    options,
  );
}

function buttons(place: Place, written: Written, tell: (sentence: string) => void): TemplateResult {
  const { say, speaker } = place;
  const copy = (): void => {
    const done = navigator.clipboard?.writeText(toText(written)) ?? Promise.reject();
    done.then(
      () => tell(say.copied),
      () => tell(say.notCopied),
    );
  };
  const save = (ending: string, type: string, format: (of: Written) => string) => (): void => {
    const file = fileNameOf(written.title, ending);
    saveFile(format(written), type, file);
    tell(say.saved({ file }, speaker));
  };
  const button = (says: string, press: () => void, kind = ''): TemplateResult =>
    html`<button type="button" class="button ${kind}" @click=${press}>${says}</button>`;
  return html`<div class="take-buttons">
    ${button(say.copy, copy, 'strong')} ${button(say.saveText, save('txt', 'text/plain', toText))}
    ${button(say.saveMarkdown, save('md', 'text/markdown', toMarkdown))}
    ${button(say.saveHtml, save('html', 'text/html', toHtml))}
  </div>`;
}

function sheet({ language, title, head, sections }: Written, say: TakeAlongMessages): TemplateResult {
  return html`<article class="written" lang=${language} aria-label=${say.pattern}>
    <h3 class="written-title">${title}</h3>
    ${head.map((line) => html`<p class="muted">${line}</p>`)}
    ${sections.map(({ heading, blocks }) => html`<section><h4>${heading}</h4>${blocks.map(blockOf)}</section>`)}
  </article>`;
}

function blockOf(block: Block): TemplateResult {
  switch (block.kind) {
    case 'paragraph':
      return html`<p class="written-text">${block.text}</p>`;
    case 'list':
      return html`<ul>${block.items.map((item) => html`<li>${item}</li>`)}</ul>`;
    case 'acts':
      return html`<ol>${block.items.map((item) => html`<li>${item}</li>`)}</ol>`;
    case 'table':
      return html`<div class="written-table" tabindex="0" role="group"><table>
        <thead><tr>${block.head.map((cell) => html`<th scope="col">${cell}</th>`)}</tr></thead>
        <tbody>${block.rows.map((row) => html`<tr>${row.map((cell, i) => (i === 0 ? html`<th scope="row">${cell}</th>` : html`<td>${cell}</td>`))}</tr>`)}</tbody>
      </table></div>`;
  }
}
