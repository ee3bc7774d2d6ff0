import { describe, expect, test } from 'vitest';
import { fieldAt, fieldRows, rowOf } from '../../../src/state/fields.ts';
import { example } from '../../../src/state/project.ts';

const shown = (project: typeof example): string[] =>
  fieldRows.filter((row) => row.isShown(project)).map(({ field }) => field);

describe('the table of fields', () => {
  test('has a name of its own for every field', () => {
    expect(new Set(fieldRows.map(({ field }) => field)).size).toBe(fieldRows.length);
    for (const row of fieldRows) expect(rowOf(row.field)).toBe(row);
  });

  test('shows the fields of the panel there is', () => {
    const square = shown(example);
    expect(square).toContain('side.3');
    expect(square).toContain('corner');
    expect(square).toContain('start-side');
    expect(square).not.toContain('side.4');
    expect(square).not.toContain('corner.0');
    expect(square).not.toContain('arm.1');
    expect(square).not.toContain('increase.0');
    const round = shown({ ...example, sideCount: 0, edgingCount: 2 });
    expect(round.filter((field) => field.startsWith('side.'))).toEqual(['side.0']);
    expect(round).toContain('increase.1');
    for (const field of ['corner', 'lead', 'start-side', 'join-side', 'seen.drift.0', 'arm.0'])
      expect(round).not.toContain(field);
    const short = shown({ ...example, texts: { 'worked.a-corner-short.edging.0': '2' } });
    expect(short).toContain('worked.edging.0.1');
    expect(short).not.toContain('worked.edging.0.2');
  });

  test.each([
    ['sides[2]', 'side.2'],
    ['edge.sides[0]', 'side.0'],
    ['corner[1].size', 'corner'],
    ['choices.edgings[0].arm', 'arm.0'],
    ['choices.start.lead', 'lead'],
    ['choices.joinStart.side', 'join-side'],
  ])('leads from %s to %s', (path, field) => {
    expect(fieldAt(path, example)).toBe(field);
  });

  test('leads to the corner itself where corners differ', () => {
    expect(fieldAt('corner[1].size', { ...example, cornersDiffer: true })).toBe('corner.1');
  });
});
