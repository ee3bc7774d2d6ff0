/** Where to count or to look next, and what each answer means. */
import type { Found, Look, Plan, Tell } from '../../core/index.ts';
import { term } from './terms.ts';
import type { Speech } from './words.ts';

const roundName = ({ round, edging }: Look, plan: Plan): string => {
  if (round === 'edging') return plan.edgings.length > 1 ? `edging round ${(edging ?? 0) + 1}` : 'edging';
  return round === 'join' ? 'join' : 'foundation';
};

const things = (plan: Plan): string => (plan.edge.corners[0]?.made === 'stitch' ? 'stitches' : 'chains');

/** "Count the chains in corner 2 of the edging." */
export function sayLook(look: Look, plan: Plan, speech: Speech): string {
  const round = roundName(look, plan);
  const isRound = plan.edge.sides.length === 1;
  const side = isRound ? 'the round' : `side ${(look.side ?? 0) + 1}`;
  const corner = `corner ${(look.corner ?? 0) + 1}`;
  switch (look.look) {
    case 'side':
      return isRound ? `Count the ${round}.` : `Count ${side} of the ${round}.`;
    case 'corner':
      return `Count the ${things(plan)} in ${corner} of the ${round}.`;
    case 'front':
      return isRound ? 'Count the front again.' : `Count front ${side} again.`;
    case 'closing':
      return `Look at the closing of the ${round}.`;
    case 'after-corner':
      return `Look for the first stitch after ${corner} of the ${round}.`;
    case 'arm':
      return `Look into ${corner} of the ${round}, ${look.end ?? 'before'} its ${things(plan)}.`;
    case 'corner-place':
      return `Look where ${corner} of the ${round} stands.`;
    case 'along':
      return `Look along ${side} of the ${round} for 2 in 1, or 1 ${term('miss', speech.dialect, 'done')}.`;
    case 'join-start':
      return 'Look where the join begins, on both pieces.';
    case 'join-side':
      return 'Look which sides lie together.';
    case 'join-corner':
      return `Look at the join in ${corner}.`;
  }
}

/** An answer on a button: a number, or a few words. */
export function sayFound(found: Found, speech: Speech): string {
  if (typeof found === 'number') return `${found}`;
  const says = WORDS[found];
  if (says) return says(speech);
  return found.replaceAll('-', ' ');
}

const missed = ({ dialect }: Speech): string => term('miss', dialect, 'done');

const WORDS: Record<string, (speech: Speech) => string> = {
  missed,
  skipped: missed,
};

/** "3 means this. The recipe has 2." */
export function sayTell(tell: Tell, plan: Plan, speech: Speech): string {
  const means = `${capital(sayFound(tell.expect, speech))} means this`;
  const other = sayFound(tell.asRecipe, speech);
  return `${sayLook(tell, plan, speech)} ${means}, ${other} does not.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
