/**
 * The sentences for pinning and sewing the strip to the cloth. Ends first, then the middle, then halves
 * (read, five sources); running stitch over one stitch at a time, out and back (common practice).
 */
import type { StepKind } from '../../../core/index.ts';
import type { Sentences, Telling } from './telling.ts';

type ClothKind = Extract<
  StepKind,
  'cloth-centres' | 'cloth-corners' | 'cloth-pins' | 'sew-out' | 'sew-back' | 'turn-strip'
>;

const PINS = 'Count the pins in and write the number down.'; // usual for the trade

export const CLOTH: Record<ClothKind, (telling: Telling) => Sentences> = {
  'cloth-centres': ({ making }) => ({
    act:
      making.plan.edge.corners.length > 0
        ? 'Pin the middle of each side first.'
        : 'Pin the 4 quarters first.',
    check: 'The strip lies face down on the right side of the cloth.',
    caution: PINS,
  }),
  'cloth-corners': ({ making }) => ({
    act: making.plan.edge.corners.length > 0 ? 'Pin the corners.' : 'Pin halfway between the quarters.',
    check: 'The outer edge of the strip lies on the edge of the cloth.',
    caution: PINS,
  }),
  'cloth-pins': ({ making }) => ({
    act:
      making.plan.edge.corners.length > 0
        ? 'Pin from each corner towards the middle.'
        : 'Pin between those, all the way round.',
    check: 'Pat any looseness flat, evenly between the pins.',
    caution: PINS,
  }),
  'sew-out': () => ({
    act: 'Running stitch all round: over 1 stitch, under the next.',
    check: 'The line runs just below the edging.',
    caution: 'Keep needles and blades away from small children.',
  }),
  'sew-back': () => ({
    act: 'Sew back the other way and fill the gaps.',
    check: 'No gap is left on either side.',
    caution: 'Keep needles and blades away from small children.',
  }),
  'turn-strip': () => ({
    act: 'Turn the strip outwards and take the pins out.',
    check: 'Count the pins out. It is the number you wrote down.',
    caution: 'Find every pin before you go on.',
  }),
};
