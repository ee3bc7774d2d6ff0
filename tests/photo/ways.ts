/** The ways of proposing that are measured against each other. */
import { pitchOf, propose } from '../../src/photo/propose.ts';
import type { Way } from './person.ts';

/** The page's own. */
export const byLikeness: Way = (asked) => {
  const work = propose(asked);
  let turn = work.next();
  while (!turn.done) turn = work.next();
  return turn.value?.places ?? null;
};

/** Evenly on from the last mark, at the distance of the last ten, up to the end of the line. */
export const evenly: Way = ({ line, marks }) => {
  const pitch = pitchOf(marks.slice(-11));
  const last = marks.at(-1) ?? 0;
  const count = Math.max(0, Math.round((line.length - last) / pitch));
  // The last one lies at the end: what is over is shared out.
  return Array.from({ length: count }, (_, i) => last + ((i + 1) * (line.length - last)) / count);
};
