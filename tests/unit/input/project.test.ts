import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import { readKeptText } from '../../../src/input/kept.ts';
import { projectSchema, readProject } from '../../../src/input/project.ts';
import { readSettings } from '../../../src/input/settings.ts';
import { fieldRows } from '../../../src/state/fields.ts';
import { example, standardSettings } from '../../../src/state/project.ts';
import type { Project } from '../../../src/state/snapshot.ts';
import { nasty, pathsIn, withValue } from '../core/nasty.ts';

const rich: Project = {
  ...example,
  choices: { foundationStart: { counts: 1 }, edgingClosing: { adds: 0 } },
  mishaps: [{ kind: 'stitch-missed', round: 'edging', edging: 0, side: 1, place: 4 }],
};
const kept = {
  version: 1,
  project: rich,
  settings: standardSettings,
  tab: 'walk',
  place: 3,
  answered: ['twist'],
};

/** Hostile values as far as a text can carry them. */
const carried = nasty.flatMap(([name, value]): [string, unknown][] => {
  try {
    const text = JSON.stringify(value);
    return text === undefined ? [] : [[name, JSON.parse(text)]];
  } catch {
    return [];
  }
});

describe('a hostile value', () => {
  test('is carried by text in many forms', () => {
    expect(carried.length).toBeGreaterThan(20);
  });

  test.each(carried)('%s anywhere in what is kept leaves work that is whole', (_name, value) => {
    for (const path of pathsIn(kept)) {
      const start = readKeptText(JSON.stringify(withValue(kept, path, value)));
      // Only another version is no work at all.
      expect(start === null, path.join('.')).toBe(path.length === 0 || path[0] === 'version');
      if (start !== null) expect(v.is(projectSchema, start.project), path.join('.')).toBe(true);
    }
    expect(Object.keys(Object.prototype)).toEqual([]);
  });

  test.each(carried)(
    '%s is no project and no settings, and the usual ones take its place',
    (_name, value) => {
      expect(readProject(value).sideCount).toBe(example.sideCount);
      expect(readSettings(value, standardSettings)).toEqual(standardSettings);
    },
  );
});

describe('what is kept', () => {
  test('comes back whole, with every field there is and a thousand mishaps', () => {
    const project: Project = {
      ...rich,
      texts: Object.fromEntries(fieldRows.map(({ field }, i) => [field, `${i}`])),
      mishaps: Array.from({ length: 1000 }, (_, place) => ({ kind: 'stitch-doubled', side: 0, place })),
    };
    expect(fieldRows.length).toBeGreaterThan(601);
    expect(readProject(JSON.parse(JSON.stringify(project)))).toEqual(project);
  });

  test('holds nothing that is no field and no mishap', () => {
    const project = readProject({
      texts: { 'side.0': '12', 'side.24': '3', 'worked.edging.12.0': '4', '<b>': 'x' },
      mishaps: [{ kind: 'yarn-eaten' }, { kind: 'twisted', round: 'foundation', odd: 1 }, 7],
    });
    expect(project.texts).toEqual({ 'side.0': '12' });
    expect(project.mishaps).toEqual([{ kind: 'twisted', round: 'foundation' }]);
  });
});
