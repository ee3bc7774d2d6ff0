/** A written pattern as plain text, Markdown and a page of HTML that stands by itself. */
import type { Block, Written } from './document.ts';

type Row = readonly string[];

export function toText({ title, head, sections }: Written): string {
  const parts = sections.map(({ heading, blocks }) =>
    [heading.toUpperCase(), ...blocks.map(textOf)].join('\n\n'),
  );
  return `${[[title, ...head].join('\n'), ...parts].join('\n\n')}\n`;
}

function textOf(block: Block): string {
  switch (block.kind) {
    case 'paragraph':
      return block.text;
    case 'list':
      return block.items.map((item) => `- ${item}`).join('\n');
    case 'acts':
      return block.items.map((item, index) => `${index + 1}. ${item}`).join('\n');
    case 'table':
      return columns([block.head, ...block.rows]);
  }
}

/** Rows with their columns one under the other. */
function columns(rows: readonly Row[]): string {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => (row[i] ?? '').length)));
  return rows
    .map((row) =>
      row
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

export function toMarkdown({ title, head, sections }: Written): string {
  const parts = sections.map(({ heading, blocks }) =>
    [`## ${marked(heading)}`, ...blocks.map(markdownOf)].join('\n\n'),
  );
  return `${[`# ${marked(title)}`, head.map(marked).join('\\\n'), ...parts].join('\n\n')}\n`;
}

/** Signs that Markdown would take for its own. */
const marked = (text: string): string => text.replace(/[\\`*_[\]<>#|]/g, '\\$&');

function markdownOf(block: Block): string {
  switch (block.kind) {
    case 'paragraph':
      return marked(block.text);
    case 'list':
      return block.items.map((item) => `- ${marked(item)}`).join('\n');
    case 'acts':
      return block.items.map((item, index) => `${index + 1}. ${marked(item)}`).join('\n');
    case 'table': {
      const line = (row: Row): string => `| ${row.map(marked).join(' | ')} |`;
      return [line(block.head), `|${block.head.map(() => ' --- |').join('')}`, ...block.rows.map(line)].join(
        '\n',
      );
    }
  }
}

export function toHtml({ language, title, head, sections }: Written): string {
  const parts = sections.map(
    ({ heading, blocks }) =>
      `<section>\n<h2>${escaped(heading)}</h2>\n${blocks.map(htmlOf).join('\n')}\n</section>`,
  );
  return `<!doctype html>
<html lang="${language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>${escaped(title)}</title>
</head>
<body>
<h1>${escaped(title)}</h1>
<p>${head.map(escaped).join('<br>\n')}</p>
${parts.join('\n')}
</body>
</html>
`;
}

const entities: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => entities[sign] ?? sign);

function htmlOf(block: Block): string {
  const items = (list: Row): string => list.map((item) => `<li>${escaped(item)}</li>`).join('\n');
  switch (block.kind) {
    case 'paragraph':
      return `<p>${escaped(block.text).replaceAll('\n', '<br>\n')}</p>`;
    case 'list':
      return `<ul>\n${items(block.items)}\n</ul>`;
    case 'acts':
      return `<ol>\n${items(block.items)}\n</ol>`;
    case 'table': {
      const cells = (row: Row, tag: 'th' | 'td'): string =>
        `<tr>${row.map((cell, i) => (tag === 'th' || i === 0 ? `<th scope="${tag === 'th' ? 'col' : 'row'}">${escaped(cell)}</th>` : `<td>${escaped(cell)}</td>`)).join('')}</tr>`;
      return `<table>\n${[cells(block.head, 'th'), ...block.rows.map((row) => cells(row, 'td'))].join('\n')}\n</table>`;
    }
  }
}
