/**
 * The usual stories, each as the counts that it tells on this panel.
 *
 * Rule: what is not told is left open. Which side it was, and how many stitches it has, is asked for.
 */
import { actOf, countRound, type Plan, type Seen, work } from '../../core/index.ts';
import { fieldNames } from '../state/fields.ts';
import type { Field } from '../state/snapshot.ts';
import { SIGHT_IDS, type SightId, STORY_IDS, type StoryId } from '../words/wrong/stories.ts';
import type { LookedAt } from './chosen.ts';

type Shape = Pick<Plan['foundation'], 'sides' | 'corners'>;
type Counts = NonNullable<Seen['foundation']>;

/** The counts of a story, or null where it cannot happen on this panel. */
type Story = (plan: Plan) => Seen | null;

export const storiesFor = (plan: Plan): StoryId[] => STORY_IDS.filter((id) => seenOfStory(id, plan) !== null);

export function seenOfStory(id: StoryId, plan: Plan): Seen | null {
  const seen = STORIES[id](plan);
  const counts = [...(seen?.foundation?.sides ?? []), ...(seen?.edgings ?? []).flatMap(({ sides }) => sides)];
  return counts.some((count) => count !== null && count < 0) ? null : seen;
}

const sidesOf = (plan: Plan): number => plan.edge.sides.length;

const isRound = (plan: Plan): boolean => plan.edge.corners.length === 0;

/** The last edging with its sides changed; rounds before it are not counted. */
function lastOff(plan: Plan, by: (side: number) => number): Seen {
  const last = plan.edgings.length - 1;
  return { edgings: plan.edgings.map((round, n) => (n === last ? off(round, by) : blank(round))) };
}

const off = ({ sides }: Shape, by: (side: number) => number): Counts => ({
  sides: sides.map((count, side) => count + by(side)),
});

/** Of a ring without corners its side is all of it. */
const inAll = (round: Shape & { total: number }, by: number): Counts =>
  round.corners.length === 0 ? off(round, () => by) : { ...blank(round), total: round.total + by };

/** The last edging's total changed. */
function lastInAll(plan: Plan, by: number): Seen {
  const last = plan.edgings.length - 1;
  return { edgings: plan.edgings.map((round, n) => (n === last ? inAll(round, by) : blank(round))) };
}

const blank = ({ sides }: Shape): Counts => ({ sides: sides.map(() => null) });

const only =
  (wanted: number, by: number) =>
  (side: number): number =>
    side === wanted ? by : 0;

const STORIES: Record<StoryId, Story> = {
  'every-side-two-more': (plan) => (isRound(plan) ? null : lastOff(plan, () => 2)),
  'every-side-one-short': (plan) => (isRound(plan) ? null : lastOff(plan, () => -1)),
  'one-too-many-after-closing': (plan) => (isRound(plan) ? null : lastOff(plan, only(0, 1))),
  'one-more-each-round': (plan) =>
    plan.edgings.length < 2 ? null : { edgings: plan.edgings.map((round, n) => inAll(round, n + 1)) },
  'no-longer-fits': (plan) => (plan.edgings.length < 2 || isRound(plan) ? null : {}),
  'one-side-short': (plan) => (sidesOf(plan) < 2 ? null : lastInAll(plan, -1)),
  'long-and-short': (plan) => (sidesOf(plan) < 3 ? null : {}),
  'corner-missing': cornerMissing,
  'sides-swapped': sidesSwapped,
  'one-too-many-in-all': (plan) => lastInAll(plan, 1),
  'corners-early': (plan) =>
    isRound(plan) ? null : { join: { drift: plan.edge.sides.map(() => -2), leftOver: 0 } },
  'earlier-and-earlier': (plan) =>
    sidesOf(plan) < 2
      ? null
      : { join: { drift: plan.edge.sides.map((_, i) => -(i + 1)), leftOver: -sidesOf(plan) } },
  'left-over': () => ({ join: { leftOver: 2 } }),
};

/** The last edging has a side fewer than planned; what the others have is not told. */
function cornerMissing(plan: Plan): Seen | null {
  if (sidesOf(plan) < 2 || isRound(plan)) return null;
  const last = plan.edgings.length - 1;
  return {
    edgings: plan.edgings.map((round, n) => ({
      sides: n === last ? round.sides.slice(1).map(() => null) : round.sides.map(() => null),
    })),
  };
}

/** Told apart from the recipe only where the order shows in the numbers. */
function sidesSwapped(plan: Plan): Seen | null {
  if (sidesOf(plan) < 3) return null;
  const last = plan.edgings.length - 1;
  const made = work(plan, [actOf('order-not-mirrored', { round: 'plan' })]).edgings[last];
  if (!made) return null;
  const { sides } = countRound(made);
  if (sides.every((count, side) => count === plan.edgings[last]?.sides[side])) return null;
  return { edgings: plan.edgings.map((planned, n) => (n === last ? { sides } : blank(planned))) };
}

/** The field in which the person's own numbers begin, for a story that leaves them open. */
export function fieldAskedFor(id: StoryId, plan: Plan): Field | null {
  const asks: readonly StoryId[] = ['no-longer-fits', 'long-and-short', 'corner-missing'];
  if (!asks.includes(id)) return null;
  return fieldNames.workedSide(id === 'no-longer-fits' ? 0 : plan.edgings.length - 1, 0);
}

/** What can be seen on this panel though no count shows it, with the look and the answer that it is. */
export type Sight = { id: SightId; edging: number; looked: LookedAt };

const SEEN_AS = {
  'no-loops-free': ['loops', 'both-loops'],
  'loops-behind': ['loops', 'front-loops'],
  'ring-turned': ['twist', 'twisted'],
  'hole-left': ['hole', 'last-hole'],
} as const;

export const sightsFor = ({ edgings, choices }: Plan): Sight[] =>
  SIGHT_IDS.flatMap((id) => {
    const [look, found] = SEEN_AS[id];
    if (look === 'loops')
      return edgings.map((_, edging): Sight => {
        const at = { look, round: 'edging', edging } as const;
        return { id, edging, looked: { ...at, key: `loops.edging.${edging}`, found } };
      });
    // A piece with an open side has no last hole.
    if (look === 'hole' && choices.open !== undefined) return [];
    const round = look === 'hole' ? 'join' : 'foundation';
    return [{ id, edging: 0, looked: { look, round, edging: 0, key: `${look}.${round}`, found } }];
  });
