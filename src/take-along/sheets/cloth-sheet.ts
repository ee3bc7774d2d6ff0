/** How the cloth is cut and pinned, and the strip with its pins at true size. */
import '../../cloth/cloth.css';
import { html, type TemplateResult } from 'lit-html';
import { showFigure } from '../../cloth/figure.ts';
import { checkLine, pinLists, stripRows } from '../../cloth/print.ts';
import { figureOf } from '../../cloth/saving.ts';
import type { Snapshot } from '../../state/snapshot.ts';
import { sayAllowance, sayCut } from '../../words/cloth/cut.ts';
import type { SheetMessages } from '../../words/pattern/sheet-messages.ts';
import type { Block, Sheet } from './paging.ts';

/** Pins in a block, which is never parted. */
const PINS = 24;

export type ClothOnPaper = { snapshot: Snapshot; title: string; say: SheetMessages; scan: TemplateResult };

/** Null until the cloth can be cut. */
export function clothSheet({ snapshot, title, say, scan }: ClothOnPaper): Sheet | null {
  const { cloth, settings } = snapshot;
  const plan = cloth?.plan;
  if (!cloth || !plan) return null;
  const { units } = settings;
  const { size } = sayCut(plan, units);
  const place = { snapshot, cloth };
  const drawn = (what: 'laid' | 'layout'): Block[] => {
    const figure = figureOf(place, what);
    if (!figure) return [];
    return [{ key: what, body: html`<div class="sheet-picture cloth-laid">${showFigure(figure)}</div>` }];
  };
  return {
    title,
    tries: [
      [
        {
          blocks: [
            { key: 'cut', body: html`<h3>${say.cut}</h3>`, keep: true },
            { key: 'size', body: html`<p><b>${size}</b> ${sayAllowance(plan, units)}</p>` },
            ...drawn('laid'),
            ...pinLists(place).flatMap(pinBlocks),
            ...drawn('layout'),
            { key: 'scan', body: scan },
          ],
        },
        {
          each: html`<h3>${say.strip}</h3>${checkLine()}`,
          blocks: stripRows(place).map((row, i) => ({ key: `row-${i}`, body: html`${row}` })),
        },
      ],
    ],
  };
}

function pinBlocks({ heading, pins }: { heading: string; pins: string[] }, group: number): Block[] {
  const blocks: Block[] = [{ key: `pins-${group}`, body: html`<h3>${heading}</h3>`, keep: true }];
  for (let from = 0; from < pins.length; from += PINS)
    blocks.push({
      key: `pins-${group}.${from}`,
      body: html`<ol class="print-pins" start=${from + 1}>${pins.slice(from, from + PINS).map((pin) => html`<li>${pin}</li>`)}</ol>`,
    });
  return blocks;
}
