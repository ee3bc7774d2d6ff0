/** The usual stories, each as the counts that it means on this panel. */
import { type ActKind, actOf, countRound, type Plan, roundsOf, type Seen, work } from '../../core/index.ts';
import { STORY_IDS, type StoryId } from '../words/wrong/stories.ts';

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
    plan.edgings.length < 2 ? null : { edgings: plan.edgings.map((round, n) => off(round, only(0, n + 1))) },
  'no-longer-fits': (plan) =>
    plan.edgings.length < 2 || isRound(plan)
      ? null
      : { edgings: plan.edgings.map((round, n) => off(round, only(1 % sidesOf(plan), n === 0 ? 0 : -1))) },
  'one-side-short': (plan) => (sidesOf(plan) < 2 ? null : lastOff(plan, only(1, -1))),
  'long-and-short': (plan) =>
    sidesOf(plan) < 3 ? null : lastOff(plan, (side) => (side === 1 ? 2 : side === 2 ? -2 : 0)),
  'corner-missing': cornerMissing,
  'sides-swapped': sidesSwapped,
  'one-too-many-in-all': (plan) => (isRound(plan) ? lastOff(plan, only(0, 1)) : null),
  'corners-early': (plan) =>
    isRound(plan) ? null : { join: { drift: plan.edge.sides.map(() => -2), leftOver: 0 } },
  'earlier-and-earlier': (plan) =>
    sidesOf(plan) < 2
      ? null
      : { join: { drift: plan.edge.sides.map((_, i) => -(i + 1)), leftOver: -sidesOf(plan) } },
  'left-over': () => ({ join: { leftOver: 2 } }),
};

/** What a hand gets that forgets the second corner of the last edging. */
function cornerMissing(plan: Plan): Seen | null {
  if (sidesOf(plan) < 2 || isRound(plan)) return null;
  return lastMade(plan, 'corner-forgotten', 1);
}

/** Told apart from the recipe only where the order shows in the numbers. */
function sidesSwapped(plan: Plan): Seen | null {
  if (sidesOf(plan) < 3) return null;
  const seen = lastMade(plan, 'order-not-mirrored');
  const made = seen?.edgings?.at(-1)?.sides;
  return made?.every((count, side) => count === plan.edgings.at(-1)?.sides[side]) ? null : seen;
}

function lastMade(plan: Plan, kind: ActKind, corner = 0): Seen | null {
  const last = plan.edgings.length - 1;
  const [first] = roundsOf(kind);
  const round = roundsOf(kind).includes('edging') ? 'edging' : first;
  const made = work(plan, [actOf(kind, { round, edging: last, corner })]).edgings[last];
  if (!made) return null;
  const { sides } = countRound(made);
  return { edgings: plan.edgings.map((planned, n) => (n === last ? { sides } : blank(planned))) };
}
