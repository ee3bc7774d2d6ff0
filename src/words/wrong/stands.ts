/** How far the piece is, in the order of the making. */
import type { Plan, Stand } from '../../../core/index.ts';

export const askStands = 'How far is your piece?';
export const sayAsCounted = 'As far as I counted';

export function sayStand(stand: Stand, { edgings }: Plan): string {
  switch (stand.at) {
    case 'foundation':
      return 'Foundation made';
    case 'edging':
      return edgings.length > 1 ? `Edging round ${stand.edging + 1} made` : 'Edging made';
    case 'sewn':
      return 'Strip sewn on';
    case 'join':
      return `Joined to the end of front side ${stand.side + 1}`;
    case 'finished':
      return 'Finished';
  }
}
