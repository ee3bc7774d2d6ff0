/** The written pattern, block by block, so that it can be parted between any two acts. */
import { html, type TemplateResult } from 'lit-html';
import type { Written, Block as WrittenBlock } from '../../words/pattern/document.ts';
import type { Block, Sheet } from './paging.ts';

/** A text is parted where it is longer than this: what a person typed may fill pages. */
const LONGEST = 900;

export function patternSheet({ title, head, sections }: Written, scan: TemplateResult): Sheet {
  const blocks = sections.flatMap(({ heading, blocks: own }, section): Block[] => [
    { key: `${section}`, body: html`<h3>${heading}</h3>`, keep: true },
    ...own.flatMap((block, i) => parts(block).map((part, n) => ({ ...part, key: `${section}.${i}.${n}` }))),
  ]);
  const under: Block = { key: 'head', body: html`${head.map((line) => html`<p>${line}</p>`)}` };
  return { title, tries: [[{ blocks: [under, ...blocks, { key: 'scan', body: scan }] }]] };
}

type Part = Pick<Block, 'body' | 'keep'>;

function parts(block: WrittenBlock): Part[] {
  switch (block.kind) {
    case 'paragraph':
      return paragraphs(block.text).map((text) => ({ body: html`<p>${text}</p>` }));
    case 'list':
      return block.items.map((item) => ({ body: html`<p class="sheet-item">– ${item}</p>` }));
    case 'acts':
      return block.items.map((item, i) => ({ body: html`<p class="sheet-item">${i + 1}. ${item}</p>` }));
    case 'table':
      return [{ body: table(block) }];
  }
}

const table = ({ head, rows }: Extract<WrittenBlock, { kind: 'table' }>): TemplateResult => html`<table>
  <thead><tr>${head.map((cell) => html`<th scope="col">${cell}</th>`)}</tr></thead>
  <tbody>${rows.map((row) => html`<tr>${row.map((cell) => html`<td>${cell}</td>`)}</tr>`)}</tbody>
</table>`;

/** A line each, and long ones parted at a space. */
export function paragraphs(text: string): string[] {
  return text.split('\n').flatMap((line) => {
    const pieces: string[] = [];
    let rest = line;
    while (rest.length > LONGEST) {
      const space = rest.lastIndexOf(' ', LONGEST);
      const at = space > 0 ? space : LONGEST;
      pieces.push(rest.slice(0, at));
      rest = rest.slice(at).trimStart();
    }
    return [...pieces, rest];
  });
}
