import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { breachesOf } from '../setup/import-table.ts';
import { cyclesIn, importsOf, readSources, withoutComments } from '../setup/sources.ts';

const imports = readSources(['src', 'core']).flatMap(importsOf);

/** A file as if it stood at `path` with this code. */
const planted = (path: string, text: string) => importsOf({ path, text });

describe('the import table', () => {
  it('reads the imports that are there', () => {
    expect(imports).toContainEqual({
      from: 'src/state/snapshot.ts',
      target: 'core/index.ts',
      typesOnly: true,
    });
  });

  it('holds', () => {
    expect(breachesOf(imports)).toEqual([]);
  });

  it('has no cycles under it', () => {
    expect(cyclesIn(imports)).toEqual([]);
  });

  it.each([
    ['core/plan.ts', "import { html } from 'lit-html';"],
    ['core/plan.ts', "import type { Field } from '../src/state/snapshot.ts';"],
    ['core/plan.ts', "import { readFileSync } from 'node:fs';"],
    ['src/walk/walk.ts', "import { plan } from '../../core/planning/plan.ts';"],
    ['src/main.ts', "import { planBack } from '../core/planning/plan.ts';"],
    ['src/main.ts', "import { serve } from '../tests/setup/serve.mjs';"],
    ['src/table/table.ts', "import { planBack } from '../../core/index.ts';"],
    ['src/table/table.ts', "import { bar } from '../page/bar.ts';"],
    ['src/table/table.ts', "const late = await import('../lessons/first.ts');"],
    ['src/edge/edge.ts', "import { Glyph } from '../table/draw-list.ts';"],
    ['src/edge/edge.ts', "export * from '../lessons/first.ts';"],
    ['src/lessons/first.ts', "import '../page/edge.ts';"],
    ['src/drawing/scene.ts', "import { draw } from '../table/draw.ts';"],
    ['src/drawing/scene.ts', "import {\n  one,\n  two,\n} from '../page/edge.ts';"],
    ['src/words/walk/step.ts', "import { scene } from '../../drawing/scene.ts';"],
    ['src/state/app.ts', "import { say } from '../words/words.ts';"],
  ])('is broken by %s with %s', (path, text) => {
    expect(breachesOf(planted(path, text))).toHaveLength(1);
  });

  it.each([
    ['core/planning/plan.ts', "import type { Plan } from '../types.ts';"],
    ['src/table/table.ts', "import { Container } from 'pixi.js';"],
    ['src/drawing/scene.ts', "import { Glyph } from '../table/draw-list.ts';\nimport { a } from './a.ts';"],
    [
      'src/edge/edge.ts',
      "// import { Glyph } from '../table/draw-list.ts';\nimport { html } from 'lit-html';",
    ],
  ])('is kept by %s with %s', (path, text) => {
    expect(breachesOf(planted(path, text))).toEqual([]);
  });

  it('finds a cycle, also one of types only', () => {
    const ring = [
      ...planted('src/a.ts', "import { b } from './b.ts';"),
      ...planted('src/b.ts', "import type { C } from './c.ts';"),
      ...planted('src/c.ts', "export { a } from './a.ts';"),
    ];
    expect(cyclesIn(ring)).toEqual(['src/a.ts → src/b.ts → src/c.ts → src/a.ts']);
  });
});

describe('core', () => {
  it('is compiled without DOM and Node types', () => {
    const settings = JSON.parse(readFileSync('core/tsconfig.json', 'utf8'));
    expect(settings.compilerOptions).toMatchObject({ lib: ['ES2023'], types: [] });
  });

  it('has no clock and no randomness', () => {
    const restless = /\bDate\b|\bMath\.random\b|\bperformance\b|\bsetTimeout\b|\bcrypto\b/;
    const found = readSources(['core']).filter(({ text }) => restless.test(withoutComments(text)));
    expect(found.map(({ path }) => path)).toEqual([]);
  });
});
