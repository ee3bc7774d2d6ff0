import { describe, expect, it } from 'vitest';
import { nasty, pathsIn, withValue } from '../../unit/core/nasty.ts';
import { numbersOf, publicFunctions, tries, usual } from '../../unit/core/public-face.ts';

describe.each(publicFunctions)('%s', (name, run) => {
  const args = usual[name] ?? [];

  it('throws nothing and answers no number that is none, whatever one value is', () => {
    const wrong: string[] = [];
    // What a plan may hold is tried with `work` and `steps`; explaining a changed number takes many makings.
    const paths = pathsIn(args).filter(
      ([argument]) => argument !== undefined && !(tries.has(name) && argument === 0),
    );
    const values = tries.has(name) ? nasty.filter(([, value]) => !Number.isInteger(value)) : nasty;
    for (const path of paths) {
      for (const [what, value] of values) {
        try {
          const changed = withValue(args, path, value) as unknown[];
          wrong.push(...numbersOf(run, changed).map((found) => `${path.join('.')} = ${what}: ${found}`));
        } catch (error) {
          wrong.push(`${path.join('.')} = ${what} threw ${error}`);
        }
      }
    }
    expect(wrong).toEqual([]);
  });
});
