import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

type Row = { check: string; held: string };

/** The rows of the tables: the check's letter and number, and what its last cell says. */
function readRows(text: string): Row[] {
  return text
    .split('\n')
    .filter((line) => /^\| [A-I]\d+ \|/.test(line))
    .map((line) => line.split('|').map((cell) => cell.trim()))
    .map(([, check = '', , held = '']) => ({ check, held }));
}

/** Tests that a row names and that are not there. */
const missing = ({ check, held }: Row): string[] =>
  /^(by eye|not held: .+)$/.test(held)
    ? []
    : held.split('; ').flatMap((one) => {
        const [, file, title] = /^(\S+): (.+)$/.exec(one) ?? [];
        const path = `tests/${file}`;
        const isThere = title !== undefined && existsSync(path) && readFileSync(path, 'utf8').includes(title);
        return isThere ? [] : [`${check}: ${one}`];
      });

describe('the table of quality checks', () => {
  const rows = readRows(readFileSync('tests/checks.md', 'utf8'));

  it('has every check once', () => {
    const all = (letter: string, count: number) =>
      Array.from({ length: count }, (_, i) => `${letter}${i + 1}`);
    expect(rows.map(({ check }) => check)).toEqual([
      ...all('A', 30),
      ...all('B', 14),
      ...all('C', 15),
      ...all('H', 6),
      ...all('I', 11),
    ]);
  });

  it('names tests that are there', () => {
    expect(rows.flatMap(missing)).toEqual([]);
  });

  it.each(['unit/theme.test.ts: a title that nobody wrote', 'unit/none.test.ts: text', 'somehow'])(
    'finds out %j',
    (held) => {
      expect(missing({ check: 'A1', held })).toHaveLength(1);
    },
  );
});
