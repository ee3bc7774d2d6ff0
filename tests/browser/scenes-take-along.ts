/** Scenes of "Take along": every sheet, sending, an answer that came, and a clip. */
import type { Page } from 'playwright-core';
import { sendEvent } from './app.ts';
import type { PictureScene } from './scenes.ts';

const show = { type: 'SHOW', tab: 'take-along' } as const;
const measures = {
  'cloth.width.0': '41',
  'cloth.height.0': '30.5',
  'cloth.depth': '1.5',
  'cloth.spacing': '4',
};

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

const sheet = (kind: string) => async (page: Page) => {
  await press(page, kind);
  await page.locator('.sheet-pages[aria-busy=false]').waitFor();
  await page.locator('.sheets').scrollIntoViewIfNeeded();
};

const sheets = [
  'The whole pattern',
  'Recipe on one page',
  'Ring diagram',
  'To tick off',
  'Cloth and pins',
  'One stitch',
];

/** Asked for help, answered, and opened by whoever asked. */
async function answered(page: Page): Promise<void> {
  const address = async (id: string): Promise<string> => {
    const field = page.locator(`#send-${id}`);
    await page.waitForFunction(
      (id) => /#panel=/.test(document.querySelector<HTMLInputElement>(`#send-${id}`)?.value ?? ''),
      id,
    );
    return field.inputValue();
  };
  const open = async (link: string): Promise<void> => {
    await page.evaluate((fragment) => {
      location.hash = fragment;
    }, new URL(link).hash);
    await page.getByText('This panel was sent to you.').waitFor();
  };
  await sendEvent(page, { type: 'TYPE', field: 'worked.edging.0.1', text: '37' });
  await sendEvent(page, show);
  await open(await address('wrong'));
  await page
    .getByRole('button', { name: /^Do it this way/ })
    .first()
    .click();
  await page.getByText('Send this answer back').click();
  await open(await address('answer'));
  await page.locator('.sent-answer').scrollIntoViewIfNeeded();
}

export const takeAlongScenes: PictureScene[] = [
  ...sheets.map(
    (kind): PictureScene => ({
      name: `take-sheet-${kind.toLowerCase().replaceAll(' ', '-')}`,
      events: [
        ...Object.entries(measures).map(([field, text]) => ({ type: 'TYPE', field, text }) as const),
        show,
      ],
      steps: sheet(kind),
    }),
  ),
  {
    name: 'take-send',
    events: [show],
    steps: async (page) => {
      await page.getByText('The same as text').first().click();
      await page.locator('.take-use').first().scrollIntoViewIfNeeded();
    },
  },
  {
    name: 'take-clip',
    events: [show],
    steps: async (page) => {
      await page.getByText('A clip for a lesson', { exact: true }).click();
      await page.getByRole('button', { name: 'Make the clip' }).scrollIntoViewIfNeeded();
    },
  },
  { name: 'take-answer', steps: answered },
];
