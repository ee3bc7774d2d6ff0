/** Choosing a sheet, seeing it as it will be printed, and printing it: the same page on screen and on paper. */
import './sheets.css';
import '../../cloth/print.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import { missingPart } from '../../controls/missing-part.ts';
import { paperField, paperOf } from '../../controls/paper.ts';
import { segmented } from '../../controls/segmented.ts';
import type { StitchKind } from '../../stitch/index.ts';
import { stitchName } from '../../stitch/say.ts';
import type { SheetKind } from '../../words/pattern/sheet-messages.ts';
import { fileNameOf, saveBlob, saveFile } from '../save.ts';
import { openMeasuring } from './measuring.ts';
import { sheetPages } from './page.ts';
import { fitting, pagesOf } from './paging.ts';
import { type DrawForPrint, openPictures } from './pictures.ts';
import { furnitureOf, type Handed, isWaiting, type Made, sheetOf } from './sheet-of.ts';
import { taught } from './stitch-sheet.ts';

const kinds: readonly SheetKind[] = ['pattern', 'recipe', 'ring', 'ticks', 'cloth', 'stitch'];

/** Points across a saved picture: a page at 300 an inch. */
const pictureWidth = 2400;

type State = { kind: SheetKind; stitch: StitchKind; failed: boolean };

export function openSheets(
  onChange: () => void,
  fetchDrawing: () => Promise<DrawForPrint>,
): (handed: Handed) => TemplateResult {
  let state: State = { kind: 'pattern', stitch: 'foundation-treble', failed: false };
  let draw: DrawForPrint | null = null;
  let qr: Made['qr'] = null;
  let asked = false;
  const change = (part: Partial<State>): void => {
    state = { ...state, ...part };
    onChange();
  };
  const fetchOnce = (): void => {
    if (asked) return;
    asked = true;
    const drawing = fetchDrawing().then((fetched) => {
      draw = fetched;
    });
    const codes = import('./qr.ts').then((fetched) => {
      qr = fetched;
    });
    Promise.all([drawing, codes, document.fonts.ready])
      .catch(() => {
        state = { ...state, failed: true };
      })
      .finally(onChange);
  };
  const pictures = openPictures();
  const measuring = openMeasuring(onChange);
  return (handed) => {
    fetchOnce();
    const { snapshot } = handed.place;
    const { kind, stitch } = state;
    const which = kind === 'ring' ? 'ring' : 'rounds';
    const drawn = draw && (kind === 'ring' || kind === 'recipe') ? pictures(draw, snapshot, which) : null;
    const made: Made = { kind, stitch, drawn, qr };
    const sheet = sheetOf(handed, made);
    const paper = paperOf(snapshot.project);
    const found =
      sheet &&
      measuring([snapshot, kind, stitch, paper, drawn, qr, handed.link], (measured, from, mayShrink) => {
        const at = mayShrink ? fitting(sheet, measured, from) : from;
        return { at, pages: pagesOf(sheet.tries[at] ?? [], measured) };
      });
    const isBusy = !found?.isSettled || (!state.failed && isWaiting(handed, made));
    return html`<section class="take-part sheets" aria-labelledby="sheets-heading">
      ${chooser(handed, state, change)} ${state.failed ? missingPart() : nothing}
      ${sheet && found ? html`<div class="sheet-pages ${paper}" aria-busy=${isBusy ? 'true' : 'false'}>${sheetPages(found.pages, paper, furnitureOf(handed, made, sheet))}</div>` : clothWaits(handed)}
      ${kind === 'ring' && drawn ? savings(handed, drawn, change, state.failed) : nothing}
    </section>`;
  };
}

function chooser(
  handed: Handed,
  { kind, stitch }: State,
  change: (part: Partial<State>) => void,
): TemplateResult {
  const { snapshot, send, sheets: say } = handed.place;
  const { settings } = snapshot;
  return html`<h3 id="sheets-heading">${say.heading}</h3>
    <p>${say.intro}</p>
    <div class="sheet-kinds" role="group" aria-label=${say.which}>
      ${kinds.map((one) => html`<button type="button" class="segment" aria-pressed=${one === kind ? 'true' : 'false'} @click=${() => change({ kind: one })}>${say.kinds[one]}</button>`)}
    </div>
    ${
      kind === 'stitch'
        ? html`<label class="take-field"><span>${say.stitch}</span>
          <select @change=${(event: Event) => change({ stitch: taught[(event.target as HTMLSelectElement).selectedIndex] ?? stitch })}>
            ${taught.map((one) => html`<option ?selected=${one === stitch}>${stitchName(one, settings)}</option>`)}
          </select></label>`
        : nothing
    }
    <div class="take-buttons">
      ${segmented(
        say.paper,
        paperOf(snapshot.project),
        (['a4', 'letter'] as const).map((value) => ({ value, says: say.papers[value] })),
        (paper) => send({ type: 'TYPE', field: paperField, text: paper }),
      )}
      <button type="button" class="button strong" @click=${() => window.print()}>${say.print}</button>
    </div>
    ${kind === 'cloth' ? html`<p class="muted">${say.trueSize}</p>` : nothing}`;
}

const clothWaits = ({ place: { send, sheets: say } }: Handed): TemplateResult => html`<p>${say.clothWaits}</p>
  <button type="button" class="button" @click=${() => send({ type: 'SHOW', tab: 'cloth' })}>${say.toCloth}</button>`;

/** The ring diagram to keep, or to put into a pattern of one's own. */
function savings(
  { place, written }: Handed,
  drawn: NonNullable<Made['drawn']>,
  change: (part: Partial<State>) => void,
  failed: boolean,
): TemplateResult {
  const { sheets: say } = place;
  const { title } = written;
  const svg = (): void =>
    saveFile(drawn.svg(`${title} · ${say.ring}`), 'image/svg+xml', fileNameOf(title, 'svg'));
  const png = (): void => {
    drawn.png(pictureWidth).then(
      (blob) => saveBlob(blob, fileNameOf(title, 'png')),
      () => change({ failed: true }),
    );
  };
  return html`<div class="take-buttons">
      <button type="button" class="button" @click=${svg}>${say.saveSvg}</button>
      <button type="button" class="button" @click=${png}>${say.savePng}</button>
    </div>
    <p role="status" class="muted">${failed ? say.pictureFailed : ''}</p>`;
}
