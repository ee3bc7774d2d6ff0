/** The US word beside the UK word, and the other way round. Names: Craft Yarn Council terms as reprinted (read). */
import { describe, expect, test } from 'vitest';
import { readSettings } from '../../src/input/settings.ts';
import { lessonOf, sayItem } from '../../src/lessons/lesson.ts';
import { standardSettings } from '../../src/state/project.ts';
import { sayOtherTerms } from '../../src/words/other-terms.ts';

describe('the other word stands beside', () => {
  test.each([
    ['1 foundation treble in the first chain.', 'uk', 'foundation treble: US foundation double crochet'],
    [
      '1 double crochet in the back loop of the treble.',
      'uk',
      'double crochet: US single crochet · treble: US double crochet',
    ],
    ['1 double crochet in the next stitch.', 'us', 'double crochet: UK treble'],
    ['Weave it through the trebles, missing 1.', 'uk', 'treble: US double crochet · miss: US skip'],
    ['1 slip stitch, then chain 2.', 'uk', ''],
    ['Pins out.', 'us', ''],
  ] as const)('of "%s" in %s terms', (said, dialect, expected) => {
    expect(sayOtherTerms(said, dialect)).toBe(expected);
  });
});

test('the wish for both is read back as it was kept', () => {
  const wished = { ...standardSettings, bothTerms: true };
  expect(readSettings(JSON.parse(JSON.stringify(wished)), standardSettings)).toEqual(wished);
  expect(readSettings({ ...standardSettings, bothTerms: 'odd' }, standardSettings).bothTerms).toBe(false);
});

describe('the cloth lesson speaks in numbers', () => {
  const said = (units: 'cm' | 'inch'): string =>
    lessonOf('cloth')
      .items.map((item) => sayItem(item, { ...standardSettings, units }).check ?? '')
      .join(' ');

  // 18 by 14 cm, 1.2 cm deep, cut snug: each edge out by 1.2 and in by 0.6 (model, snug), so 1.2 cm more each way.
  test('of its own piece: 18 by 14 cm is cut 19.2 by 15.2 cm', () => {
    expect(said('cm')).toMatch(/cut 19\.2 (?:cm )?(?:by|×) 15\.2 cm/);
    expect(said('cm')).toContain('The line runs 1.2 cm from the raw edge');
  });

  test('in inches where lengths are in inches', () => {
    expect(said('inch')).not.toMatch(/\bcm\b/);
    expect(said('inch')).toMatch(/\d\sin\b/);
  });

  test('the pins told at the first are the pins counted at the last', () => {
    const counts = [...said('cm').matchAll(/(\d+) pins/g)].map(([, count]) => count);
    expect(counts.length).toBeGreaterThan(0);
    expect(new Set(counts).size).toBe(1);
  });
});
