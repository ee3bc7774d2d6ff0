/** What is on the screen, in words, true in every state; and what to say when something has changed. */
import type { Snapshot } from '../state/snapshot.ts';
import { many } from '../words/numbers.ts';
import { sayFinding, sayVerdict } from '../words/verdict.ts';
import { sayStep, sayStepInOne } from '../words/walk/step.ts';

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

/** The finding that the drawing has come to. */
function saySeen({ making, finding }: Snapshot): string {
  const held = making.pairing.findings[finding];
  if (!held) return '';
  const { says, more } = sayFinding(held, making.edge.sides.length);
  return `${says} ${more}`;
}

/** What the change from one snapshot to the next means to someone who only hears it; empty for nothing. */
export function sayChange(before: Snapshot, now: Snapshot): string {
  const verdict = ({ making, settings }: Snapshot): string => {
    const { head, body } = sayVerdict(making, settings);
    return body ? `${head} ${body}` : head;
  };
  if (before.making.pairing !== now.making.pairing) {
    const says = verdict(now);
    if (says !== verdict(before)) return says;
  }
  if (before.finding !== now.finding) return saySeen(now);
  const moved = before.place !== now.place || before.making.steps !== now.making.steps;
  if (moved && before.place !== now.place) return sayStepInOne(now.step, now.making, now.settings);
  if (before.playing && !now.playing) return sayStepInOne(now.step, now.making, now.settings);
  return '';
}
