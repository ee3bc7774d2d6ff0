/** What is said while a side is counted on a photo. Stitches and Vs are called so in UK and US terms alike. */
import { many } from './numbers.ts';

export const photoWords = {
  hint: 'Lay a line on the edge, mark every V, and the number is put in.',
  take: 'Take a photo',
  pick: 'Choose a photo',
  drop: 'Or paste one, or drop it here.',
  stays: 'The photo stays on this device. No link and no file ever holds it.',
  advice: 'Best from straight above, in even light, one side filling the picture.',
  reading: 'Reading the photo …',
  photo: 'The photo with the line on it',
  strip: 'The edge straightened, with the marks',
  photoKeys:
    'Arrows move the cross or the point in hand, with Shift in larger steps. Enter puts a point. Page up and Page down take the next point in hand. Delete takes a bend away.',
  stripKeys:
    'Arrows left and right move the place, with Shift from mark to mark. Enter marks the V there, or moves its mark. Delete takes the mark away.',
  keys: 'Keys to press',
  keysPhoto: 'On the photo',
  keysStrip: 'On the strip',
  firstEnd: 'Tap the first V of the side. Hold, and a magnifier shows where.',
  lastEnd: 'Now tap the last V of the side, before the corner.',
  bend: 'Where the line leaves the edge, draw it onto the edge. Then mark the first 3 Vs on the strip.',
  remove: 'Take this point away',
  undo: 'Undo',
  redo: 'Redo',
  close: 'Close',
  closer: 'Closer',
  farther: 'Farther',
  left: 'To the left',
  right: 'To the right',
  tapStrip: 'Tap a V to mark it, or to move its mark. Tap below it to take the mark away.',
  propose: 'Propose the rest',
  proposing: 'Comparing with your marks',
  stop: 'Stop',
  stopped: 'Stopped. Your own marks stay.',
  onlyEvenly: 'Nothing here looks enough like your marks. These only go on at their distance: look at each.',
  nothingLeft: 'Nothing is left to propose: your marks reach the end of the line.',
  savesNothing:
    'Putting these right took as many taps as marking them. Mark the rest by hand: the marks stay where you put them.',
  dropProposed: 'Take the proposals away',
  forget: 'Forget this photo',
  forgotten: 'The photo and its marks are gone from this device.',
  notForgotten: 'This browser would not take the photo away. Clear its data for this page.',
  notKept: 'This device keeps no photo: it is gone when you close this.',
  other: 'Another photo',
  chains: 'Marks are stitches only: leave out the chains of the corners.',
} as const;

export const sayHeading = (field: string): string => `Count on a photo: ${field}`;
export const sayKeptFor = (panel: string): string => `This photo was taken for the panel “${panel}”.`;
export const sayTooLarge = (most: number): string =>
  `This file is larger than ${most} megabytes. Send the photo in a smaller size, then choose it again.`;

const fileProblems = {
  'no-picture': 'This file is no picture. Choose a photo, as JPEG or PNG.',
  empty: 'This file is empty. Choose the photo again.',
  broken:
    'This picture cannot be read here: it is damaged, or of a kind this browser does not know. Save it as JPEG and choose it again.',
} as const;

export const sayFileProblem = (problem: keyof typeof fileProblems): string => fileProblems[problem];

/** "12 marked, 45 proposed". */
export const sayCounts = (set: number, proposed: number): string =>
  proposed > 0 ? `${set} marked, ${proposed} proposed` : `${set} marked`;

export const sayMore = (set: number): string =>
  `Mark ${many(3 - set, 'V')} more, one beside the other, and the rest can be proposed.`;

export const sayLookOver = (left: number): string =>
  `Look at the marks in the frame, and put right what is not.${left > 0 ? ` ${left} more come after these.` : ''}`;

export const sayTheseAreRight = (count: number): string =>
  count === 1 ? 'This one is right' : `These ${count} are right`;

/** "Put in 57 for side 1". */
export const sayPutIn = (count: number, field: string): string => `Put in ${count} for ${field}`;

/** Why the number is another than the marks. */
export const sayWithCorners = (stitches: number, corners: number): string =>
  `${many(stitches, 'stitch', 'stitches')} marked and ${corners} of the corners: your other sides are counted so.`;

export const sayProgress = (done: number): string => `${photoWords.proposing}: ${Math.round(done * 100)} %`;

/** What is known of a gap: which side, and not where on it. */
export const sayGap = (surplus: number): string =>
  surplus < 0
    ? `The back is ${many(-surplus, 'stitch', 'stitches')} short along this side: somewhere along here. The counts do not tell where.`
    : `The back has ${many(surplus, 'stitch', 'stitches')} more along this side: somewhere along here. The counts do not tell where.`;

/** The field was typed over since. */
export const sayOtherNumber = (counted: string, now: string): string =>
  `${counted} came from this photo. Now the field says ${now === '' ? 'nothing' : now}.`;

/** For those who do not see the strip. */
export function sayPlace(mark: { number: number; isProposed: boolean } | null, percent: number): string {
  if (!mark) return `No mark here, ${percent} % along.`;
  return `Mark ${mark.number}${mark.isProposed ? ', proposed' : ''}, ${percent} % along.`;
}

export const sayPoint = (index: number, count: number): string =>
  index === 0
    ? 'The first end in hand.'
    : index === count - 1
      ? 'The last end in hand.'
      : `Bend ${index} in hand.`;
