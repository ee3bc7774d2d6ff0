/** What the walk's browser tests share: a small panel, reading the page at a glance, and one tap or key. */
import type { Page } from 'playwright-core';
import { sendEvent } from './app.ts';

export type Rect = { x: number; y: number; width: number; height: number };

/** Six stitches a side, so that the whole making is some 150 steps; three give every kind of step in under 100. */
export async function setSmallPanel(
  page: Page,
  tab: 'edge' | 'walk' = 'walk',
  stitches: 3 | 6 = 6,
): Promise<void> {
  await sendEvent(page, { type: 'CHANGE', project: { sideCount: 4, counted: 'stitches-only' } });
  for (let side = 0; side < 4; side++)
    await sendEvent(page, { type: 'TYPE', field: `side.${side}`, text: `${stitches}` });
  await sendEvent(page, { type: 'SHOW', tab });
}

/** Answers both questions and comes back to the first step. */
export async function answerAll(page: Page): Promise<void> {
  for (const asks of ['twist', 'pad'] as const) {
    await sendEvent(page, { type: 'JUMP', to: 1_000_000 });
    await sendEvent(page, { type: 'ANSWER', asks });
  }
  await sendEvent(page, { type: 'JUMP', to: 0 });
}

/** Two frames: what was sent is on the page. */
export const drawn = (page: Page): Promise<void> =>
  page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );

export type Glance = {
  place: number;
  stage: string;
  kind: string;
  open: boolean;
  /** Caption, count, asides and question, in CSS px of the window. */
  words: Rect[];
  /** What can be pressed in the bar just now, with its name. */
  targets: (Rect & { name: string })[];
  /** The sentence itself. */
  saying: Rect;
  /** Next, or the answer to the question. */
  go: Rect;
  scrolled: number;
  window: { width: number; height: number };
};

/** Reads the step bar as it lies on the screen. Only reads. */
export function glance(page: Page): Promise<Glance> {
  return page.evaluate(() => {
    const { place, stage, step } = window.ringtrue!.snapshot();
    const rectOf = (element: Element): Rect => {
      const { x, y, width, height } = element.getBoundingClientRect();
      return { x, y, width, height };
    };
    const shown = (element: Element): boolean => element.getClientRects().length > 0;
    const bar = document.querySelector('.bar') as Element;
    const question = bar.querySelector('.question button');
    const next = bar.querySelector('#next') as Element;
    return {
      place,
      stage,
      kind: step.kind,
      open: question !== null,
      words: [...bar.querySelectorAll('.saying, .boxed, .question')].filter(shown).map(rectOf),
      saying: rectOf(bar.querySelector('.saying') as Element),
      targets: [...bar.querySelectorAll('button, input')].filter(shown).map((one) => ({
        ...rectOf(one),
        name: one.getAttribute('aria-label') ?? one.textContent ?? one.id,
      })),
      go: rectOf(question ?? next),
      scrolled: scrollY,
      window: { width: innerWidth, height: innerHeight },
    };
  });
}

/** Where a rect leaves the window, in words; empty where it lies inside. */
export function outside(rect: Rect, { width, height }: Glance['window']): string {
  const fits = rect.x >= -0.5 && rect.y >= -0.5 && rect.x + rect.width <= width + 0.5;
  return fits && rect.y + rect.height <= height + 0.5 ? '' : JSON.stringify(rect);
}

export const middle = ({ x, y, width, height }: Rect): [number, number] => [x + width / 2, y + height / 2];

/** Everything that a step shows, as text to be compared: state, words, and the draw list with its marks. */
export function fingerprint(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const frame = () => new Promise((done) => requestAnimationFrame(done));
    await frame();
    await frame();
    const { place, stage, step, answered } = window.ringtrue!.snapshot();
    const scene = window.ringtrue!.scene().views.map(({ id, centre, parts, labels, signs }) => ({
      id,
      centre,
      parts: parts.map(({ key, made, marks }) => [key, made, marks.count]),
      labels: labels.map(({ key, text, x, y }) => [key, text, x, y]),
      signs,
    }));
    const words = document.querySelector('.bar')?.textContent?.replace(/\s+/g, ' ');
    // Comments are the template library's own.
    const picture = [...document.querySelectorAll('.inside-picture path')].map((path) =>
      path.getAttribute('d'),
    );
    return JSON.stringify({ place, stage, step, answered, words, picture, scene });
  });
}
