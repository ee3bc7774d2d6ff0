/** What stands on the printed sheets: boxes to tick off, which block on which page, and the paper by language. */
import fc from 'fast-check';
import { html } from 'lit-html';
import { describe, expect, test } from 'vitest';
import type { Adjustment, Choices, EdgeInput, Step, Steps } from '../../core/index.ts';
import { steps } from '../../core/index.ts';
import { paperOfLanguages } from '../../src/controls/paper.ts';
import { clothFields } from '../../src/state/cloth-fields.ts';
import type { Snapshot } from '../../src/state/snapshot.ts';
import { type Block, fitting, pagesOf } from '../../src/take-along/sheets/paging.ts';
import { paragraphs } from '../../src/take-along/sheets/pattern-sheet.ts';
import { boxesIn, type TickRound, tickRounds } from '../../src/take-along/sheets/ticks.ts';
import { CHAINS, makingOf } from './drawing-making.ts';

type Panel = { front: EdgeInput; choices?: Choices; adjustments?: Adjustment[]; texts?: object };

const snapshotOf = ({ front, choices = {}, adjustments = [], texts = {} }: Panel): Snapshot =>
  ({
    making: makingOf(front, { choices }),
    project: { adjustments, texts },
    settings: { manner: 'corner-to-corner' },
  }) as unknown as Snapshot;

/** Boxes by walking every single step: one where a marker goes, one where a side ends, one a corner, one an act. */
function boxesByWalking(walk: Steps): number {
  const worked: readonly Step['kind'][] = ['foundation-treble', 'double-crochet', 'slip-stitch'];
  const acts: readonly Step['kind'][] = ['close-tops', 'close-round', 'pad-in', 'last-hole'];
  const isSide = ({ kind, corner }: Step): boolean => corner < 0 && worked.includes(kind);
  const place = ({ stage, edging, side, corner }: Step): string => `${stage} ${edging} ${side} ${corner}`;
  let boxes = 0;
  for (let at = 0; at < walk.length; at++) {
    const step = walk.at(at);
    const next = at + 1 < walk.length ? walk.at(at + 1) : null;
    const goesOn = next !== null && place(next) === place(step);
    if (step.stage === 'front') continue;
    if (acts.includes(step.kind)) boxes++;
    else if (isSide(step)) boxes += step.marker || !(goesOn && next && isSide(next)) ? 1 : 0;
    else if (step.corner >= 0 && step.node >= 0 && !goesOn) boxes++;
  }
  return boxes;
}

const four = (sides: number[]): EdgeInput => ({ sides, corner: CHAINS, counted: 'stitches-only' });

describe('boxes to tick off', () => {
  const panels: [string, Panel][] = [
    ['a rectangle', { front: four([62, 38, 62, 38]) }],
    ['sides that are whole tens', { front: four([60, 40, 60, 40]) }],
    ['markers after every 7', { front: four([52, 44, 38, 30]), choices: { markerEvery: 7 } }],
    [
      'three edging rounds',
      { front: four([70, 50, 70, 50]), choices: { edgings: [{ arm: 1 }, { arm: 1 }, { arm: 1 }] } },
    ],
    ['a hexagon', { front: { sides: [28, 28, 28, 28, 28, 28], corner: CHAINS, counted: 'stitches-only' } }],
    ['a round', { front: { sides: [132], corner: [], counted: 'stitches-only' } }],
    ['a bag', { front: four([62, 38, 62, 38]), choices: { open: 2 } }],
    [
      'a side worked otherwise by wish',
      {
        front: four([62, 38, 62, 38]),
        adjustments: [{ kind: 'stitch-missed', round: 'foundation', side: 1, place: 5, asked: true }],
      },
    ],
  ];

  test.each(panels)('%s: as many as there are on the walk, step by step', (_, panel) => {
    const snapshot = snapshotOf(panel);
    const { plan } = snapshot.making;
    const walk = steps(plan, snapshot.project.adjustments, { manner: 'corner-to-corner' });
    expect(boxesIn(tickRounds(snapshot))).toBe(boxesByWalking(walk));
  });

  test.each([
    [{ front: four([62, 38, 50, 30]), choices: { start: { side: 1 } } }],
    [{ front: { sides: [132], corner: [], counted: 'stitches-only' } }],
  ] satisfies [Panel][])(
    'a front of cloth has its own strip ticked off: on each side as many as the back has there',
    (panel) => {
      const snapshot = snapshotOf({ ...panel, texts: { [clothFields.front]: 'cloth' } });
      const rounds = tickRounds(snapshot);
      expect(rounds.map(({ of, isFront }) => `${of}${isFront ? ' of the front' : ''}`)).toEqual([
        'foundation',
        'edging',
        'foundation of the front',
        'edging of the front',
        'join',
      ]);
      const counts = ({ stretches }: TickRound): Map<number, number> => {
        const sides = new Map<number, number>();
        for (const one of stretches)
          if (one.what === 'side') sides.set(one.side, (sides.get(one.side) ?? 0) + one.count);
        return sides;
      };
      const [foundation, edging, frontFoundation, frontEdging] = rounds as [
        TickRound,
        TickRound,
        TickRound,
        TickRound,
      ];
      for (const [back, front] of [
        [foundation, frontFoundation],
        [edging, frontEdging],
      ] as const) {
        const own = counts(front);
        for (const [side, count] of counts(back))
          expect(own.get(snapshot.making.plan.faces[side] ?? 0)).toBe(count);
        expect(front.atEnd.total).toBe(back.atEnd.total);
      }
      const [first] = frontFoundation.stretches;
      expect(first).toMatchObject({ what: 'side', side: snapshot.making.plan.choices.start.side });
    },
  );

  test('a side has its corners named, and its parts told apart', () => {
    const rounds = tickRounds(snapshotOf({ front: four([62, 38, 62, 38]) }));
    expect(rounds.map(({ of }) => of)).toEqual(['foundation', 'edging', 'join']);
    const [foundation] = rounds;
    expect(
      foundation?.stretches.map((one) => (one.what === 'side' ? [one.side, one.part, one.ends] : one)),
    ).toEqual([
      [0, 0, [10, 20, 30]],
      { what: 'corner', corner: 0 },
      [1, 0, [10, 20, 30, 36]],
      { what: 'corner', corner: 1 },
      [2, 0, [10, 20, 30, 40, 50, 60]],
      { what: 'corner', corner: 2 },
      [3, 0, [10, 20, 30, 36]],
      { what: 'corner', corner: 3 },
      [0, 1, [10, 20, 29]],
      { what: 'act', act: 'closing' },
    ]);
  });
});

describe('blocks on pages', () => {
  const body = html``;
  const anyBlocks = fc.array(fc.record({ height: fc.integer({ min: 1, max: 100 }), keep: fc.boolean() }), {
    minLength: 1,
    maxLength: 40,
  });

  test('all stand in their order, none beyond the foot, and no heading last on a page', () => {
    fc.assert(
      fc.property(anyBlocks, (given) => {
        // Two headings on end still leave room for what they are the headings of.
        const own = given.map(({ height, keep }, i) => ({ height, keep: keep && !given[i - 1]?.keep }));
        const blocks = own.map(({ keep }, i): Block => ({ key: `${i}`, body, ...(keep && { keep }) }));
        const heights = new Map(own.map(({ height }, i) => [`${i}`, height]));
        const room = 220;
        const pages = pagesOf([{ blocks }], { room, heights });
        expect(pages.flatMap((page) => page.blocks)).toEqual(blocks);
        pages.forEach((page, n) => {
          const used = page.blocks.reduce((sum, { key }) => sum + (heights.get(key) ?? 0), 0);
          expect(used).toBeLessThanOrEqual(room);
          if (n < pages.length - 1) expect(page.blocks.at(-1)?.keep).toBeUndefined();
        });
      }),
    );
  });

  test('a page that goes on within a round says so, and leaves room for it', () => {
    const under = { key: 'head', body: html`on` };
    const blocks: Block[] = [
      { key: 'head', body, keep: true },
      ...[1, 2, 3, 4].map((n) => ({ key: `${n}`, body, under })),
    ];
    const heights = new Map([['head', 20], ...[1, 2, 3, 4].map((n): [string, number] => [`${n}`, 40])]);
    const pages = pagesOf([{ blocks }], { room: 100, heights });
    expect(pages.map((page) => [page.under !== undefined, page.blocks.length])).toEqual([
      [false, 3],
      [true, 2],
    ]);
  });

  test('the first way that fits on one page is taken, else the last', () => {
    const way = (key: string) => [
      {
        blocks: [
          { key: 'first', body },
          { key, body },
        ],
      },
    ];
    const sheet = { title: '', tries: [way('large'), way('small'), way('flowing')] };
    const measured = (small: number) => ({
      room: 100,
      heights: new Map([
        ['first', 50],
        ['large', 80],
        ['small', small],
        ['flowing', 90],
      ]),
    });
    const settle = (small: number): number => {
      let at = 0;
      for (let i = 0; i < 5; i++) at = fitting(sheet, measured(small), at);
      return at;
    };
    expect(settle(40)).toBe(1);
    expect(settle(60)).toBe(2);
  });

  test('a long text is parted at a space, and nothing of it is lost', () => {
    const text = `${'word '.repeat(500)}\nend`;
    const pieces = paragraphs(text);
    expect(Math.max(...pieces.map(({ length }) => length))).toBeLessThanOrEqual(900);
    expect(pieces.join(' ').split(/\s+/).filter(Boolean)).toEqual(text.split(/\s+/).filter(Boolean));
    expect(paragraphs('x'.repeat(2000)).join('')).toBe('x'.repeat(2000));
  });
});

test.each([
  [['en-GB'], 'a4'],
  [['en-US'], 'letter'],
  [['es-MX', 'en-GB'], 'letter'],
  [['en', 'de-AT', 'en-US'], 'a4'],
  [['en'], 'a4'],
  [['fr-CA'], 'letter'],
  [['*', 'en_'], 'a4'],
  [[], 'a4'],
] as const)('the paper of %j is %s', (languages, paper) => {
  expect(paperOfLanguages(languages)).toBe(paper);
});
