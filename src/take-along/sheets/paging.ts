/**
 * Which block of a sheet stands on which page.
 *
 * Rule: a block is never parted; a heading never stands alone at the foot of a page. Heights are those the page has
 * measured; until then all of a section stands on one page.
 */
import type { TemplateResult } from 'lit-html';

export type Block = {
  /** Its own within the sheet. */
  key: string;
  body: TemplateResult;
  /** It belongs to what follows. */
  keep?: boolean;
  /** Stands above it where it begins a page: under which heading it goes on. As high as that heading. */
  under?: { key: string; body: TemplateResult };
};

/** Begins on a page of its own. `each` stands at the top of every page of it. */
export type Section = { blocks: readonly Block[]; each?: TemplateResult };

/** `tries`: the same in ways that need less and less room; the first that fits on one page is taken, else the last. */
export type Sheet = { title: string; tries: readonly (readonly Section[])[] };

export type Page = {
  section: number;
  each?: TemplateResult;
  under?: TemplateResult;
  blocks: readonly Block[];
};

/** In CSS px: what a page holds, and how high each block is. */
export type Measured = { room: number; heights: ReadonlyMap<string, number> };

export const eachKey = (section: number): string => `each-${section}`;

export function pagesOf(sections: readonly Section[], { room, heights }: Measured): Page[] {
  const heightOf = (key: string): number => heights.get(key) ?? 0;
  return sections.flatMap(({ blocks, each }, section): Page[] => {
    const own = room - (each ? heightOf(eachKey(section)) : 0);
    const pages: Block[][] = [[]];
    let used = 0;
    blocks.forEach((block, i) => {
      let need = heightOf(block.key);
      // A heading, and those it is the heading of, as far as the first that can end a page.
      for (let next = i; blocks[next]?.keep && blocks[next + 1]; next++)
        need += heightOf((blocks[next + 1] as Block).key);
      if (used > 0 && used + need > own) {
        pages.push([]);
        used = block.under ? heightOf(block.under.key) : 0;
      }
      pages.at(-1)?.push(block);
      used += heightOf(block.key);
    });
    return pages.map((on, i) => {
      const under = i > 0 ? on[0]?.under?.body : undefined;
      return { section, blocks: on, ...(each && { each }), ...(under && { under }) };
    });
  });
}

/** The way of a sheet that fits on one page; else the last. */
export function fitting({ tries }: Sheet, measured: Measured, from: number): number {
  const isLast = from >= tries.length - 1;
  return isLast || pagesOf(tries[from] ?? [], measured).length <= 1 ? from : from + 1;
}
