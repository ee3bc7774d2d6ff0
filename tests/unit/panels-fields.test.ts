import { describe, expect, test } from 'vitest';
import { planBack, readEdge } from '../../core/index.ts';
import { countedNumbers, fieldId, nudge } from '../../src/controls/fields.ts';
import type { AppProblem } from '../../src/state/problem.ts';
import type { Snapshot } from '../../src/state/snapshot.ts';
import { fieldName, firstOfEach } from '../../src/words/problems-view.ts';

describe('steppers', () => {
  test.each([
    ['58', 1, 1, 100, '59'],
    ['58', -1, 1, 100, '57'],
    ['1', -1, 1, 100, '1'],
    ['100', 1, 1, 100, '100'],
    [' 58 st', 1, 1, 100, '59'],
    ['１２', 1, 1, 100, '13'],
    ['', 1, 1, 100, '1'],
    ['५८', 1, 1, 100, '59'],
  ] as const)('%j by %i within %i–%i gives %s', (text, by, least, most, expected) => {
    expect(nudge(text, by, least, most)).toBe(expected);
  });

  test.each(['about', '62-63', '5²', '1,200', '12.5'])('%j stays as it is', (text) => {
    expect(nudge(text, 1, 0, 100_000)).toBeNull();
  });
});

test('a field has one place in the page, and other fields have others', () => {
  const fields = [
    'side.0',
    'side.1',
    'corner',
    'corner.0',
    'arm.0',
    'arm.0.after',
    'worked.edging.0.2',
    'worked.edging-corner.0.2',
  ];
  const ids = fields.map(fieldId);
  expect(new Set(ids).size).toBe(fields.length);
  for (const id of ids) expect(id).toMatch(/^field-[a-z0-9-]+$/);
});

describe('what the maker counted, worked back from the edge', () => {
  test.each([
    ['stitches-only', [58, 36, 57, 36]],
    ['one-corner', [58, 36, 57, 36]],
    ['both-corners', [58, 36, 57, 36]],
  ] as const)('%s gives the numbers that went in', (counted, sides) => {
    const corner = [2, 3, 2, 1].map((size) => ({ made: 'chain' as const, size }));
    const edge = readEdge({ sides: [...sides], corner, counted });
    if (!edge.ok) throw new Error('unreadable');
    const plan = planBack(edge.value);
    if (!plan.ok) throw new Error('no plan');
    const snapshot = { project: { counted }, making: { edge: edge.value } } as unknown as Snapshot;
    expect(countedNumbers(snapshot)).toEqual(sides);
  });
});

describe('names of fields', () => {
  test.each([
    ['side.2', 4, 'side 3'],
    ['side.0', 0, 'stitches in the round'],
    ['corner', 4, 'size of each corner'],
    ['corner.1', 4, 'size of corner 2'],
    ['worked.foundation.0', 4, 'side 1'],
    ['worked.edging.1.2', 4, 'side 3'],
    ['worked.edging-corner.0.3', 4, 'corner 4'],
    ['worked.foundation.0', 0, 'stitches in the round'],
    ['seen.drift.3', 4, 'front corner 4'],
    ['arm.0', 4, 'stitches before corner, round 1'],
    ['arm.1.after', 4, 'stitches after corner, round 2'],
  ])('%s of %i sides is called %s', (field, sides, name) => {
    expect(fieldName(field, sides)).toBe(name);
  });
});

test('the list of problems has one line a field, the first', () => {
  const problem = (at: string, min: number): AppProblem => ({ at, code: 'too-low', params: { min } });
  const all = [problem('side.0', 1), problem('side.1', 2), problem('side.0', 3)];
  expect(firstOfEach(all)).toEqual([problem('side.0', 1), problem('side.1', 2)]);
});
