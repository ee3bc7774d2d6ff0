/** Scenes of the walk: every kind of step, every move inside every stitch, and the lessons in each stage. */
import type { Page } from 'playwright-core';
import type { StepKind } from '../../core/index.ts';
import { LESSON_IDS } from '../../src/state/lesson-progress.ts';
import { movesOf, type StitchKind } from '../../src/stitch/moves.ts';
import { sendEvent } from './app.ts';
import type { PictureScene } from './scenes.ts';
import { answerAll, drawn, setSmallPanel } from './walking.ts';

/** The small panel at its first step of a kind; `at` picks a later one. */
async function toStep(page: Page, kind: StepKind, at = 0): Promise<void> {
  await setSmallPanel(page);
  if (kind !== 'check-twist') await answerAll(page);
  await page.evaluate(
    ([wanted, which]) => {
      const { send, snapshot } = window.ringtrue!;
      const { steps } = snapshot().making;
      const all = Array.from({ length: steps.length }, (_, i) => steps.at(i));
      const to = all.filter((step) => step.kind === wanted)[which]?.index ?? 0;
      send({ type: 'JUMP', to });
    },
    [kind, at] as const,
  );
  await drawn(page);
}

const KINDS: StepKind[] = [
  ...(['count-stitch', 'count-corner'] as const),
  ...(['slip-knot', 'start-chains', 'foundation-treble', 'corner-chain'] as const),
  ...(['fasten-off', 'tape-ends', 'check-twist', 'close-tops', 'close-base', 'weave-ends'] as const),
  ...(['right-side', 'attach', 'attach-chain', 'double-crochet', 'close-round'] as const),
  ...(['lay-strip', 'cloth-centres', 'cloth-corners', 'cloth-pins', 'sew-out', 'sew-back'] as const),
  ...(['sew-fast', 'pins-out', 'turn-strip'] as const),
  ...([
    'wrong-sides',
    'join-marker',
    'join-attach',
    'slip-stitch',
    'long-loop',
    'pad-in',
    'pin-last',
    'take-loop',
  ] as const),
  ...(['look-for-holes', 'last-hole', 'join-close', 'ends-inside', 'finished'] as const),
];

const steps: PictureScene[] = KINDS.map((kind) => ({
  name: `step-${kind}`,
  steps: (page) => toStep(page, kind),
  devices: ['desktop', 'phone'],
  themes: ['light'],
}));

/** Stitches that can be opened: at which step (and which of that kind), with how many moves. */
const OPENED: [name: string, kind: StepKind, at: number, stitch: StitchKind][] = [
  ['start-chain', 'start-chains', 0, 'chain'],
  ['first-foundation-treble', 'foundation-treble', 0, 'foundation-start'],
  ['foundation-treble', 'foundation-treble', 1, 'foundation-treble'],
  ['corner-chain', 'corner-chain', 1, 'chain'],
  ['close-tops', 'close-tops', 0, 'needle-closing'],
  ['attach-chain', 'attach-chain', 0, 'chain'],
  ['first-double-crochet', 'double-crochet', 0, 'double-crochet'],
  ['double-crochet-before-the-corner', 'double-crochet', 1, 'double-crochet'],
  ['double-crochet-past-the-corner', 'double-crochet', 2, 'double-crochet'],
  ['hidden-double-crochet', 'double-crochet', 3, 'double-crochet'],
  ['double-crochet', 'double-crochet', 4, 'double-crochet'],
  ['close-round', 'close-round', 0, 'needle-closing'],
  ['running-stitch', 'sew-out', 0, 'running-stitch'],
  ['running-stitch-back', 'sew-back', 0, 'running-stitch'],
  ['first-slip-stitch', 'slip-stitch', 0, 'slip-stitch'],
  ['corner-slip-stitch', 'slip-stitch', 3, 'slip-stitch'],
  ['last-hole', 'last-hole', 0, 'slip-stitch'],
  ['join-close', 'join-close', 0, 'needle-closing'],
];

async function openStitch(page: Page, kind: StepKind, at: number, moves: number): Promise<void> {
  await toStep(page, kind, at);
  await page.getByRole('button', { name: 'Move by move' }).click();
  for (let i = 0; i < moves; i++) await page.getByRole('button', { name: 'Next move', exact: true }).click();
  await drawn(page);
  await page.locator('.stitch-figure').scrollIntoViewIfNeeded();
}

const moves: PictureScene[] = OPENED.flatMap(([name, kind, at, stitch]) =>
  Array.from(
    { length: movesOf(stitch).length + 1 },
    (_, move): PictureScene => ({
      name: `move-${name}-${move}`,
      open: { reducedMotion: true },
      steps: (page) => openStitch(page, kind, at, move),
      devices: ['desktop', 'phone'],
      themes: ['light'],
    }),
  ),
);

const hands: PictureScene[] = (['foundation-treble', 'double-crochet', 'slip-stitch'] as const).map(
  (kind) => ({
    name: `left-handed-${kind}`,
    events: [{ type: 'SETTLE', settings: { hand: 'left' } }],
    steps: (page) => toStep(page, kind, 1),
  }),
);

async function openLessons(page: Page): Promise<void> {
  await sendEvent(page, { type: 'SHOW', tab: 'walk' });
  await page.getByRole('button', { name: 'Open the lessons' }).click();
  await page.locator('.lesson-card').first().waitFor();
}

const press = (page: Page, name: string | RegExp) =>
  page.locator('dialog[open]').getByRole('button', { name }).first().click();

/** Opens a lesson (counted from 0) at a level and goes on by so many steps. */
async function inLesson(page: Page, lesson: number, level: string, onward: number): Promise<void> {
  await openLessons(page);
  await page.locator('.lesson-card').nth(lesson).getByRole('button', { name: level }).click();
  for (let i = 0; i < onward; i++) await press(page, /^Next|^Leave it out/);
  await drawn(page);
}

const lessons: PictureScene[] = (
  [
    ['lessons', openLessons],
    ['lesson-shown', (page) => inLesson(page, 0, 'Watch', 3)],
    ['lesson-asked', (page) => inLesson(page, 0, 'Do it all', 3)],
    [
      'lesson-told',
      async (page) => {
        await inLesson(page, 0, 'Do it all', 3);
        await page.locator('.lesson-option').first().click();
      },
    ],
    ['lesson-mirrored', (page) => inLesson(page, LESSON_IDS.indexOf('mirrored'), 'Do it all', 1)],
    ['lesson-miscount', (page) => inLesson(page, LESSON_IDS.indexOf('miscounts'), 'Watch', 0)],
    ['lesson-finished', (page) => inLesson(page, LESSON_IDS.indexOf('mirrored'), 'Watch', 4)],
  ] satisfies [string, (page: Page) => Promise<unknown>][]
).map(([name, open]) => ({ name, steps: open }));

export const walkScenes: PictureScene[] = [
  ...steps,
  ...moves,
  ...hands,
  ...lessons,
  { name: 'lesson-stills', open: { reducedMotion: true }, steps: (page) => inLesson(page, 0, 'Watch', 3) },
];
