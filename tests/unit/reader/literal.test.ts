/** Following the walk's sentences to the letter ends in the piece that the simulation made. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Act, asked, type Choices, type EdgeInput } from '../../../core/index.ts';
import { type Page, readWalk, Stuck, sentencesOf } from '../../reader/reader.ts';
import { type Case, caseOf, fails, otherNumbers, pagesOf, reading, SPEECHES, UK } from './cases.ts';

const two = { made: 'chain', size: 2 } as const;
const STARTS = [0, 1] as const;

const PANELS: [string, EdgeInput][] = [
  ['1 side', { sides: [24], corner: [], counted: 'stitches-only' }],
  ['3 sides', { sides: [9, 12, 10], corner: two, counted: 'stitches-only' }],
  ['4 sides', { sides: [13, 8, 12, 9], corner: { made: 'chain', size: 3 }, counted: 'stitches-only' }],
  [
    '7 sides',
    { sides: [8, 7, 9, 8, 10, 6, 8], corner: { made: 'chain', size: 1 }, counted: 'stitches-only' },
  ],
];

const STITCH_CORNERS: EdgeInput = {
  sides: [9, 9, 9, 9],
  corner: { made: 'stitch', size: 1 },
  counted: 'stitches-only',
};

const TWO_ROUNDS: Choices = {
  edgings: [
    { arm: 1, corner: two },
    { arm: 1, corner: two },
  ],
};

const movedOn = (edging: number, count: number): Act =>
  asked({ kind: 'corner-moved', round: 'edging', edging, corner: 1, count, then: 'from-total' });
const missedOn = (edging: number, side: number): Act =>
  asked({ kind: 'stitch-missed', round: 'edging', edging, side, place: 4 });

const CASES: Case[] = [
  ...PANELS.flatMap(([name, input]) =>
    STARTS.flatMap((counts) =>
      STARTS.flatMap((foundation) =>
        STARTS.map((edging) =>
          caseOf(`${name}, chains ${counts}, closings ${foundation} and ${edging}`, input, {
            foundationStart: { counts },
            foundationClosing: { adds: foundation },
            edgingClosing: { adds: edging },
          }),
        ),
      ),
    ),
  ),
  caseOf('2 edging rounds, uneven arms', PANELS[1]![1], {
    edgings: [
      { arm: [2, 1], corner: two },
      { arm: 1, corner: two },
    ],
  }),
  ...[0, 1, 3].map((open) => caseOf(`a bag, side ${open + 1} open`, PANELS[2]![1], { open })),
  caseOf('a pocket begun elsewhere', PANELS[1]![1], { open: 2, start: { side: 1, lead: 2 } }),
  caseOf('begun and joined elsewhere', PANELS[2]![1], {
    start: { side: 2, lead: 2 },
    joinStart: { side: 3, fromCorner: 5 },
  }),
  caseOf('2 in one on the foundation and one missed on the edging', PANELS[1]![1], {}, [
    asked({ kind: 'stitch-doubled', round: 'foundation', side: 1, place: 3 }),
    asked({ kind: 'stitch-missed', round: 'edging', edging: 0, side: 1, place: 5 }),
  ]),
  caseOf('one left out on the foundation and 2 in one on the edging', PANELS[1]![1], {}, [
    asked({ kind: 'stitch-missed', round: 'foundation', side: 2, place: 2 }),
    asked({ kind: 'stitch-doubled', round: 'edging', edging: 0, side: 2, place: 4 }),
  ]),
  caseOf('3 in one, and 2 missed', PANELS[2]![1], {}, [
    asked({ kind: 'stitch-doubled', round: 'foundation', side: 2, place: 4, count: 2 }),
    asked({ kind: 'stitch-missed', round: 'edging', edging: 0, side: 2, place: 4 }),
    asked({ kind: 'stitch-missed', round: 'edging', edging: 0, side: 2, place: 8 }),
  ]),
  caseOf('1 too many on the back, eased in the join', PANELS[1]![1], {}, [
    asked({ kind: 'stitch-doubled', round: 'edging', edging: 0, side: 1, place: 5 }),
    asked({ kind: 'two-with-one', round: 'join', side: 2, place: 4, of: 'back' }),
  ]),
  caseOf('1 too few on the back, eased in the join', PANELS[1]![1], {}, [
    asked({ kind: 'stitch-missed', round: 'edging', edging: 0, side: 1, place: 5 }),
    asked({ kind: 'two-with-one', round: 'join', side: 2, place: 4, of: 'front' }),
  ]),
  caseOf('a corner moved on the foundation, made up on the edging', PANELS[2]![1], {}, [
    asked({ kind: 'corner-moved', round: 'foundation', corner: 1, count: 1, then: 'from-total' }),
    asked({ kind: 'stitch-missed', round: 'edging', edging: 0, side: 1, place: 3 }),
    asked({ kind: 'stitch-doubled', round: 'edging', edging: 0, side: 2, place: 3 }),
  ]),
  // A corner put into a stitch makes one more than the stitch it stands in: that one is missed again further on.
  ...([1, -1, 2, -2] as const).map((count) =>
    caseOf(`a corner ${count} off on the foundation, moved back on the edging`, PANELS[2]![1], {}, [
      asked({ kind: 'corner-moved', round: 'foundation', corner: 1, count, then: 'from-total' }),
      movedOn(0, -count),
      missedOn(0, count > 0 ? 2 : 1),
    ]),
  ),
  caseOf('a corner moved on the first edging, and back on the second', PANELS[1]![1], TWO_ROUNDS, [
    movedOn(0, 1),
    movedOn(1, -1),
    missedOn(1, 1),
    missedOn(1, 2),
  ]),
  caseOf('3 stitches in one in each corner', STITCH_CORNERS),
  caseOf('3 stitches in one, the foundation turned by a stitch as well', STITCH_CORNERS, {
    foundationCorner: STITCH_CORNERS.corner as { made: 'stitch'; size: number },
  }),
];

describe.each(SPEECHES)('in $dialect terms, $hand hand', (speech) => {
  test.each(CASES)('$name: following every sentence makes the piece', (one) => {
    expect(readWalk(pagesOf(one, speech), reading(one, speech))).toEqual(one.made);
  });
});

const small = caseOf(
  'small',
  { sides: [6, 7, 5], corner: two, counted: 'stitches-only' },
  { markerEvery: 3 },
);
const bag = caseOf(
  'small bag',
  { sides: [6, 7, 5], corner: two, counted: 'stitches-only' },
  { open: 1, markerEvery: 3 },
);
const round = caseOf('small and round', { sides: [13], corner: [], counted: 'stitches-only' });

/** As `pages`, one of them changed. */
const changed = (pages: readonly Page[], at: number, page: Page): Page[] => pages.with(at, page);

const acts = ({ act, check, ask, caution }: Page): Page => ({
  act,
  ...(caution !== undefined && { caution }),
  ...(check !== undefined && { check }),
  ...(ask !== undefined && { ask }),
});

describe.each([
  caseOf('4 sides, chains counted, closings that add none', PANELS[2]![1], {
    foundationStart: { counts: 1 },
    foundationClosing: { adds: 0 },
    edgingClosing: { adds: 0 },
  }),
  caseOf('7 sides', PANELS[3]![1]),
])('$name: not one instruction can be spared', (one) => {
  test.each(SPEECHES)('in $dialect terms, $hand hand', (speech) => {
    const pages = pagesOf(one, speech);
    expect(fails(pages, one, speech)).toBe(false);
    const spared = pages.filter((_, i) => !fails(pages.toSpliced(i, 1), one, speech));
    expect(spared.map(({ act }) => act)).toEqual([]);
  });
});

describe.each([small, bag, round])('$name: not one instruction can be spared', (one) => {
  const pages = pagesOf(one, UK);

  test('a page taken out stops the reader, with or without the line that says where', () => {
    for (const transcript of [pages, pages.map(acts)]) {
      expect(fails(transcript, one)).toBe(false);
      const spared = transcript.filter((_, i) => !fails(transcript.toSpliced(i, 1), one));
      expect(spared.map(({ act }) => act)).toEqual([]);
    }
  });

  test('a page read twice stops it', () => {
    const spared = pages.filter((page, i) => !fails(pages.toSpliced(i, 0, page), one));
    expect(spared.map(({ act }) => act)).toEqual([]);
  });

  test('any number changed stops it', () => {
    const spared: string[] = [];
    let tried = 0;
    pages.forEach((page, i) => {
      for (const part of ['act', 'check', 'where', 'count', 'ask', 'caution'] as const)
        for (const text of otherNumbers(page[part] ?? '')) {
          tried += 1;
          if (!fails(changed(pages, i, { ...page, [part]: text }), one)) spared.push(text);
        }
    });
    expect(tried).toBeGreaterThan(200);
    expect(spared).toEqual([]);
  });

  test('what is told beside the act is needed as well', () => {
    const needed = [
      /^Leave an end a hand long/,
      /^Then down into the middle of the last V\.$/,
      /^Put your start marker in /,
      /count as none\.$/,
      /^The first stitch goes in /,
      /^Base chains on the raw edge/,
      /^Does the base stay on one side/,
      /^Side 1 of the back lies behind/,
      /: count from corner /,
    ];
    const met = new Set<RegExp>();
    const spared: string[] = [];
    pages.forEach((page, i) => {
      for (const part of ['check', 'ask'] as const) {
        const sentences = sentencesOf(page[part] ?? '');
        sentences.forEach((sentence, s) => {
          const which = needed.find((known) => known.test(sentence));
          // The start marker of the last round leads to nothing: no round is worked on that one.
          const isLast = page.where?.startsWith('Edging') === true && /start marker/.test(sentence);
          if (which === undefined || isLast) return;
          met.add(which);
          const text = sentences.toSpliced(s, 1).join(' ');
          if (!fails(changed(pages, i, { ...page, [part]: text }), one)) spared.push(sentence);
        });
      }
    });
    expect(spared).toEqual([]);
    if (one === small) expect(met.size).toBe(needed.length);
  });
});

describe('the reader', () => {
  test('does not take one dialect for the other, nor one hand', () => {
    const pages = pagesOf(small, UK);
    expect(() => readWalk(pages, reading(small, { ...UK, dialect: 'us' }))).toThrow(Stuck);
    expect(() => readWalk(pages, reading(small, { ...UK, hand: 'left' }))).toThrow(Stuck);
  });

  test('knows nothing but what it is told: it imports nothing of the app', () => {
    const folder = new URL('../../reader/', import.meta.url);
    const files = readdirSync(folder);
    expect(files).toContain('reader.ts');
    for (const file of files) {
      const from = [...readFileSync(new URL(file, folder), 'utf8').matchAll(/from '([^']+)'/g)];
      expect(from.map(([, path]) => path).filter((path) => !path?.startsWith('./'))).toEqual([]);
    }
  });
});
