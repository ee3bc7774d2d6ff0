/** Settings that are changed seldom: yarns, the manner of pairing, the arrangement, units. */
import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';
import { KEYS_ID, SETTINGS_ID } from '../../controls/ids.ts';
import { icon } from '../../controls/more-icons.ts';
import { segmented } from '../../controls/segmented.ts';
import type { Send, Settings, Snapshot } from '../../state/snapshot.ts';
import { dialectName } from '../../words/terms.ts';
import { sayEasing } from '../../words/verdict.ts';
import { savePictures } from '../drawing/save-picture.ts';
import type { TableControls } from '../drawing/table-controls.ts';

const YARNS: { yarn: keyof Settings['yarns']; says: string }[] = [
  { yarn: 'front', says: 'front' },
  { yarn: 'edging', says: 'edging' },
  { yarn: 'foundation', says: 'foundation' },
];

export function settingsDialog(
  snapshot: Snapshot,
  send: Send,
  controls: () => TableControls | null,
): TemplateResult {
  const { settings } = snapshot;
  const settle = (change: Partial<Settings>): void => send({ type: 'SETTLE', settings: change });
  return html`<dialog class="sheet" id=${SETTINGS_ID} aria-labelledby="settings-heading">
    <div class="sheet-head">
      <h2 id="settings-heading">Settings</h2>
      <button type="button" class="icon-button" aria-label="Close settings" @click=${closeDialog}>${icon('close')}</button>
    </div>
    ${manner(settings, settle)}
    <fieldset class="choice">
      <legend>Your yarns</legend>
      <div class="yarns">
        ${YARNS.map(
          ({ yarn, says }) => html`<label class="yarn"><input type="color" .value=${settings.yarns[yarn]}
            @input=${(event: Event) => settle({ yarns: { ...settings.yarns, [yarn]: (event.target as HTMLInputElement).value } })} /><span>${says}</span></label>`,
        )}
      </div>
    </fieldset>
    <div class="choice row">
      <span>How the pieces lie</span>
      ${segmented(
        'How the pieces lie',
        settings.arrangement,
        [
          { value: 'together', says: 'together' },
          { value: 'apart', says: 'apart' },
          { value: 'diagram', says: 'diagram' },
        ],
        (arrangement) => settle({ arrangement }),
      )}
    </div>
    <div class="choice row">
      <span>Words of the trade</span>
      ${segmented(
        'Words of the trade',
        settings.bothTerms ? 'both' : 'one',
        [
          { value: 'one', says: dialectName(settings.dialect) },
          { value: 'both', says: 'UK and US' },
        ],
        (value) => settle({ bothTerms: value === 'both' }),
      )}
    </div>
    <div class="choice row">
      <span>Lengths in</span>
      ${segmented(
        'Lengths in',
        settings.units,
        [
          { value: 'cm', says: 'cm' },
          { value: 'inch', says: 'inches' },
        ],
        (units) => settle({ units }),
      )}
    </div>
    <div class="choice row">
      <span>Theme</span>
      ${segmented(
        'Theme',
        settings.theme,
        [
          { value: 'auto', says: 'as the device' },
          { value: 'light', says: 'light' },
          { value: 'dark', says: 'dark' },
        ],
        (theme) => settle({ theme }),
      )}
    </div>
    ${savePictures(snapshot, controls)}
    <button type="button" class="button" @click=${() => (document.getElementById(KEYS_ID) as HTMLDialogElement).showModal()}>Keys to press</button>
    <a class="button" href="./licences.txt" target="_blank" rel="noopener">What it is built from</a>
  </dialog>`;
}

function closeDialog(event: Event): void {
  (event.target as Element).closest('dialog')?.close();
}

function manner(settings: Settings, settle: (change: Partial<Settings>) => void): TemplateResult {
  const options: { value: Settings['manner']; says: string; picture: SVGTemplateResult }[] = [
    { value: 'stitch-by-stitch', says: 'stitch by stitch', picture: lanes([0, 0, 0, 0, 0, 0]) },
    { value: 'corner-to-corner', says: 'corner to corner', picture: lanes([0, 2, 4, 8, 10, 12]) },
  ];
  return html`<fieldset class="choice">
    <legend>How you join</legend>
    <div class="cards two">
      ${options.map(
        ({ value, says, picture }) => html`<label class="card">
          <input type="radio" name="manner" .checked=${settings.manner === value} @change=${() => settle({ manner: value })} />
          <svg viewBox="0 0 104 44" aria-hidden="true">${picture}</svg><span>${says}</span></label>`,
      )}
    </div>
    ${
      settings.manner === 'corner-to-corner'
        ? html`<div class="choice row"><span>A surplus goes</span>${segmented(
            'A surplus goes',
            settings.easing,
            [
              { value: 'end', says: 'to the end' },
              { value: 'spread', says: 'spread evenly' },
            ],
            (easing) => settle({ easing }),
          )}</div>
          <p class="muted">${sayEasing(settings.easing)}</p>`
        : ''
    }
  </fieldset>`;
}

/** Seven places above; six below that either drift away from their corner or are pinned to it. */
function lanes(shift: number[]): SVGTemplateResult {
  const above = [10, 24, 38, 52, 66, 80, 94];
  const below = shift.map((by, index) => 10 + index * 14 + by);
  const corner = (x: number, y: number) =>
    svg`<ellipse class="chain tone-front" cx=${x} cy=${y} rx="6" ry="4"/>`;
  return svg`${above.map((x, index) => (index === 0 || index === 6 ? corner(x, 8) : svg`<circle class="dot" cx=${x} cy="8" r="2.6"/>`))}
    ${below.map((x, index) => (index === 0 || index === 5 ? svg`<ellipse class="chain tone-edging" cx=${x} cy="36" rx="6" ry="4"/>` : svg`<circle class="dot" cx=${x} cy="36" r="2.6"/>`))}
    ${below.map((x, index) => svg`<path class="thin" d="M${above[shift[5] === 12 && index === 5 ? 6 : index]} 14L${x} 30"/>`)}`;
}
