/** Random panels of every kind, readable and not: what links and files must carry unchanged. */
import fc from 'fast-check';
import { asked } from '../../core/index.ts';
import type { Panel } from '../../src/input/file.ts';
import type { Shared } from '../../src/input/link.ts';
import { readProject } from '../../src/input/project.ts';
import { clothFieldNames } from '../../src/state/cloth-fields.ts';
import { fieldRows } from '../../src/state/fields.ts';
import { patternFields } from '../../src/state/pattern-fields.ts';
import { type Project, tabs } from '../../src/state/snapshot.ts';
import { anyMishap, planOf } from './explain-panels.ts';

const fields = [...fieldRows.map(({ field }) => field), ...clothFieldNames, ...Object.values(patternFields)];
const mishap = anyMishap(planOf([40, 30, 40, 30], { made: 'chain', size: 2 }));

export const anyProject: fc.Arbitrary<Project> = fc
  .record(
    {
      name: fc.string({ unit: 'grapheme', maxLength: 40 }),
      sideCount: fc.integer({ min: 0, max: 24 }),
      counted: fc.constantFrom('stitches-only', 'one-corner', 'both-corners'),
      cornerMade: fc.constantFrom('chain', 'stitch'),
      cornersDiffer: fc.boolean(),
      edgingCount: fc.integer({ min: 1, max: 12 }),
      choices: fc.constantFrom({}, { foundationStart: { counts: 1 } }, { edgingClosing: { adds: 0 } }),
      texts: fc.dictionary(
        fc.constantFrom(...fields),
        fc.oneof(
          fc.integer({ min: -9, max: 999 }).map(String),
          fc.string({ unit: 'grapheme', maxLength: 12 }),
        ),
        { maxKeys: 30 },
      ),
      mishaps: fc.array(mishap, { maxLength: 3 }),
      adjustments: fc.array(mishap.map(asked), { maxLength: 2 }),
      stands: fc.constantFrom(
        { at: 'foundation' },
        { at: 'finished' },
        { at: 'edging', edging: 2 },
        { at: 'join', side: 1 },
      ),
    },
    {
      requiredKeys: [
        'name',
        'sideCount',
        'counted',
        'cornerMade',
        'cornersDiffer',
        'edgingCount',
        'choices',
        'texts',
        'mishaps',
        'adjustments',
      ],
    },
  )
  .map(readProject);

const walk = {
  place: fc.nat(5000),
  answered: fc.constantFrom<readonly ('twist' | 'pad')[]>([], ['twist'], ['twist', 'pad']),
};

export const anyPanel: fc.Arbitrary<Panel> = fc.record({ project: anyProject, ...walk });

export const anyShared: fc.Arbitrary<Shared> = fc.record({
  project: anyProject,
  dialect: fc.constantFrom('uk' as const, 'us' as const),
  hand: fc.constantFrom('right' as const, 'left' as const),
  units: fc.constantFrom('cm' as const, 'inch' as const),
  tab: fc.constantFrom(...tabs),
  ...walk,
});
