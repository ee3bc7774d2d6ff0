/** The sentences of the sheets to print. */
import { PARTS } from '../marks.ts';
import type { SheetMessages, TickedSide } from '../pattern/sheet-messages.ts';
import { counted } from '../speaker.ts';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const partOf = ({ part, parts }: TickedSide): string => {
  if (parts === 1) return '';
  if (parts === 2) return `, ${part === 0 ? PARTS.first : PARTS.last}`;
  return `, part ${part + 1} of ${parts}`;
};

export const sheets: SheetMessages = {
  heading: 'Print a sheet',
  intro: 'As it comes out of the printer. Black is enough.',
  which: 'Sheet',
  paper: 'Paper',
  print: 'Print',
  trueSize: 'Print at 100 %, not fitted to the page.',
  untitled: 'Panel',
  scan: 'Scan it to open this panel.',
  linkLong: 'The address of this panel is too long to print. Send it from "Take along".',
  recipe: 'The recipe',
  foundation: 'The foundation',
  join: 'The join',
  ring: 'The foundation, seen on its right side',
  saveSvg: 'Save as SVG',
  savePng: 'Save as PNG',
  pictureFailed: 'This browser could not make the picture. The other kind may do.',
  coming: 'One moment.',
  counted: 'counted',
  clothWaits: 'This sheet needs the panel and the depth of the foundation measured.',
  toCloth: 'Measure them',
  cut: 'Cut the cloth',
  strip: 'The strip with its pins, at true size',
  stitch: 'Stitch',
  begin: 'This is where you begin.',
  form: 'form',

  kinds: {
    pattern: 'The whole pattern',
    recipe: 'Recipe on one page',
    ring: 'Ring diagram',
    ticks: 'To tick off',
    cloth: 'Cloth and pins',
    stitch: 'One stitch',
  },
  papers: { a4: 'A4', letter: 'Letter' },
  hand: { right: 'right hand', left: 'left hand' },
  units: { cm: 'cm', inch: 'inches' },
  date: ({ date }) => new Intl.DateTimeFormat('en-GB', { dateStyle: 'long' }).format(date),
  page: ({ page, pages }, { formatting: { plain } }) => `page ${plain(page)} of ${plain(pages)}`,
  pageOf: ({ of, page, pages }, { formatting: { plain } }) => `${of}, page ${plain(page)} of ${plain(pages)}`,
  link: ({ link }) => `This panel: ${link}`,
  edging: ({ round, rounds }, { formatting: { plain } }) =>
    rounds === 1 ? 'The edging' : `Edging round ${plain(round + 1)}`,
  frontStrip: ({ heading }) => `Strip for the front: ${heading.charAt(0).toLowerCase()}${heading.slice(1)}`,
  goesOn: ({ heading }) => `${heading}, continued`,
  boxes: ({ every }, { formatting: { plain } }) =>
    `A box for each marker: tick it when its stitch is made. Markers after every ${plain(every)}, and where a side ends.`,
  ticked: (ticked, { formatting: { plain } }) => {
    const { of, isFront, side } = ticked;
    if (side === null) return `All round${partOf(ticked)}`;
    return capital(`${of === 'join' || isFront ? 'front side' : 'side'} ${plain(side + 1)}${partOf(ticked)}`);
  },
  tickedCount: ({ of, count }, speaker) =>
    counted(
      speaker,
      count,
      of === 'join' ? { one: 'pair', other: 'pairs' } : { one: 'stitch', other: 'stitches' },
    ),
  corner: ({ corner }, { formatting: { plain } }) => `corner ${plain(corner + 1)}`,
  act: ({ act, pad }) => ({ closing: 'closing', 'pad-in': `${pad} in`, 'last-pair': 'last pair' })[act],
  atEnd: ({ sides, corners, total }, { formatting: { plain } }) => {
    const all = `${plain(total)} in all`;
    if (corners.length === 0) return `At the end: ${all}.`;
    return `At the end: sides ${sides.map(plain).join(', ')}; corners ${corners.map(plain).join(', ')}; ${all}.`;
  },
  pairs: ({ pairs }, speaker) =>
    `At the end: ${counted(speaker, pairs, { one: 'pair', other: 'pairs' })} in all.`,
  tooMany: ({ boxes, most }, { formatting: { grouped } }) =>
    `That would be ${grouped(boxes)} boxes, and ${grouped(most)} are the most. Set the markers further apart, under "Your edge".`,
  move: ({ move }, { formatting: { plain } }) => plain(move),
};
