/** The file of counts beside a maker's own photographs. */
import { expect, test } from 'vitest';
import { readCounts } from '../../photo/counts-file.ts';

const right = {
  photo: 'side-1.jpg',
  count: 57,
  line: [
    [10, 20],
    [900, 30],
  ],
  marks: [
    [10, 20],
    [26, 20],
    [42, 21],
  ],
};

test('is read as it is written', () => expect(readCounts(JSON.stringify([right]))).toEqual([right]));

test.each([
  ['{', /^counts.json is no JSON: /],
  ['{}', /^counts.json must be a list/],
  ['[]', /^counts.json must be a list/],
  [JSON.stringify([right, 5]), /^Entry 2 of counts.json cannot be used: it is no entry\.$/],
  [JSON.stringify([{ ...right, photo: '' }]), /^Entry 1 .*: photo must be the name of a picture/],
  [JSON.stringify([{ ...right, count: 5.5 }]), /count must be a whole number/],
  [JSON.stringify([{ ...right, line: [[1, 2]] }]), /line must be at least two places/],
  [
    JSON.stringify([
      {
        ...right,
        marks: [
          [1, 2],
          [3, 4],
          [5, 'x'],
        ],
      },
    ]),
    /marks.2.1 must be the places/,
  ],
])('%s is answered in a sentence', (text, says) => expect(readCounts(text)).toMatch(says));
