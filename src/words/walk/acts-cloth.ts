/**
 * The sentences for pinning and sewing the strip to the cloth. Ends first, then the middle, then halves
 * (read, five sources); running stitch over one stitch at a time, out and back (common practice).
 */
import type { StepKind } from '../../../core/index.ts';
import { many } from '../numbers.ts';
import type { Sentences, Telling } from './telling.ts';

type ClothKind = Extract<
  StepKind,
  | 'lay-strip'
  | 'cloth-centres'
  | 'cloth-corners'
  | 'cloth-pins'
  | 'sew-out'
  | 'sew-back'
  | 'sew-fast'
  | 'pins-out'
  | 'turn-strip'
>;

const corners = ({ plan }: Telling['making']): number => plan.edge.corners.length;

export const CLOTH: Record<ClothKind, (telling: Telling) => Sentences> = {
  'lay-strip': () => ({
    act: "Lay the strip face down on the cloth's right side.",
    check:
      'Cut the cloth first: the place Cloth says how large. Base chains on the raw edge, edging towards the middle.',
  }),
  'cloth-centres': ({ making }) => ({
    act: corners(making) > 0 ? 'Pin the middle of each side first.' : 'Pin the 4 quarters first.',
    check: "The strip's middles lie on the cloth's middles.",
  }),
  'cloth-corners': ({ making }) => ({
    act:
      corners(making) > 0
        ? `Pin the ${many(corners(making), 'corner')}.`
        : 'Pin halfway between the 4 quarters.',
    check: 'Base chains still lie on the raw edge.',
  }),
  'cloth-pins': () => ({
    act: 'Pin halfway between those pins, all the way round.',
    check: 'Pat any looseness flat. Where it still stands up, halve again.',
    caution: 'Count the pins and write the number down.', // usual for the trade
  }),
  'sew-out': () => ({
    act: 'Running stitch all round: over 1 stitch, under the next.',
    check: 'Strong thread, made fast. Through strip and cloth, just below the edging.',
    caution: 'Keep needles and blades away from small children.',
  }),
  'sew-back': () => ({
    act: 'Sew back the other way and fill the gaps.',
    check: 'No gap is left on either side.',
  }),
  'sew-fast': ({ t }) => ({
    act: `Weave the thread's end through the ${t('treble', 'many')}, and make it fast.`,
    check: 'Tug at it: it holds. This seam takes the strain.',
  }),
  'pins-out': () => ({
    act: 'Take all pins out and count them.',
    check: 'It is the number you wrote down.',
    caution: 'Find every pin before you go on.',
  }),
  'turn-strip': () => ({
    act: 'Turn the strip outwards.',
    check: 'The edging runs round the outside, right side up.',
  }),
};
