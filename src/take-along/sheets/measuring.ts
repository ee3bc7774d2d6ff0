/** Measures the pages once they stand, and pages anew until what was measured is what stands there. */
import { measure } from './page.ts';
import type { Measured, Page } from './paging.ts';

type Found = { pages: readonly Page[]; at: number };

/** `isSettled`: every block stands where its own height puts it. */
export type Settled = Found & { isSettled: boolean };

type Content = readonly unknown[];

/**
 * `onChange` asks for a new rendering, in which heights are known. What comes back takes what the pages are made of,
 * and how to page it: beginning with one of a sheet's ways, and going on to the next only where `mayShrink`.
 */
export function openMeasuring(onChange: () => void) {
  let measured: Measured = { room: Number.POSITIVE_INFINITY, heights: new Map() };
  let measuredOf: Content = [];
  let content: Content = [];
  let at = 0;
  let frame = 0;
  const look = (): void => {
    frame = 0;
    const now = measure(document);
    if (!now) return;
    const isOwn = isAlike(measuredOf, content);
    const isSame = [...now.heights].every(([key, height]) => measured.heights.get(key) === height);
    if (isOwn && isSame && now.room === measured.room) return;
    // Another way of the same sheet is measured beside the ways before it.
    const heights = isOwn ? new Map([...measured.heights, ...now.heights]) : now.heights;
    measured = { room: now.room, heights };
    measuredOf = content;
    onChange();
  };
  return (of: Content, page: (measured: Measured, from: number, mayShrink: boolean) => Found): Settled => {
    if (!isAlike(of, content)) {
      content = of;
      at = 0;
    }
    const isOwn = isAlike(measuredOf, content);
    const found = page(measured, at, isOwn);
    at = found.at;
    if (frame === 0) frame = requestAnimationFrame(look);
    const isMeasured = found.pages.every(({ blocks }) =>
      blocks.every(({ key }) => measured.heights.has(key)),
    );
    return { ...found, isSettled: isOwn && isMeasured };
  };
}

const isAlike = (one: Content, other: Content): boolean =>
  one.length === other.length && one.every((part, i) => part === other[i]);
