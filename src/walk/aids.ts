/**
 * What stands by the maker in the walk: the look inside a stitch, the screen kept on, the voice, and the
 * maker's own pace. Each has a state that only the device knows, so it is held here and not in the snapshot.
 */

import { addTap, type Tap } from '../making/pace.ts';
import type { Settings, Snapshot } from '../state/snapshot.ts';
import { createStitch, type Stitch, variantOf } from '../stitch/index.ts';
import { type Aloud, createAloud, textAloud } from './aloud.ts';
import { type Awake, createAwake } from './awake.ts';

export type Aids = {
  stitch: Stitch;
  awake: Awake;
  aloud: Aloud;
  /** Stitches tapped through lately, for the maker's pace. */
  taps(): readonly Tap[];
  /** The state is another: read it out, note the tap, keep the open stitch that of the step. */
  follow(now: Snapshot): void;
  stop(): void;
};

/** `onChange` is called when something here is to be shown anew. */
export function openAids(first: Snapshot, onChange: () => void): Aids {
  let last = first;
  let taps: readonly Tap[] = [];
  const stitch = createStitch(onChange);
  const awake = createAwake(onChange);
  const aloud = createAloud(onChange, () => last.settings.dialect);
  // The first sentence must be spoken within the press itself; on a page just opened none may be, and the next step is.
  const settle = ({ stayAwake, readAloud }: Settings, sentence: string): void => {
    if (stayAwake !== awake.state().wanted) awake.want(stayAwake);
    if (readAloud !== aloud.state().on) aloud.turn(readAloud, sentence);
  };
  settle(first.settings, '');
  const moved = (now: Snapshot): void => {
    if (!now.playing) taps = addTap(taps, { place: now.place, ms: performance.now() });
    aloud.say(textAloud(now.step, last.step, now.making, now.settings));
    const open = stitch.view();
    if (!open || JSON.stringify(variantOf(now.step, now.making)) === JSON.stringify(open.variant)) return;
    if (!stitch.open(now.step, now.making)) stitch.send({ type: 'CLOSE' });
  };
  return {
    stitch,
    awake,
    aloud,
    taps: () => taps,
    follow: (now) => {
      if (now.settings !== last.settings)
        settle(now.settings, textAloud(now.step, null, now.making, now.settings));
      if (now.place !== last.place) moved(now);
      last = now;
    },
    stop: () => {
      stitch.stop();
      awake.stop();
      aloud.stop();
    },
  };
}
