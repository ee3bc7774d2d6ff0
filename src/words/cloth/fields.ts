/** What each field of the cloth is called. One name a field, everywhere. */
import type { Field } from '../../state/snapshot.ts';
import { ordinal } from '../numbers.ts';

const NAMES: Record<string, string> = {
  'cloth.open-side': 'front side that stays open',
  'cloth.depth': 'depth of the foundation',
  'cloth.front-edge': "depth of the front's last round",
  'cloth.edging': 'depth of the edging',
  'cloth.allowance': 'from the panel to the cut edge',
  'cloth.spacing': 'from pin to pin',
  'cloth.thickness': 'thickness of cloth and strip',
  'cloth.working': 'length you sew with',
  'cloth.tail': 'left at each end',
  'cloth.left': 'yarn left',
  'cloth.weighed.before': 'before side 1',
  'cloth.weighed.after': 'after side 1',
  'cloth.pieces': 'how many backs',
  'cloth.cloth-width': 'width of the cloth',
  'cloth.repeat': 'pattern comes again after',
  'cloth.wanted-width': 'size wanted',
  'cloth.wanted-height': 'height, if another',
  'cloth.multiple': 'a multiple of',
  'cloth.plus': 'and this many more',
  'cloth.price.foundation-ball': '1 ball of foundation yarn',
  'cloth.price.edging-ball': '1 ball of edging yarn',
  'cloth.price.thread': 'thread',
  'cloth.price.hour': '1 hour of your time',
};

const STRETCHES: Record<string, string> = {
  front: "the front's last round",
  top: "the strip's tops",
  base: "the strip's base",
};

/** "width, 1st time"; sides from 1. */
export function clothFieldName(field: Field, pad: string): string {
  const [, kind = '', which = ''] = field.split('.');
  const nth = ordinal(Number(which) + 1);
  switch (kind) {
    case 'width':
    case 'height':
      return `${kind}, ${nth} time`;
    case 'diameter':
      return `across, ${nth} time`;
    case 'side':
      return `side ${Number(which) + 1}`;
    case 'diagonal':
      return `${nth} diagonal`;
    case 'stretch-stitches':
      return `stitches, ${STRETCHES[which]}`;
    case 'stretch-length':
      return 'measure';
    case 'yarn-stitches':
      return 'stitches';
    case 'yarn-length':
      return 'unravelled';
    case 'yarn-grams':
      return 'or weighed';
    case 'ball-grams':
      return 'ball weighs';
    case 'ball-length':
      return 'ball holds';
    default:
      if (field === 'cloth.price.cloth') return 'cloth';
      if (field === 'cloth.price.pad') return pad;
      return NAMES[field] ?? field;
  }
}

/** A name with a capital, at the start of a sentence. */
export const opening = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1);
