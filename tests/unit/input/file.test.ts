/**
 * Files of panels: what every released format must go on giving, what is refused and by which name, and that the
 * published schema is the one that reads them. `version-1.gives.json` was written down when the format was released.
 */
import { readdirSync, readFileSync } from 'node:fs';
import * as v from 'valibot';
import { describe, expect, test } from 'vitest';
import type { Shape } from '../../../core/index.ts';
import { longestFile, type Panel, readFile, writeFile } from '../../../src/input/file.ts';
import { panelSchema } from '../../../src/input/file-schema.ts';
import { readProject } from '../../../src/input/project.ts';
import { example, standardSettings } from '../../../src/state/project.ts';
import { openStore } from '../../../src/state/store.ts';
import { isPublished, savedOn } from '../../property/mutants.ts';
import { schemaFile, schemaText } from '../../schema/file-schema.ts';
import { nasty, pathsIn, withValue } from '../core/nasty.ts';

const fixture = (name: string): string =>
  readFileSync(new URL(`../../fixtures/${name}`, import.meta.url), 'utf8');
const released = readdirSync(new URL('../../fixtures/files/', import.meta.url))
  .filter((name) => !name.includes('.gives.'))
  .map((name) => name.replace('.json', ''));

const shapeOf = ({ sides, corners }: Shape) => ({ sides, corners: corners.map(({ size }) => size) });

function madeOf(panel: Panel) {
  const store = openStore({ ...panel, settings: standardSettings, tab: 'edge' });
  const { making, place, answered } = store.snapshot();
  store.stop();
  return {
    name: panel.project.name,
    front: shapeOf(making.plan.edge),
    foundation: shapeOf(making.plan.foundation),
    edgings: making.plan.edgings.map(shapeOf),
    acts: making.acts.length,
    verdict: making.pairing.verdict.kind,
    gaps: making.pairing.gaps.length,
    place,
    answered,
  };
}

const panels = (text: string): Panel[] => {
  const read = readFile(text);
  if (!read.ok) throw new Error(read.why);
  return read.panels;
};
const one: Panel = { project: example, place: 3, answered: ['twist'] };
const file = writeFile([one, { ...one, project: { ...example, name: 'Second' } }], savedOn);
const changed = (change: (value: { [key: string]: unknown }) => void): string => {
  const value = JSON.parse(file);
  change(value);
  return JSON.stringify(value);
};
const why = (text: string): string | null => {
  const read = readFile(text);
  return read.ok ? null : read.why;
};

/** Hostile values as far as a text can carry them. */
const carried = nasty.flatMap(([, value]): unknown[] => {
  try {
    return [JSON.parse(JSON.stringify(value))];
  } catch {
    return [];
  }
});

describe('a released format', () => {
  test('is kept for every version there was', () => {
    expect(released).toEqual(['version-1']);
  });

  test.each(released)('%s gives what it gave, is as it was saved, and is as published', (name) => {
    const text = fixture(`files/${name}.json`);
    expect(readFile(text)).toMatchObject({ ok: true, unread: 0, trust: 'as-saved' });
    expect(panels(text).map(madeOf)).toEqual(JSON.parse(fixture(`files/${name}.gives.json`)));
    expect(isPublished(JSON.parse(text))).toBe(true);
  });

  test('of kept work, as it was handed out when it could not be read, opens as a file too', () => {
    const kept = readdirSync(new URL('../../fixtures/kept/', import.meta.url)).map(
      (name): { kept: { project?: unknown } | string } => JSON.parse(fixture(`kept/${name}`)),
    );
    const opened = kept.flatMap(({ kept: given }) => {
      const read = readFile(typeof given === 'string' ? given : JSON.stringify(given));
      if (read.ok)
        expect(read.panels[0]?.project).toEqual(readProject((given as { project: unknown }).project));
      return read.ok ? [read.trust] : [];
    });
    expect(opened.length).toBeGreaterThan(80);
    expect(new Set(opened)).toEqual(new Set(['unsummed']));
    expect(why(JSON.stringify({ version: 99, more: 'work' }))).toBe('newer');
  });
});

describe('a file', () => {
  test('can be read by a person: a line a value, the name first, fields under their names', () => {
    expect(file.split('\n').slice(0, 8)).toEqual([
      '{',
      '  "format": "Ringtrue panels",',
      '  "version": 1,',
      '  "saved": "2026-03-01",',
      expect.stringMatching(/^ {2}"sum": "[0-9a-z]{7}",$/),
      '  "panels": [',
      '    {',
      '      "name": "Window-seat cushion",',
    ]);
    expect(file).toContain('        "side.0": "64",\n');
    expect(file.endsWith('}\n')).toBe(true);
  });

  test('with other spaces, line ends and a byte order mark is still as it was saved', () => {
    for (const text of [JSON.stringify(JSON.parse(file)), file.replaceAll('\n', '\r\n'), `\ufeff${file}`])
      expect(readFile(text)).toMatchObject({ ok: true, trust: 'as-saved' });
  });

  test.each([
    ['an empty file', '', 'no-json'],
    ['a picture', '\u0089PNG\r\n\u001a\n', 'no-json'],
    ['a cut one', file.slice(0, -20), 'no-json'],
    ["another program's", '{"layers":[]}', 'strange'],
    ['another format', changed((value) => Object.assign(value, { format: 'Other' })), 'strange'],
    ['a list', '[1]', 'strange'],
    ['a newer one', changed((value) => Object.assign(value, { version: 2 })), 'newer'],
    ['one with nothing in it', changed((value) => Object.assign(value, { panels: [] })), 'damaged'],
    ['one with more than it names', changed((value) => Object.assign(value, { more: 1 })), 'damaged'],
    ['one whose panels are none', changed((value) => Object.assign(value, { panels: [{}, 3] })), 'damaged'],
    ['a huge one', ' '.repeat(longestFile + 1), 'huge'],
    ['a deep one', '['.repeat(100_000), 'no-json'],
  ])('%s is refused by name', (_name, text, name) => {
    expect(why(text)).toBe(name);
  });

  test('that was changed by hand opens, and says so', () => {
    const text = file.replace('"side.0": "64"', '"side.0": "70"');
    expect(readFile(text)).toMatchObject({ ok: true, trust: 'changed', unread: 0 });
    expect(panels(text)[0]?.project.texts['side.0']).toBe('70');
  });

  test('with one damaged panel gives the others, and says how many it left out', () => {
    const text = changed((value) =>
      Object.assign((value.panels as object[])[0] as object, { sideCount: 'four' }),
    );
    expect(readFile(text)).toMatchObject({ ok: true, trust: 'changed', unread: 1 });
    expect(panels(text).map(({ project }) => project.name)).toEqual(['Second']);
  });

  test('keeps the place of a walk that told fewer steps', () => {
    expect(panels(writeFile([{ ...one, fewerSteps: true }], savedOn))[0]?.fewerSteps).toBe(true);
    expect(panels(file)[0]).not.toHaveProperty('fewerSteps');
  });

  test('of the longest kind is read whole', () => {
    const many = Array.from({ length: 1000 }, () => one);
    expect(panels(writeFile(many, savedOn))).toHaveLength(1000);
  });
});

describe('the published schema', () => {
  test('is up to date; otherwise: npm run schema', () => {
    expect(readFileSync(schemaFile, 'utf8')).toBe(schemaText());
  });

  test('rejects whatever the reader rejects for its type, place by place', () => {
    const value = JSON.parse(file);
    const [first] = value.panels;
    let refused = 0;
    for (const path of pathsIn(first))
      for (const odd of carried) {
        const panel = withValue(first, path, odd);
        if (v.is(panelSchema, panel)) continue;
        refused += 1;
        expect(
          isPublished({ ...value, panels: [panel] }),
          `${path.join('.')}: ${JSON.stringify(odd)?.slice(0, 40)}`,
        ).toBe(false);
      }
    expect(refused).toBeGreaterThan(300);
  });

  test.each(Object.keys(JSON.parse(file)))('wants %s', (key) => {
    expect(isPublished(JSON.parse(file))).toBe(true);
    expect(isPublished(JSON.parse(changed((value) => delete value[key])))).toBe(false);
  });
});
