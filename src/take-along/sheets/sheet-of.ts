/** The sheet of each kind, and what stands on each of its pages. */
import { html, type TemplateResult } from 'lit-html';
import { patternFields } from '../../state/pattern-fields.ts';
import type { StitchKind } from '../../stitch/index.ts';
import type { Written } from '../../words/pattern/document.ts';
import type { SheetKind } from '../../words/pattern/sheet-messages.ts';
import { dialectName } from '../../words/terms.ts';
import { fieldText, type Place } from '../place.ts';
import { clothSheet } from './cloth-sheet.ts';
import type { Furniture } from './page.ts';
import type { Sheet } from './paging.ts';
import { patternSheet } from './pattern-sheet.ts';
import type { Drawn } from './pictures.ts';
import { recipeSheet } from './recipe-sheet.ts';
import { stitchSheet } from './stitch-sheet.ts';
import { tickSheet } from './tick-sheet.ts';

/** Signs of an address that a phone reads off a small code with ease. */
const longestPrinted = 300;

export type Handed = {
  place: Place;
  written: Written;
  /** The address of the panel; null while it is packed. */
  link: string | null;
};

export type Made = {
  kind: SheetKind;
  stitch: StitchKind;
  drawn: Drawn | null;
  qr: typeof import('./qr.ts') | null;
};

/** Null where the cloth is not measured yet. */
export function sheetOf(handed: Handed, { kind, stitch, drawn, qr }: Made): Sheet | null {
  const { place, written } = handed;
  const { snapshot, speaker, sheets: say } = place;
  const title = written.title || say.untitled;
  const scan = scanned(handed, qr);
  switch (kind) {
    case 'pattern':
      return patternSheet(written, scan);
    case 'recipe':
      return recipeSheet({ snapshot, title, say, drawing: drawn, scan });
    case 'ring':
      return ringSheet(title, say.ring, drawn?.onPage(RING) ?? null, scan);
    case 'ticks':
      return tickSheet({ snapshot, title, say, speaker, scan });
    case 'cloth':
      return clothSheet({ snapshot, title, say, scan });
    case 'stitch':
      return stitchSheet({ stitch, settings: snapshot.settings, say, speaker });
  }
}

/** What is still fetched or packed, and will be on the sheet. */
export const isWaiting = ({ link }: Handed, { kind, drawn, qr }: Made): boolean =>
  link === null || qr === null || ((kind === 'recipe' || kind === 'ring') && drawn === null);

export function furnitureOf({ place, link }: Handed, { kind }: Made, { title }: Sheet): Furniture {
  const { snapshot, speaker, sheets: say } = place;
  const { dialect } = snapshot.settings;
  const isBoth = kind === 'pattern' && fieldText(snapshot, patternFields.terms) === 'both';
  return {
    title,
    kind: say.kinds[kind],
    terms: isBoth ? place.say.termsBoth : dialectName(dialect),
    snapshot,
    say,
    speaker,
    link: link !== null && link.length <= longestPrinted ? link : null,
  };
}

function scanned({ place, link }: Handed, qr: Made['qr']): TemplateResult {
  const { sheets: say } = place;
  if (link === null || qr === null || link.length > longestPrinted) return html``;
  return html`<div class="sheet-scan">${qr.qrPicture(link, say.scan)}<p>${say.scan}</p></div>`;
}

/** mm of the ring diagram. */
const RING = 165;

const ringSheet = (title: string, says: string, drawing: Element | null, scan: TemplateResult): Sheet => ({
  title,
  tries: [
    [
      {
        blocks: [
          { key: 'says', body: html`<h3>${says}</h3>`, keep: true },
          { key: 'ring', body: html`<div class="sheet-picture ring">${drawing}</div>` },
          { key: 'scan', body: scan },
        ],
      },
    ],
  ],
});
