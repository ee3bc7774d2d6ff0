/** A place to count or to look: its field, if it has one, and its numbers as the person counts them. */
import type { Found, Look, Tell } from '../../core/index.ts';
import { countedNumbers } from '../controls/fields.ts';
import { fieldNames } from '../state/fields.ts';
import type { Field, Snapshot } from '../state/snapshot.ts';

/** The field into which an answer is typed; null where it is only looked at. */
export function fieldOfLook({ look, round, edging = 0, side = 0, corner = 0 }: Look): Field | null {
  const back = round === 'edging' ? edging : 'foundation';
  switch (look) {
    case 'front':
      return fieldNames.frontAgain(side);
    case 'round':
      return fieldNames.workedSide(round === 'edging' ? edging : 'foundation', 0);
    case 'side':
      return fieldNames.workedSide(back, side);
    case 'corner':
      return fieldNames.workedCorner(back, corner);
    default:
      return null;
  }
}

/** The front's numbers take in what the person's own count takes in. */
export function personsFound(look: Look, found: Found, snapshot: Snapshot): Found {
  if (look.look !== 'front' || typeof found !== 'number') return found;
  const side = look.side ?? 0;
  return found + (countedNumbers(snapshot)[side] ?? 0) - (snapshot.making.edge.sides[side] ?? 0);
}

export const inPersonsNumbers = (tell: Tell, snapshot: Snapshot): Tell => ({
  ...tell,
  expect: personsFound(tell, tell.expect, snapshot),
  asRecipe: personsFound(tell, tell.asRecipe, snapshot),
});
