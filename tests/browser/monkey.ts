/** Presses, drags and types at random, the same way for the same seed. */
import type { Page } from 'playwright-core';

export type Hands = 'mouse' | 'touch' | 'keyboard';

/** Numbers in [0, 1), the same row for the same seed (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

const keys = [
  ...['Tab', 'Tab', 'Tab', 'Shift+Tab', 'Enter', 'Space', 'Escape', 'Home', 'End', 'Backspace', 'Delete'],
  ...['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'PageUp', 'PageDown', 'Control+z', 'Control+y'],
  ...'0123456789abcdefghijklmnopqrstuvwxyz?+-.,/'.split(''),
];

/** Does `count` things to a page. A file dialog or a download that opens on the way is left alone. */
export async function monkey(page: Page, hands: Hands, seed: number, count: number): Promise<void> {
  const random = randomFrom(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const { width, height } = page.viewportSize() ?? { width: 800, height: 600 };
  const spot = (): [number, number] => [random() * width, random() * height];
  const acts: Record<Hands, (() => Promise<unknown>)[]> = {
    keyboard: [() => page.keyboard.press(pick(keys))],
    touch: [() => page.touchscreen.tap(...spot())],
    mouse: [
      () => page.mouse.click(...spot()),
      () => page.mouse.wheel(0, (random() - 0.5) * 800),
      async () => {
        await page.mouse.move(...spot());
        await page.mouse.down();
        await page.mouse.move(...spot(), { steps: 4 });
        await page.mouse.up();
      },
    ],
  };
  for (let i = 0; i < count; i += 1) await pick(acts[hands])();
}
