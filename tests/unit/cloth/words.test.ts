/** The templates of the place hold no words of their own: what is said stands in `src/words/`. */
import { readdirSync, readFileSync } from 'node:fs';
import { parseSync } from 'vite';
import { describe, expect, it } from 'vitest';
import { sayPadRule } from '../../../src/words/cloth/stock.ts';
import { sayForm } from '../../../src/words/cloth/what.ts';

const folder = 'src/cloth';
const files = readdirSync(folder).filter((name) => name.endsWith('.ts'));

/** What a template says beside its tags: text between them, and labels read aloud. */
function saidIn(chunks: readonly string[]): string[] {
  const markup = chunks.join('\u0000');
  const labels = [...markup.matchAll(/\b(?:aria-label|title|placeholder|alt)="([^"]*)"/g)].map(
    ([, says]) => says ?? '',
  );
  const text = markup.replace(/<[^>]*>/g, '\n').replace(/&[a-z]+;/g, ' ');
  return [...labels, ...text.split('\n')].filter((says) => /[A-Za-z]{2}/.test(says.replaceAll('\u0000', '')));
}

type Node = { type: string; [key: string]: unknown };
const isNode = (value: unknown): value is Node => typeof (value as Node | null)?.type === 'string';
type Quasis = { quasis: { value: { cooked: string } }[] };

function wordsOf(name: string): string[] {
  const found: string[] = [];
  const visit = (node: Node): void => {
    if (node.type.startsWith('Import')) return;
    if (node.type === 'TaggedTemplateExpression')
      found.push(...saidIn((node.quasi as Quasis).quasis.map(({ value }) => value.cooked)));
    // Words with a gap between them are a sentence, wherever they stand.
    else if (node.type === 'Literal' && /[A-Za-z]{2,},? [a-z]/.test(String(node.value))) {
      if (!classes.has(String(node.value))) found.push(String(node.value));
    }
    for (const value of Object.values(node).flat()) if (isNode(value)) visit(value);
  };
  visit(parseSync(name, readFileSync(`${folder}/${name}`, 'utf8')).program as unknown as Node);
  return found;
}

/** Strings that name styles. */
const classes = new Set(['lie warned']);

describe('the templates of the place', () => {
  it('are found, and words in them would be', () => {
    expect(files.length).toBeGreaterThan(10);
    expect(saidIn(['<p class="muted">Cut ', '</p><svg aria-label="The cloth">'])).toEqual([
      'The cloth',
      'Cut \u0000',
    ]);
  });
  it.each(files)('%s says nothing itself', (name) => expect(wordsOf(name)).toEqual([]));
});

describe('a form', () => {
  it('goes in before the last side, or the last quarter of what has no sides', () => {
    expect(sayForm('cushion pad', true)).toMatch(/before the last side is joined/);
    expect(sayForm('cushion pad', false)).toMatch(/before the last quarter is joined/);
  });
});

describe('the rules for a pad', () => {
  it('speak the unit that is chosen', () => {
    const all = (['usual', 'full', 'same'] as const).map((rule) => [
      sayPadRule(rule, 'cm'),
      sayPadRule(rule, 'inch'),
    ]);
    expect(all.map(([cm, inch]) => [/\bin\b(?! print)/.test(cm ?? ''), /cm/.test(inch ?? '')])).toEqual(
      Array(3).fill([false, false]),
    );
    expect(all[0]?.[1]).toContain('1\u00a0in larger');
    expect(all[1]?.[1]).toContain('1 1/8 to 2\u00a0in');
  });
});
