/** What README and DEVELOPERS say of files and commands is true, and the picture of the rooms is that of the code. */
import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { flowsOf, picture, withPicture } from '../setup/rooms.ts';
import { importsOf } from '../setup/sources.ts';

const pages = ['README.md', 'DEVELOPERS.md'];
const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: Record<string, string> };

/** Files of the project that a text names, by links and in code; a part of one is looked for where others stand. */
function namedIn(text: string): string[] {
  const links = [...text.matchAll(/\]\(([^)#]+)/g)]
    .map(([, to = '']) => to)
    .filter((to) => !/^\w+:/.test(to));
  const code = [...text.matchAll(/`((?:src|core|tests|assets|\.ci)\/[^`\s*…]*)`/g)].map(
    ([, path = '']) => path,
  );
  return [...links, ...code];
}

const isScript = (name: string): boolean => name in scripts || ['start', 'test'].includes(name);
const commandsIn = (text: string): string[] =>
  [...text.matchAll(/npm (?:run )?([a-z:]+)/g)]
    .map(([, name = '']) => name)
    .filter((name) => name !== 'install');

describe.each(pages)('%s', (page) => {
  const text = readFileSync(page, 'utf8');

  it('names files that are there', () => {
    const named = namedIn(text);
    expect(named.length).toBeGreaterThan(page === 'README.md' ? 3 : 40);
    expect(named.filter((path) => !existsSync(path))).toEqual([]);
  });

  it('names commands that are there', () => {
    const named = commandsIn(text);
    expect(named.length).toBeGreaterThan(1);
    expect(named.filter((name) => !isScript(name))).toEqual([]);
  });
});

describe('DEVELOPERS.md', () => {
  const text = readFileSync('DEVELOPERS.md', 'utf8');

  it('explains every command', () => {
    const own = Object.keys(scripts).filter((name) => !/^pre|^packages$/.test(name));
    const explained = new Set(commandsIn(text));
    expect(own.filter((name) => !explained.has(name))).toEqual([]);
  });

  it('shows the rooms as the code has them: `npm run rooms` draws them anew', () => {
    expect(withPicture(text, picture())).toBe(text);
  });
});

describe('the picture of the rooms', () => {
  const plant = (path: string, text: string) => importsOf({ path, text });

  it('leaves out what follows, and types', () => {
    const imports = [
      ...plant(
        'src/page/a.ts',
        "import { b } from '../words/b.ts';\nimport { c } from '../../core/index.ts';",
      ),
      ...plant(
        'src/words/b.ts',
        "import { c } from '../../core/index.ts';\nimport type { d } from '../state/d.ts';",
      ),
    ];
    expect(flowsOf(imports)).toEqual([
      ['core', 'words'],
      ['words', 'page'],
    ]);
  });
});
