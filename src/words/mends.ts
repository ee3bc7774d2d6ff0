/** What would mend it while planning, each as the choice it is. */
import type { Mend } from '../state/mends.ts';
import { many } from './numbers.ts';

export function sayMend(mend: Mend): string {
  switch (mend.kind) {
    case 'arm':
      return mend.arm === 0
        ? 'Only the corner in each corner, no stitches beside it'
        : `${many(mend.arm, 'stitch', 'stitches')} on each side of every corner`;
    case 'rounds':
      return `${many(mend.rounds, 'edging round')} only`;
    case 'lead':
      return 'Start in the middle of the side';
    case 'start':
      return `Start against front side ${mend.side + 1}`;
    case 'join-start':
      return 'Begin the join where it belongs';
    case 'turn':
      return `Turn the back by ${many(mend.by, 'side')}`;
    case 'mirror':
      return 'Work the sides of the back the other way round';
  }
}

export const sayMendsHead = (count: number, isStale: boolean): string => {
  const one = count === 1 ? 'With this' : 'With one of these';
  return isStale ? `${one} the back can be worked:` : `${one} it meets:`;
};

export const sayStale = 'The drawing shows the last numbers of which a back could be worked.';
