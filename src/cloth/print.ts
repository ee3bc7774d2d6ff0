/**
 * The sheets to print: the pins as a list, and a strip with marks at true size, in rows to cut out and tape together.
 *
 * Rule: mm on the sheet are mm on the cloth; a check line of 100 mm shows whether the printer kept to it. The sheets
 * stand in the page all along, so that printing needs nothing but the page.
 */
import './print.css';
import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';
import type { Pin } from '../../core/index.ts';
import { paperOf } from '../controls/paper.ts';
import { backSides } from '../state/cloth.ts';
import type { Units } from '../state/snapshot.ts';
import { sayCut } from '../words/cloth/cut.ts';
import {
  PINS,
  pinsFrom,
  type RowSaid,
  sayCutLine,
  sayMark,
  sayPin,
  sayPinGroup,
  sayRow,
  saySheet,
} from '../words/cloth/making.ts';
import { type PinGroup, pinGroups } from './pins.ts';
import type { Place } from './place.ts';

/** mm of strip in a row, and rows on a sheet: what both papers hold within margins of 12 mm. */
const rowLength = 170;
const rowsOnSheet = 7;

type Row = RowSaid & { pins: Pin[] };

/** A side's strip in rows. A pin on a seam between two rows stands on both. */
function rowsOf({ sides, pins }: PinGroup, length: number, isRound: boolean): Row[] {
  const count = Math.max(1, Math.ceil(length / rowLength - 1e-9));
  return Array.from({ length: count }, (_, i) => {
    const [from, to] = [i * rowLength, Math.min(length, (i + 1) * rowLength)];
    return {
      sides,
      isRound,
      from,
      to,
      pins: pins
        .filter(({ distance }) => distance >= from && distance <= to)
        .sort((a, b) => a.distance - b.distance),
      isFirst: i === 0,
      isLast: i === count - 1,
    };
  });
}

type Printed = Pick<Place, 'snapshot' | 'cloth'>;

/** The pins in words, for sides with the same pins once. */
export function pinLists({ snapshot, cloth }: Printed): { heading: string; pins: string[] }[] {
  const { units } = snapshot.settings;
  const isRound = cloth.shape === 'round';
  return pinGroups(cloth.pins ?? []).map(({ sides, pins }) => ({
    heading: sayPinGroup(sides, isRound),
    pins: pins.map((pin) => sayPin(pin, units, pinsFrom(isRound))),
  }));
}

/** The strip at true size, row by row. */
export function stripRows({ snapshot, cloth }: Printed): SVGTemplateResult[] {
  const { plan, pins } = cloth;
  if (!plan) return [];
  const sides = backSides(plan, snapshot.making);
  const rows = pinGroups(pins ?? []).flatMap((group) =>
    rowsOf(group, sides[(group.sides[0] ?? 1) - 1]?.cut ?? 0, cloth.shape === 'round'),
  );
  return rows.map((row) => rowPicture(row, snapshot.settings.units));
}

export function printSheets(place: Place): TemplateResult {
  const { cloth, snapshot } = place;
  const { plan } = cloth;
  if (!plan) return html``;
  const rows = stripRows(place);
  const sheets: SVGTemplateResult[][] = [];
  for (let i = 0; i < rows.length; i += rowsOnSheet) sheets.push(rows.slice(i, i + rowsOnSheet));
  const pages = sheets.length + 1;
  return html`<div class="print-sheets ${paperOf(snapshot.project)}" aria-hidden="true">
    <section class="print-sheet">
      ${sheetHead(place, 1, pages)}
      <p>${sayCutLine} <b>${sayCut(plan, snapshot.settings.units).size}</b></p>
      ${pinLists(place).map(
        ({ heading, pins }) => html`<h3>${heading}</h3>
          <ol class="print-pins">${pins.map((pin) => html`<li>${pin}</li>`)}</ol>`,
      )}
    </section>
    ${sheets.map(
      (sheet, i) => html`<section class="print-sheet">
        ${sheetHead(place, i + 2, pages)}
        ${checkLine()}
        ${sheet}
      </section>`,
    )}
  </div>`;
}

function sheetHead({ snapshot }: Place, page: number, pages: number): TemplateResult {
  const { project, settings } = snapshot;
  const date = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long' }).format(new Date());
  return html`<header class="print-head">
    <b>${project.name || PINS.standard}</b>
    <span>${date} · ${saySheet(page, pages, settings)}</span>
  </header>`;
}

/** Words stand beside a mark and never on it. */
export const checkLine =
  (): TemplateResult => html`<svg class="print-row check" width="180mm" height="9mm" viewBox="0 0 180 9">
  <path class="check-line" d="M1 5H101" stroke-width="0.3"/>
  <path d="M1 2V8M101 2V8" stroke-width="0.3"/>
  <text x="105" y="6.2" font-size="3.6">${PINS.checkLine}</text>
</svg>`;

function rowPicture(row: Row, units: Units): SVGTemplateResult {
  const { from, to, pins } = row;
  const x = (mm: number): number => Number((1 + mm - from).toFixed(3));
  return svg`<svg class="print-row" width="180mm" height="28mm" viewBox="0 0 180 28">
    <text x="1" y="4" font-size="3.6">${sayRow(row, units)}</text>
    <path class="row-edge" d="M${x(from)} 8H${x(to)}" stroke-width="0.25"/>
    <path d="M${x(from)} 8V26M${x(to)} 8V26" stroke-width="0.25" stroke-dasharray="1.2 1"/>
    ${pins.map(
      (
        pin,
        i,
      ) => svg`<path class="pin-mark" d="M${x(pin.distance)} 8V${pin.kind === 'between' ? 13 : 16}" stroke-width="0.3"/>
        ${markText(pin, x(pin.distance), i)}`,
    )}
  </svg>`;
}

/** mm. Letters are taken as 0.56 em wide, on the generous side. */
const letters = { high: 3, wide: 0.56 } as const;

/** Beside its mark: to the left where the row would end before the words do. Centre and corner stand above the others. */
function markText(pin: Pin, x: number, i: number): SVGTemplateResult {
  const says = sayMark(pin);
  const isLeft = x + says.length * letters.high * letters.wide > 178;
  const y = pin.kind === 'between' ? 21 + (i % 2) * 4.4 : 16.6;
  return svg`<text x=${x + (isLeft ? -0.8 : 0.8)} y=${y} font-size=${letters.high} text-anchor=${isLeft ? 'end' : 'start'}>${says}</text>`;
}
