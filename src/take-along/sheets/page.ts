/** One page of a sheet, as it is printed: what stands at the head and the foot of each, and its blocks between. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Paper } from '../../controls/paper.ts';
import type { Snapshot } from '../../state/snapshot.ts';
import type { SheetMessages } from '../../words/pattern/sheet-messages.ts';
import type { Speaker } from '../../words/speaker.ts';
import { eachKey, type Page } from './paging.ts';

export type Furniture = {
  title: string;
  /** What kind of sheet it is. */
  kind: string;
  terms: string;
  snapshot: Snapshot;
  say: SheetMessages;
  speaker: Speaker;
  /** Null where it is too long to be printed. */
  link: string | null;
};

export function sheetPages(pages: readonly Page[], paper: Paper, furniture: Furniture): TemplateResult[] {
  return pages.map((page, i) => onePage(page, { paper, furniture, page: i + 1, pages: pages.length }));
}

type Numbered = { paper: Paper; furniture: Furniture; page: number; pages: number };

function onePage(
  { section, each, under, blocks }: Page,
  { paper, furniture, page, pages }: Numbered,
): TemplateResult {
  const { title, kind, terms, snapshot, say, speaker, link } = furniture;
  const { hand, units } = snapshot.settings;
  const told = [
    terms,
    say.hand[hand],
    say.units[units],
    say.date({ date: new Date() }, speaker),
    say.page({ page, pages }, speaker),
  ];
  return html`<div class="sheet-frame ${paper}">
    <section class="sheet-page" role="img" aria-label=${say.pageOf({ of: kind, page, pages }, speaker)}>
      <header class="sheet-top"><b>${title}</b><span>${told.join(' · ')}</span></header>
      <div class="sheet-body">
        ${each ? html`<div data-block=${eachKey(section)}>${each}</div>` : nothing}
        ${under ? html`<div class="sheet-under">${under}</div>` : nothing}
        ${blocks.map(({ key, body }) => html`<div class="sheet-block" data-block=${key}>${body}</div>`)}
      </div>
      <footer class="sheet-foot">${link === null ? say.linkLong : say.link({ link }, speaker)}</footer>
    </section>
  </div>`;
}

/** CSS px that a printer's letters may take more than the screen's. */
const spare = 14;

/** What the page on screen measures; null until there is one. */
export function measure(root: ParentNode): { room: number; heights: Map<string, number> } | null {
  const body = root.querySelector<HTMLElement>('.sheet-body');
  if (!body || body.offsetHeight === 0) return null;
  const blocks = root.querySelectorAll<HTMLElement>('.sheet-body > [data-block]');
  return {
    room: body.clientHeight - spare,
    heights: new Map([...blocks].map((block) => [block.dataset.block ?? '', block.offsetHeight])),
  };
}
