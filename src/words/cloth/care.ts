/** What is done before and after; short, once, in place. Usual for the trade. */
import type { Becomes } from '../../state/cloth-types.ts';
import type { Dialect } from '../../state/snapshot.ts';
import { term } from '../terms.ts';

export const BEFORE = {
  heading: 'Before you measure',
  lines: [
    'Wash and press the cloth as you will wash the finished piece. It may shrink.',
    'Pin the panel out flat, damp it, and let it dry.',
    'After cutting, zigzag or oversew the raw edge if it frays.',
  ],
} as const;

export const AFTER_HEADING = 'Afterwards';

export function sayAfter(becomes: Becomes, inside: string, hasSides: boolean, dialect: Dialect): string[] {
  const last = hasSides ? 'the side you joined last' : 'the quarter you joined last';
  return [
    becomes === 'bag'
      ? 'Finish the open side off: its edges hold by themselves, and slip stitches along them keep them from stretching.'
      : `To wash it, undo the slip stitches of ${last}, take the ${inside} out, and join it anew afterwards.`,
    'Count pins and needles. Keep needles and blades away from small children.',
    ...(becomes === 'cushion'
      ? [
          `No ${term('cushion', dialect)} belongs in a baby's sleeping place.`,
          'To sell it: rules for filling and labels differ by country. Ask your trading-standards office.',
        ]
      : []),
  ];
}
