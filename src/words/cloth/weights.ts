/** The yarn weight that a measured stitch speaks for, with hooks; the trade's table, with its source. */
import { hookNames, weightsFor, type YarnWeight } from '../../../core/index.ts';
import type { Dialect } from '../../state/snapshot.ts';
import { term } from '../terms.ts';

const NAMES: Record<string, string> = {
  lace: 'lace',
  'super-fine': 'super fine',
  fine: 'fine',
  light: 'light',
  medium: 'medium',
  bulky: 'bulky',
  'super-bulky': 'super bulky',
  jumbo: 'jumbo',
};

function sayHook([least, most]: YarnWeight['hook'], dialect: Dialect): string {
  const size = (mm: number): string => {
    const letter = dialect === 'us' ? hookNames.get(mm) : undefined;
    return letter ? `${mm} mm (US ${letter})` : `${mm} mm`;
  };
  return most === null ? `${size(least)} and up` : `${size(least)} to ${size(most)}`;
}

/** Null where nothing was measured, or no weight has such stitches. */
export function pitchWeights(pitch: number | undefined, dialect: Dialect): string | null {
  const found = pitch === undefined ? [] : weightsFor(pitch);
  if (found.length === 0) return null;
  const says = found
    .map((one) => `${one.number} (${NAMES[one.name]}), hook ${sayHook(one.hook, dialect)}`)
    .join('; or ');
  return `Your stitches are as in weight ${says}. By the Craft Yarn Council's table for ${term('double-crochet', dialect)}, a guideline only.`;
}
