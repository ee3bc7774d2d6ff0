/** Where to count or to look next, and what each answer means. */
import type { Found, Look, LookAt, Plan, Tell } from '../../../core/index.ts';
import { many } from '../numbers.ts';
import { term } from '../terms.ts';
import type { Speech } from '../words.ts';

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
    case 'round':
      return `Count every side of the ${round}.`;
    case 'side':
      return isRound ? `Count the ${round}.` : `Count ${side} of the ${round}.`;
    case 'corner':
      return `Count the ${things(plan)} in ${corner} of the ${round}.`;
    case 'front':
      return isRound ? 'Count the front again.' : `Count front ${side} again.`;
    case 'closing':
      return `Look where the ${round} begins and closes.`;
    case 'after-corner':
      return `Look for the first stitch after ${corner} of the ${round}.`;
    case 'arm':
      return `Count what goes into ${corner} of the ${round}, ${look.end ?? 'before'} its ${things(plan)}.`;
    case 'corner-place':
      return `Look where ${corner} of the ${round} stands.`;
    case 'along':
      return `Look along ${side} of the ${round} for 2 in 1, or 1 ${term('miss', speech.dialect, 'done')}.`;
    case 'first-corner':
      return `Look where the first corner of the ${round} comes, after its beginning.`;
    case 'loops':
      return `Look at the loops along the ${round}, right side to you.`;
    case 'twist':
      return 'Look along the base of the ring.';
    case 'hole':
      return 'Look at the pair where the join began.';
    case 'join-along':
      return 'Look along the join for 2 taken with 1.';
    case 'join-start':
      return 'Look where the join begins, on both pieces.';
    case 'join-side':
      return 'Look which sides lie together.';
    case 'join-corner':
      return `Look at the join in ${corner}.`;
  }
}

/** An answer on a button: a number, or a few words. */
export function sayFound({ look, round }: Look, found: Found, speech: Speech): string {
  if (typeof found === 'number') return sayNumber(look, found);
  return found
    .split(' + ')
    .map((part) => sayPart(part, round, speech))
    .join(', ');
}

function sayNumber(look: LookAt, found: number): string {
  const by = Math.abs(found);
  switch (look) {
    case 'corner-place':
      return found === 0 ? 'in its place' : `${by} ${found < 0 ? 'early' : 'late'}`;
    case 'join-start':
      return found === 0 ? 'in its place' : `${by} ${found < 0 ? 'too soon' : 'too far on'}`;
    case 'join-side':
      return found === 0 ? 'the right ones' : `${many(by, 'side')} off`;
    default:
      return `${found}`;
  }
}

/** What can stand at a closing, told as it is seen. */
const AT_CLOSING: Readonly<Record<string, string>> = {
  'attach-doubled': 'a stitch in the attach place',
  'closing-worked': 'a stitch in the closing below',
  'closing-forgotten': 'the last place worked too',
  'closing-over-first': 'over the first stitch',
  'closing-beside-first': 'beside the first stitch',
};

function sayPart(part: string, round: Look['round'], { dialect }: Speech): string {
  const missed = term('miss', dialect, 'done');
  const [what = '', count = '1', side = '0'] = part.split(' ');
  switch (what) {
    case 'as':
      return 'as in the recipe';
    case 'passed':
      return missed;
    case 'not':
      return 'not there';
    case 'stitch-missed':
      return `${count} ${missed}`;
    case 'stitch-doubled':
      return `${count} too many in 1 place`;
    case 'a':
      return 'a side further on';
    case 'both-loops':
      return 'none is free';
    case 'front-loops':
      return 'the free ones lie behind';
    case 'twisted':
      return 'it turns over once';
    case 'last-hole':
      return 'it is open';
    case 'two-with-one':
      return `2 of the ${count}, on front side ${Number(side) + 1}`;
    case 'start-counted':
      return round === 'foundation'
        ? 'only chains where the first stitch belongs'
        : `the first stitch ${missed}`;
    default:
      return AT_CLOSING[what] ?? part.replaceAll('-', ' ');
  }
}

/** "38 means this, 36 does not.": the second is what the recipe has. */
export function sayTell(tell: Tell, plan: Plan, speech: Speech): string {
  const means = capital(sayFound(tell, tell.expect, speech));
  const look = sayLook(tell, plan, speech);
  if (tell.expect === 'as asked') return `${look} It is as in the recipe.`;
  if (tell.expect === tell.asRecipe)
    return `${look} It is ${sayFound(tell, tell.expect, speech)}, as in the recipe.`;
  return `${look} ${means} means this, ${sayFound(tell, tell.asRecipe, speech)} does not.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
