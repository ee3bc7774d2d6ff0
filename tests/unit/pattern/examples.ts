/** The patterns in `assets/examples`. `RINGTRUE_WRITE=1 npx vitest run tests/unit/pattern` writes them anew. */
import { mkdirSync, writeFileSync } from 'node:fs';
import type { Written } from '../../../src/words/pattern/document.ts';
import { toMarkdown } from '../../../src/words/pattern/formats.ts';
import { writeOut, writeSizes } from '../../../src/words/pattern/write-out.ts';
import { planOf } from '../core/making.ts';

export const examples: Record<string, Written> = {
  'cushion-back.md': writeOut(planOf([62, 38, 62, 38]), {
    terms: 'uk',
    hand: 'right',
    units: 'cm',
    title: 'Hazel Row cushion back',
    designer: 'Wren Tallow',
    notes: 'Count the last round of your panel twice before you begin. One stitch more or fewer shows.',
  }),
  'six-sided-stool-in-three-sizes.md': writeSizes(
    {
      names: ['small', 'medium', 'large'],
      plans: [
        planOf([30, 30, 30, 30, 30, 30]),
        planOf([38, 38, 38, 38, 38, 38]),
        planOf([46, 46, 46, 46, 46, 46]),
      ],
    },
    { terms: 'us', hand: 'right', units: 'inch', title: 'Six-sided stool top', designer: 'Wren Tallow' },
  ),
};

if (process.env.RINGTRUE_WRITE) {
  mkdirSync('assets/examples', { recursive: true });
  for (const [file, written] of Object.entries(examples))
    writeFileSync(`assets/examples/${file}`, toMarkdown(written));
}
