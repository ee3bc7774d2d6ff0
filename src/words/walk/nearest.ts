/** What is counted as 1 from a corner. */
import type { Corner } from '../../../core/index.ts';

/** The place of a corner that is counted first from it. */
export function sayNearest(corner: Corner | undefined): string {
  if (corner === undefined || corner.size === 0) return 'the first stitch';
  return corner.made === 'stitch' ? 'the corner stitch' : 'its nearest chain';
}
