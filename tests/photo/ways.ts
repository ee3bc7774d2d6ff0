/** The ways of proposing that are measured against each other. */
import { evenlyOn, propose } from '../../src/photo/propose.ts';
import type { Way } from './person.ts';

const none = { places: [], isAlike: false };

/** The page's own. */
export const byLikeness: Way = (asked) => {
  const work = propose(asked);
  let turn = work.next();
  while (!turn.done) turn = work.next();
  return turn.value ?? none;
};

/** On at the distance of the last marks, whatever the picture shows. */
export const evenly: Way = (asked) => ({ places: evenlyOn(asked), isAlike: false });
