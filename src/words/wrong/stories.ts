/** What beginners say when a count is off. Each is a way into the counts; the causes are found from those. */

export const STORY_IDS = [
  'every-side-two-more',
  'every-side-one-short',
  'one-too-many-after-closing',
  'one-more-each-round',
  'no-longer-fits',
  'one-side-short',
  'long-and-short',
  'corner-missing',
  'sides-swapped',
  'one-too-many-in-all',
  'corners-early',
  'earlier-and-earlier',
  'left-over',
] as const;

export type StoryId = (typeof STORY_IDS)[number];

// Those marked "reported" stand in public reports of wrong counts; the others are our own, for what can happen as well.
const SAYS: Record<StoryId, string> = {
  'every-side-two-more': 'Every side is 2 more than it should be.',
  // Reported: each side one short, the stitch hidden after the corner.
  'every-side-one-short': 'Each side is 1 short.',
  // Reported: one total too many after closing, the starting chain counted and the first stitch worked.
  'one-too-many-after-closing': '1 too many after closing. The other sides are right.',
  // Reported: one more in every row, the gap at its start filled.
  'one-more-each-round': '1 more with every round.',
  // Reported: the round stops fitting some rounds on; an earlier one was wrong already.
  'no-longer-fits': 'The rounds fitted at first. Now they do not.',
  'one-side-short': '1 side is 1 short.',
  // Reported: sides unequal, a corner misplaced.
  'long-and-short': '1 side is 2 too long, and the next 2 short.',
  'corner-missing': 'There is a corner too few.',
  'sides-swapped': 'The sides are the wrong way round.',
  // Reported: 313 for 312, the cause never found.
  'one-too-many-in-all': '1 too many in all, and no idea where.',
  'corners-early': 'Every corner comes 2 early in the join.',
  'earlier-and-earlier': 'Each corner comes 1 earlier than the one before.',
  'left-over': '2 are left over at the end of the join.',
};

export const sayStory = (id: StoryId): string => SAYS[id];

/** What a story leaves open: the person's own numbers are asked for. */
export const sayAskedFor = (id: StoryId): string =>
  id === 'no-longer-fits'
    ? `${sayStory(id)} Type what each round has, from the first on.`
    : `${sayStory(id)} Type what you counted on each side.`;

/** What no count shows and a maker can see; common practice, no source. */
export const SIGHT_IDS = ['no-loops-free', 'loops-behind', 'ring-turned', 'hole-left'] as const;
export type SightId = (typeof SIGHT_IDS)[number];

export const askSight = 'Or do you see one of these?';

/** @param edging from 0 @param edgings how many there are */
export function saySight(id: SightId, edging: number, edgings: number): string {
  const round = edgings > 1 ? `edging round ${edging + 1}` : 'the edging';
  switch (id) {
    case 'no-loops-free':
      return `No line of loops is free on ${round}.`;
    case 'loops-behind':
      return `The free loops of ${round} lie on the wrong side.`;
    case 'ring-turned':
      return 'The foundation turns over once.';
    case 'hole-left':
      return 'A hole is left where the join began.';
  }
}
