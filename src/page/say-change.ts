/** What to say when something has changed, for someone who only hears it. */
import type { Snapshot } from '../state/snapshot.ts';
import { sayFinding, sayVerdict } from '../words/verdict.ts';
import { sayStepInOne } from '../words/walk/step.ts';

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
