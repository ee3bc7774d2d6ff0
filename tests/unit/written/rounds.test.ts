import { describe, expect, it } from 'vitest';
import { readWrittenRounds } from '../../../src/input/written-rounds.ts';
import { aside, astray, open, type WrittenText } from './texts.ts';

const counts = ({ text }: WrittenText) =>
  readWrittenRounds(text).map(({ read }) => read && { [read.of]: read.count });

describe('the counts of a written pattern', () => {
  it.each(astray.map((one) => [one.text, one] as const))('are not led astray: %s', (_, one) => {
    expect(counts(one)).toEqual(one.counts);
  });

  it.each(open.map((one) => [one.text.split('\n')[0], one] as const))('are read: %s', (_, one) => {
    const read = counts(one);
    const expected = one.counts;
    expect(read.length === 0 ? expected.map(() => null) : read).toEqual(expected);
  });

  it.each(aside.map((one) => [one.text.split('\n')[0], one] as const))(
    'of texts kept aside are read or left open, never wrong: %s',
    (_, one) => {
      const read = counts(one);
      read.forEach((count, i) => {
        if (count !== null) expect(count).toEqual(one.counts[i]);
      });
    },
  );

  it('are read of most texts kept aside that tell one', () => {
    const told = aside.flatMap((one) =>
      one.counts.map((count, i) => [count, counts(one)[i] ?? null] as const),
    );
    const sure = told.filter(([count]) => count !== null);
    expect(sure.filter(([, read]) => read !== null).length / sure.length).toBeGreaterThanOrEqual(0.6);
  });
});
