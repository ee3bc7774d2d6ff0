/** The sheet to tick off at the table: boxes by marker, side and corner, and the counts at the end of each round. */
import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit-html';
import type { Snapshot } from '../../state/snapshot.ts';
import type { SheetMessages } from '../../words/pattern/sheet-messages.ts';
import type { Speaker } from '../../words/speaker.ts';
import { term } from '../../words/terms.ts';
import type { Block, Sheet } from './paging.ts';
import { boxesIn, type TickRound, type TickStretch, tickRounds } from './ticks.ts';

/** More would be a book. Our own choice. */
const mostBoxes = 1500;

/** mm. A box has room for a tick and its number. */
const box = { width: 11, height: 8, step: 12.5 } as const;
const corner = { width: 23.5, step: 25 } as const;
const columns = 11;
const line = 9.5;
/** Lines of boxes in a block: a long side may be parted after so many. */
const mostLines = 4;

export type Ticks = {
  snapshot: Snapshot;
  title: string;
  say: SheetMessages;
  speaker: Speaker;
  scan: TemplateResult;
};

export function tickSheet(ticks: Ticks): Sheet {
  const { snapshot, title, say, speaker, scan } = ticks;
  const rounds = tickRounds(snapshot);
  const boxes = boxesIn(rounds);
  if (boxes > mostBoxes) {
    const says = say.tooMany({ boxes, most: mostBoxes }, speaker);
    return { title, tries: [[{ blocks: [{ key: 'too-many', body: html`<p>${says}</p>` }] }]] };
  }
  const every = snapshot.making.plan.choices.markerEvery;
  const blocks = [
    { key: 'boxes', body: html`<p>${say.boxes({ every }, speaker)}</p>` },
    ...rounds.flatMap((round, i) => roundBlocks(round, `${i}`, ticks)),
    { key: 'scan', body: scan },
  ];
  return { title, tries: [[{ blocks }]] };
}

function roundBlocks(round: TickRound, key: string, ticks: Ticks): Block[] {
  const { say, speaker, snapshot } = ticks;
  const { plan } = snapshot.making;
  const headings = {
    foundation: say.foundation,
    join: say.join,
    edging: say.edging({ round: round.edging, rounds: plan.edgings.length }, speaker),
  };
  const heading = round.isFront ? say.frontStrip({ heading: headings[round.of] }) : headings[round.of];
  const under = { key, body: html`<h3>${say.goesOn({ heading }, speaker)}</h3>` };
  const stretches = grouped(round.stretches);
  return [
    { key, body: html`<h3>${heading}</h3>`, keep: true },
    ...stretches.flatMap((group, i) =>
      groupBlocks(group, `${key}.${i}`, round, ticks).map((block) => ({ ...block, under })),
    ),
    {
      key: `${key}.end`,
      under,
      body: html`<p class="sheet-end"><b>${countsAtEnd(round, ticks)}</b> <span class="sheet-blank">${say.counted}</span></p>`,
    },
  ];
}

type Group = { side: Extract<TickStretch, { what: 'side' }> | null; after: TickStretch[] };

/** A side, and the corner and acts after it. */
function grouped(stretches: readonly TickStretch[]): Group[] {
  const groups: Group[] = [];
  for (const one of stretches) {
    const last = groups.at(-1);
    if (one.what === 'side') groups.push({ side: one, after: [] });
    else if (last) last.after.push(one);
    else groups.push({ side: null, after: [one] });
  }
  return groups;
}

type Cell = { says: string; isWide: boolean };

function groupBlocks(
  { side, after }: Group,
  key: string,
  { of, isFront }: TickRound,
  { say, speaker, snapshot }: Ticks,
): Block[] {
  const { making, settings } = snapshot;
  const isRound = making.edge.corners.length === 0;
  const pad = making.becomes === 'cover' ? say.form : term('cushion-pad', settings.dialect);
  const cells: Cell[] = [
    ...(side?.ends ?? []).map((end) => ({ says: speaker.formatting.plain(end), isWide: false })),
    ...after.flatMap((one): Cell[] => {
      if (one.what === 'side') return [];
      const says =
        one.what === 'corner'
          ? say.corner({ corner: one.corner }, speaker)
          : say.act({ act: one.act, pad }, speaker);
      return [{ says, isWide: true }];
    }),
  ];
  const lines = linesOf(cells);
  const blocks: Block[] = [];
  for (let from = 0; from < lines.length; from += mostLines) {
    const own = lines.slice(from, from + mostLines);
    const told = side && { of, isFront, ...side, side: isRound ? null : side.side };
    const name =
      from === 0 && told
        ? html`<b>${say.ticked(told, speaker)}</b><br />${say.tickedCount(told, speaker)}`
        : html``;
    blocks.push({
      key: `${key}.${from}`,
      body: html`<div class="tick-row"><p>${name}</p>${boxes(own)}</div>`,
    });
  }
  return blocks;
}

type Placed = Cell & { x: number };

function linesOf(cells: readonly Cell[]): Placed[][] {
  const lines: Placed[][] = [[]];
  let x = 0;
  for (const cell of cells) {
    const step = cell.isWide ? corner.step : box.step;
    if (x + step > columns * box.step + 0.1) {
      lines.push([]);
      x = 0;
    }
    lines.at(-1)?.push({ ...cell, x });
    x += step;
  }
  return lines;
}

function boxes(lines: readonly Placed[][]): SVGTemplateResult {
  const [width, height] = [columns * box.step, lines.length * line];
  return svg`<svg class="tick-boxes" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">
    ${lines.flatMap((cells, row) => cells.map((cell) => oneBox(cell, row * line + 0.5)))}
  </svg>`;
}

function oneBox({ x, says, isWide }: Placed, y: number): SVGTemplateResult {
  const width = isWide ? corner.width : box.width;
  return svg`<rect class="tick-box" x=${x + 0.4} y=${y} width=${width} height=${box.height} rx=${isWide ? 2.5 : 0} />
    <text x=${x + width - 0.8} y=${y + box.height - 1.4} font-size="2.9" text-anchor="end">${says}</text>`;
}

function countsAtEnd({ of, atEnd }: TickRound, { say, speaker }: Ticks): string {
  return of === 'join' ? say.pairs({ pairs: atEnd.total }, speaker) : say.atEnd(atEnd, speaker);
}
