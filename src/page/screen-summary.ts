/** What is on the screen, in words, true in every state. */
import type { Snapshot } from '../state/snapshot.ts';
import { many } from '../words/numbers.ts';
import { sayVerdict } from '../words/verdict.ts';
import { sayStep } from '../words/walk/step.ts';
import { places } from './places.ts';

/** Play area, details, hint: what this is, how it stands, what to do. */
export function screenSummary({ making, place, step, settings, tab }: Snapshot): string {
  const verdict = sayVerdict(making, settings);
  const { corners, sides, total } = making.edge;
  const panel = corners.length === 0 ? 'a round panel' : `a panel of ${many(sides.length, 'side')}`;
  return [
    `The drawing shows ${panel} with ${total} places on its edge, and the back that is joined to it.`,
    verdict.head,
    verdict.body,
    `The work stands at step ${place + 1} of ${making.steps.length}: ${sayStep(step, making, settings).where}.`,
    places[tab].hint,
  ]
    .filter(Boolean)
    .join(' ');
}
