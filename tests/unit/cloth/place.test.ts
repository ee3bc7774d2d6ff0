/** From what is typed to what is said: the cloth of a whole project. */
import { describe, expect, it } from 'vitest';
import type { StepKind } from '../../../core/index.ts';
import { clothOf } from '../../../src/state/cloth.ts';
import { layoutOf, padOf, partsOf, yarnLeft, yarnNeeds } from '../../../src/state/cloth-stock.ts';
import type { Cloth } from '../../../src/state/cloth-types.ts';
import { wantedCounts } from '../../../src/state/cloth-wanted.ts';
import { derive } from '../../../src/state/derive.ts';
import { example, standardSettings } from '../../../src/state/project.ts';
import type { Making, Project, Units } from '../../../src/state/snapshot.ts';
import { sayCut } from '../../../src/words/cloth/cut.ts';
import { sayClothNote, sayClothProblem } from '../../../src/words/cloth/problems.ts';
import { sayLeft, sayNeed } from '../../../src/words/cloth/stock.ts';
import { sayStep } from '../../../src/words/walk/step.ts';

const speech = { dialect: 'uk', hand: 'right', units: 'cm' } as const;
const measured = { 'cloth.width.0': '41', 'cloth.height.0': '41', 'cloth.depth': '1.5' };

function made(change: Partial<Project>): { project: Project; making: Making } {
  const project = { ...example, ...change, texts: { ...example.texts, ...change.texts } };
  const derived = derive(project, standardSettings);
  if (!derived.making) throw new Error('no making');
  return { project, making: derived.making };
}

function clothFor(texts: Record<string, string>, change: Partial<Project> = {}, units: Units = 'cm'): Cloth {
  const { project, making } = made({ ...change, texts: { ...change.texts, ...texts } });
  return clothOf(project, units, making);
}

describe('the cloth of a project', () => {
  it('is cut by the trade’s check value, 41 cm to 42.5 cm (common practice, no source)', () => {
    const { plan } = clothFor(measured);
    expect(plan && sayCut(plan, 'cm')).toEqual({ size: '42.5 × 42.5 cm', isRounded: false });
  });

  it.each([{}, measured])(
    'of a front of cloth has the walk make the front as well, measured or not: %o',
    (texts) => {
      const { making } = made({});
      const at = Array.from({ length: making.steps.length }, (_, i) => making.steps.at(i));
      const said = (kind: StepKind, front: string) => {
        const step = at.find((one) => one.kind === kind);
        if (!step) throw new Error(`no ${kind}`);
        return sayStep(step, making, speech, clothFor({ ...texts, 'cloth.front': front }));
      };
      expect(said('turn-strip', 'cloth').act).toMatch(
        /Then make the front the same way: the recipe has its strip\./,
      );
      expect(said('turn-strip', 'panel').act).toBe('Turn the strip outwards.');
      expect(said('count-stitch', 'cloth').check).toMatch(/not made yet/);
      expect(said('count-stitch', 'panel').check).not.toMatch(/not made yet/);
    },
  );

  it('is the same whichever unit a length was typed in', () => {
    const inches = clothFor(
      { 'cloth.width.0': '410mm', 'cloth.height.0': '41 cm', 'cloth.depth': '1,5cm' },
      {},
      'inch',
    );
    expect(inches.plan?.cut).toEqual(clothFor(measured).plan?.cut);
    expect(inches.plan && sayCut(inches.plan, 'inch')).toEqual({
      size: '16 3/4 × 16 3/4\u00a0in',
      isRounded: true,
    });
  });

  it('is not cut before it is measured, and what is missing is told by its field', () => {
    const { plan, problems } = clothFor({});
    expect(plan).toBeNull();
    expect(problems.map((one) => sayClothProblem(one, 'cm', 'cushion pad'))).toEqual([
      'Enter width, 1st time',
      'Enter height, 1st time',
      'Enter depth of the foundation',
    ]);
  });

  it('tells absurd measures in sentences, all at once', () => {
    const texts = {
      'cloth.width.0': '0',
      'cloth.height.0': '9 999 999',
      'cloth.depth': 'deep',
      'cloth.rule': 'own',
      'cloth.allowance': '1/0',
      'cloth.pieces': '1.5',
      'cloth.diagonal.0': '1,250',
      'cloth.price.pad': '-3',
    };
    const said = clothFor(texts).problems.map((one) => sayClothProblem(one, 'cm', 'cushion pad'));
    expect(said).toEqual([
      'Width, 1st time must be 0.1 cm or more',
      'Height, 1st time must be one length',
      'Depth of the foundation must be a length, like 41.5',
      'From the panel to the cut edge must be a length, like 41.5',
      'How many backs must be a whole number, like 20',
      '1st diagonal can be read in 2 ways: write it without the last zeros, or without the point',
      'Cushion pad must be a number, like 4.95',
    ]);
  });

  it('says that 2 readings differ, and that diagonals do', () => {
    const [note] = clothFor({ ...measured, 'cloth.width.1': '43' }).notes;
    expect(note && sayClothNote(note, 'cm')).toBe(
      'Your 2 readings differ by 2 cm. Taken: 42 cm, half way. Measure a 3rd time if you can.',
    );
    const { problems, plan } = clothFor({ ...measured, 'cloth.diagonal.0': '57', 'cloth.diagonal.1': '60' });
    expect(plan).toBeNull();
    expect(problems.map((one) => sayClothProblem(one, 'cm', 'pad'))).toEqual([
      'The diagonals differ by 3 cm: pull the panel square and measure again, or choose 4 sides of their own',
    ]);
  });

  it('of other sides takes an empty side to be as long as the one before', () => {
    const texts = { 'side.4': '40', 'side.5': '40', 'cloth.side.0': '20', 'cloth.depth': '1.5' };
    const { plan } = clothFor(texts, { sideCount: 6 });
    expect(plan?.panel.shape === 'polygon' && plan.panel.sides).toEqual([200, 200, 200, 200, 200, 200]);
  });

  it('of a round panel has one length across', () => {
    const { plan, pins } = clothFor(
      { 'side.0': '180', 'cloth.diameter.0': '36', 'cloth.depth': '1.6' },
      { sideCount: 0 },
    );
    expect(plan?.cut).toEqual({ shape: 'round', diameter: 376 });
    expect(pins?.slice(0, 4).map(({ kind }) => kind)).toEqual(Array(4).fill('quarter'));
  });
});

describe('what to buy', () => {
  const texts = {
    ...measured,
    'cloth.yarn-stitches.edging': '20',
    'cloth.yarn-length.edging': '90',
    'cloth.yarn-stitches.join': '20',
    'cloth.yarn-grams.join': '3',
    'cloth.ball-grams.edging': '50',
    'cloth.ball-length.edging': '125',
    'cloth.left': '23',
    'cloth.cloth-width': '140',
    'cloth.pieces': '4',
  };
  const cloth = clothFor(texts);
  const { making } = made({ texts });
  const needs = yarnNeeds(cloth, making, 1600);

  it('is yarn by swatch or in a band', () => {
    expect(needs.map(({ part, from }) => [part, from])).toEqual([
      ['foundation', 'published'],
      ['edging', 'measured'],
      ['join', 'measured'],
    ]);
  });
  it('tells what is left over for', () => {
    const enough = yarnLeft(cloth, needs);
    expect(enough && sayLeft(23, enough)).toBe('23 g left: enough for the edging, not for the join.');
  });
  it('is cloth for all pieces, twice as many where the front is cloth too', () => {
    expect(layoutOf(cloth)).toMatchObject({ ok: true, value: { across: 3, rows: 2 } });
    expect(layoutOf(clothFor({ ...texts, 'cloth.front': 'cloth' }))).toMatchObject({
      ok: true,
      value: { rows: 3 },
    });
  });
  it('is yarn for both strips where the front is cloth too, and for 1 join', () => {
    const both = clothFor({ ...texts, 'cloth.front': 'cloth' });
    const doubled = (part: number): number =>
      (yarnNeeds(both, making, 1600)[part]?.metres?.[1] ?? 0) / (needs[part]?.metres?.[1] ?? 0);
    expect([doubled(0), doubled(1), doubled(2)]).toEqual([2, 2, 1]);
    const stitches = (cloth: Cloth): number[] => partsOf(making, cloth).map((part) => part.stitches);
    const [foundation = 0, edging = 0, join] = stitches(cloth);
    expect(stitches(both)).toEqual([2 * foundation, 2 * edging, join]);
  });
  it('speaks of slip stitches at the join only', () => {
    const said = (['foundation', 'edging', 'join'] as const).map((part) =>
      sayNeed({ part, from: 'nothing', metres: null, grams: null }, 'cm'),
    );
    expect(said.map((sentence) => sentence.includes('slip stitches'))).toEqual([false, false, true]);
  });
  it('is a pad for a cushion, a form as large as the back for a cover, and nothing for a bag', () => {
    expect(padOf(cloth, 'cm')?.pad).toMatchObject({ width: 420, height: 420 });
    expect(padOf(clothFor({ ...texts, 'cloth.becomes': 'cover' }), 'cm')?.pad).toMatchObject({ width: 395 });
    expect(padOf(clothFor({ ...texts, 'cloth.becomes': 'bag' }), 'cm')).toBeNull();
  });
});

describe('a wanted size', () => {
  it('comes to counts for sides that face each other', () => {
    const texts = {
      'cloth.wanted-width': '40',
      'cloth.wanted-height': '30',
      'cloth.parity': 'even',
      'cloth.stretch-stitches.front': '20',
      'cloth.stretch-length.front': '10.4',
    };
    const { project, making } = made({ texts });
    const found = wantedCounts(clothOf(project, 'cm', making), making);
    expect(found?.ok && found.value.map(({ nearest }) => nearest.front)).toEqual([76, 58, 76, 58]);
  });
});

describe('the walk’s cloth stage', () => {
  const { project, making } = made({ texts: measured });
  const cloth = clothOf(project, 'cm', making);
  const sentences = Array.from({ length: making.steps.length }, (_, i) => making.steps.at(i))
    .filter(({ stage }) => stage === 'cloth')
    .map((step) => [step.kind, sayStep(step, making, speech, cloth)] as const);

  it('says the maker’s numbers', () => {
    const said = Object.fromEntries(sentences);
    const { foundation } = making.plan;
    const half = (foundation.sides[0] ?? 0) / 2;
    expect(said['lay-strip']?.check).toContain('42.5 × 42.5 cm');
    expect(said['cloth-centres']?.check).toContain(
      `Sides 1 and 3: 21.3 cm from the corner, between stitches ${half} and ${half + 1}.`,
    );
    expect(said['cloth-centres']?.caution).toContain(`${cloth.pins?.length} pins in all`);
    expect(said['sew-out']?.check).toContain('1.5 cm from the raw edge');
    expect(said['pins-out']?.check).toContain(`${cloth.pins?.length} pins`);
    expect(said['turn-strip']?.check).toContain('39.5 × 39.5 cm');
  });

  it('says nothing of them where nothing is measured', () => {
    for (const [, said] of sentences) {
      const step = making.steps.at(0);
      expect(sayStep(step, making, speech, clothFor({}))).toEqual(sayStep(step, making, speech));
      expect(said.act.split(' ').length).toBeLessThanOrEqual(12);
    }
  });
});
