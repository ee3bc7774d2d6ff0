/** Scenes of the place Cloth: nothing measured, a cushion, a bag and a cover, problems, and what is folded away. */
import type { Page } from 'playwright-core';
import type { AppEvent } from '../../src/state/snapshot.ts';
import type { PictureScene } from './scenes.ts';

const typed = (texts: Record<string, string>): AppEvent[] =>
  Object.entries(texts).map(([field, text]) => ({ type: 'TYPE', field, text }));

/** Coming back to a place that is measured. */
const measured = (texts: Record<string, string>): AppEvent[] => [
  ...typed(texts),
  { type: 'SHOW', tab: 'cloth' },
];

const cushion = {
  'cloth.width.0': '41',
  'cloth.width.1': '41.3',
  'cloth.height.0': '41',
  'cloth.depth': '1.5',
  'cloth.edging': '0.6',
  'cloth.stretch-stitches.top': '20',
  'cloth.stretch-length.top': '15.5',
  'cloth.stretch-stitches.front': '20',
  'cloth.stretch-length.front': '15.2',
  'cloth.cloth-width': '140',
};

const four: AppEvent[] = typed({ 'side.0': '54', 'side.1': '54', 'side.2': '54', 'side.3': '54' });
const round: AppEvent[] = [{ type: 'CHANGE', project: { sideCount: 0 } }, ...typed({ 'side.0': '150' })];
const six: AppEvent[] = [
  { type: 'CHANGE', project: { sideCount: 6 } },
  ...typed(Object.fromEntries(Array.from({ length: 6 }, (_, i) => [`side.${i}`, '40']))),
];

const bag = { ...cushion, 'cloth.becomes': 'bag', 'cloth.open-side': '1', 'cloth.height.0': '34' };
const cover = {
  'cloth.becomes': 'cover',
  'cloth.diameter.0': '36',
  'cloth.depth': '1.6',
  'cloth.edging': '0.6',
  'cloth.stretch-stitches.top': '20',
  'cloth.stretch-length.top': '15.5',
};

/** Opens a part of the place by the words on it. */
const unfold = (words: string | RegExp) => async (page: Page) => {
  const fold = page
    .locator('.cloth details.fold')
    .filter({ has: page.locator('summary', { hasText: words }) });
  await fold.first().locator('summary').first().click();
  await fold.first().scrollIntoViewIfNeeded();
};

const part = (name: string, words: string | RegExp, events: AppEvent[]): PictureScene => ({
  name: `cloth-part-${name}`,
  events,
  steps: unfold(words),
  whole: true,
  devices: ['phone'],
  themes: ['light'],
});

const inCushion = [...four, ...measured(cushion)];

export const clothScenes: PictureScene[] = [
  { name: 'cloth-nothing', events: [{ type: 'SHOW', tab: 'cloth' }] },
  { name: 'cloth-nothing-whole', events: [{ type: 'SHOW', tab: 'cloth' }], whole: true },
  { name: 'cloth-cushion', events: inCushion },
  { name: 'cloth-cushion-whole', events: inCushion, whole: true },
  { name: 'cloth-bag-whole', events: [...four, ...measured(bag)], whole: true },
  { name: 'cloth-cover-whole', events: [...round, ...measured(cover)], whole: true },
  {
    name: 'cloth-hexagon-whole',
    events: [...six, ...measured({ 'cloth.side.0': '21', 'cloth.depth': '1.5' })],
    whole: true,
    themes: ['light'],
  },
  {
    name: 'cloth-inches-whole',
    events: [
      { type: 'SETTLE', settings: { units: 'inch', dialect: 'us' } },
      ...four,
      ...measured({
        ...cushion,
        'cloth.width.0': '16 1/8',
        'cloth.width.1': '',
        'cloth.height.0': '16 1/8',
        'cloth.depth': '5/8',
        'cloth.edging': '1/4',
        'cloth.stretch-length.top': '6 1/8',
        'cloth.stretch-length.front': '6',
        'cloth.cloth-width': '54',
      }),
    ],
    whole: true,
    themes: ['light'],
  },
  {
    name: 'cloth-front-of-cloth-whole',
    events: [...inCushion, ...typed({ 'cloth.front': 'cloth' })],
    whole: true,
    themes: ['light'],
  },
  {
    name: 'cloth-front-of-cloth-recipe',
    events: [
      ...typed({ 'side.0': '60', 'side.1': '40', 'side.2': '52', 'side.3': '30', 'cloth.front': 'cloth' }),
      { type: 'SHOW', tab: 'edge' },
    ],
    // The part before the last: the join comes after it.
    steps: async (page) =>
      page
        .locator('.recipe-part')
        .nth(-2)
        .evaluate((part) => part.scrollIntoView({ block: 'end' })),
    devices: ['phone'],
  },
  {
    name: 'cloth-just-measured-whole',
    events: [...four, { type: 'SHOW', tab: 'cloth' }, ...typed(cushion)],
    whole: true,
    devices: ['phone'],
    themes: ['light'],
  },
  {
    name: 'cloth-problems',
    events: [{ type: 'SHOW', tab: 'cloth' }, ...typed({ 'cloth.width.0': 'wide', 'cloth.height.0': '0' })],
    steps: (page) => page.getByRole('button', { name: 'Show me the cut' }).click(),
  },
  {
    name: 'cloth-printed',
    events: inCushion,
    print: true,
    whole: true,
    devices: ['desktop'],
    themes: ['light'],
  },
  part('lies', 'How it will lie', inCushion),
  part('pins', 'Pins', inCushion),
  part('sewing', 'Sewing', inCushion),
  part('foundation-yarn', 'Foundation yarn', inCushion),
  part('edging-yarn', 'Edging and join', inCushion),
  part('cloth-to-buy', /^Cloth/, inCushion),
  part('thread', /^Thread/, inCushion),
  part('pad', 'Cushion pad', inCushion),
  part('wanted', 'From a size', inCushion),
];
