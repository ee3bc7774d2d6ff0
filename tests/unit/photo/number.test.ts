/** What a count on a photo becomes in its field, and how the field stays linked to the photo. */
import { describe, expect, test } from 'vitest';
import { gapOn, numberFor } from '../../../src/photo/number.ts';
import { example, standardSettings } from '../../../src/state/project.ts';
import type { AppEvent, Project } from '../../../src/state/snapshot.ts';
import { openStore } from '../../../src/state/store.ts';

function snapshotAfter(project: Partial<Project>, events: AppEvent[] = []) {
  const store = openStore({
    project: { ...example, ...project },
    settings: standardSettings,
    tab: 'edge',
    place: 0,
    answered: [],
  });
  for (const event of events) store.send(event);
  return store.snapshot();
}

describe('the number of 57 marks', () => {
  test.each([
    ['stitches-only', { stitches: 57, corners: 0 }],
    ['one-corner', { stitches: 57, corners: 2 }],
    ['both-corners', { stitches: 57, corners: 4 }],
  ] as const)('where the sides are counted %s', (counted, wanted) =>
    expect(numberFor('side.0', 57, snapshotAfter({ counted }))).toEqual(wanted),
  );

  test('takes in no corners where a round of the back was counted', () =>
    expect(numberFor('worked.edging.0.1', 57, snapshotAfter({ counted: 'both-corners' }))).toEqual({
      stitches: 57,
      corners: 0,
    }));
});

describe('a gap', () => {
  const short = snapshotAfter({}, [{ type: 'TYPE', field: 'worked.edging.0.0', text: '60' }]);
  const counted = short.project.texts['side.0'] ?? '';
  const photo = { field: 'side.0', snapshot: short, counted, panel: short.project.name };
  const gaps = [0, 1, 2, 3].map((side) => {
    const field = `side.${side}`;
    return gapOn({ ...photo, field, counted: short.project.texts[field] ?? '' });
  });

  test('is known along the one side that has it', () =>
    expect(gaps.filter((gap) => gap !== 0)).toEqual([-2]));

  const side = gaps.findIndex((gap) => gap !== 0);
  const own = { ...photo, field: `side.${side}`, counted: short.project.texts[`side.${side}`] ?? '' };

  test('is not shown once the field was typed over, or before its number came from the photo', () => {
    expect(gapOn(own)).toBe(-2);
    expect(gapOn({ ...own, counted: '7' })).toBe(0);
    expect(gapOn({ ...own, counted: null })).toBe(0);
  });

  test('is not shown on a photo of another panel', () =>
    expect(gapOn({ ...own, panel: `${own.panel} too` })).toBe(0));
});
