/** What is on the screen, in words, true in every state. */
import type { Snapshot } from '../state/snapshot.ts';
import { many } from '../words/numbers.ts';
import { sayVerdict } from '../words/verdict.ts';
import { sayStep } from '../words/walk/step.ts';

/** Play area, details, hint: what this is, how it stands, what to do. */
export function screenSummary({ making, place, step, settings, tab }: Snapshot): string {
  const verdict = sayVerdict(making, settings);
  const { corners, sides, total } = making.edge;
  const panel = corners.length === 0 ? 'a round panel' : `a panel of ${many(sides.length, 'side')}`;
  const hints = {
    edge: 'Change a count to see both rounds change.',
    cloth: 'Measure the panel to see how large to cut.',
    walk: 'Press Next to work one stitch.',
    wrong: 'Tell what you counted to find the cause.',
    'take-along': 'Write the pattern out to take it along.',
  };
  return [
    `The drawing shows ${panel} with ${total} places on its edge, and the back that is joined to it.`,
    verdict.head,
    verdict.body,
    `The work stands at step ${place + 1} of ${making.steps.length}: ${sayStep(step, making, settings).where}.`,
    hints[tab],
  ]
    .filter(Boolean)
    .join(' ');
}
