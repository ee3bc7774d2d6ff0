/**
 * From the story to the last joined pair: what was counted is typed, a cure is taken, and the walk goes on. What it
 * then asks for is told as an instruction, and the rounds meet by it.
 */
import { afterEach, describe, expect, test } from 'vitest';
import { type Cure, explain, type Stand } from '../../core/index.ts';
import { example, standardSettings } from '../../src/state/project.ts';
import type { Project } from '../../src/state/snapshot.ts';
import { openStore, type Store } from '../../src/state/store.ts';
import { sayStep } from '../../src/words/walk/step.ts';
import type { Speech } from '../../src/words/words.ts';
import { curedProject, goesOnAt } from '../../src/wrong/cured.ts';

const speech: Speech = { dialect: 'uk', hand: 'right', units: 'cm' };

const opened: Store[] = [];
afterEach(() => {
  for (const store of opened.splice(0)) store.stop();
});

/** A panel as it is typed: sides of so many, the corners of two chains not counted. */
function open(sides: readonly number[], more: Partial<Project> = {}): Store {
  const texts = Object.fromEntries(sides.map((count, i) => [`side.${i}`, `${count}`]));
  const store = openStore({
    project: {
      ...example,
      sideCount: sides.length,
      counted: 'stitches-only',
      ...more,
      texts: { ...texts, corner: '2' },
    },
    settings: standardSettings,
    tab: 'wrong',
    place: 0,
    answered: [],
  });
  opened.push(store);
  return store;
}

type Journey = {
  name: string;
  sides: number[];
  more?: Partial<Project>;
  counts: Record<string, string>;
  stands: Stand;
  cure: Cure['kind'];
  /** What the walk must say on the way. */
  says: RegExp[];
};

const rounds = (edgingCount: number): Partial<Project> => ({ edgingCount });

const journeys: Journey[] = [
  {
    name: 'two foundation sides off, made up on the way',
    sides: [14, 14, 14, 14],
    counts: { 'worked.foundation.1': '11', 'worked.foundation.2': '13' },
    stands: { at: 'foundation' },
    cure: 'make-up',
    says: [/Work 2 in this stitch\./, /Miss the next stitch/],
  },
  {
    name: 'an edging side 1 short, eased in the join',
    sides: [32, 32, 32, 32],
    counts: { 'worked.edging.0.1': '31' },
    stands: { at: 'sewn' },
    cure: 'ease-in',
    says: [/Take 2 of the front with 1 of the back\./],
  },
  {
    name: 'an edging side 1 too long, eased in the join',
    sides: [32, 40, 32, 40],
    counts: { 'worked.edging.0.1': '41' },
    stands: { at: 'edging', edging: 0 },
    cure: 'ease-in',
    says: [/Take 2 of the back with 1 of the front\./],
  },
  {
    name: 'a short edging side, unravelled to its end and made up there',
    sides: [14, 12, 14, 12],
    counts: { 'worked.edging.0.1': '11' },
    stands: { at: 'edging', edging: 0 },
    cure: 'rip-back',
    says: [/Work 2 in this stitch\./],
  },
  {
    name: 'a foundation side 2 short of three rounds, made up in the first edging',
    sides: [40, 30, 40, 30],
    more: rounds(3),
    counts: { 'worked.foundation.1': '22' },
    stands: { at: 'foundation' },
    cure: 'make-up',
    says: [/Work 2 in this stitch\./],
  },
  {
    name: 'the first of two edgings 1 too long, made up in the second',
    sides: [40, 30, 40, 30],
    more: rounds(2),
    counts: { 'worked.edging.0.1': '29' },
    stands: { at: 'edging', edging: 0 },
    cure: 'make-up',
    says: [/Miss the next stitch/],
  },
  {
    name: 'a marker of ten too few on the foundation, unravelled',
    sides: [62, 62, 62, 62],
    counts: { 'worked.foundation.1': '50' },
    stands: { at: 'foundation' },
    cure: 'rip-back',
    says: [],
  },
  {
    name: 'a corner forgotten in the foundation, unravelled',
    sides: [30, 30, 30, 30],
    counts: { 'worked.foundation.1': '56' },
    stands: { at: 'foundation' },
    cure: 'rip-back',
    says: [],
  },
  {
    name: 'the ring 1 too many on its start side, made up on the way',
    sides: [40, 40, 40, 40],
    counts: { 'worked.foundation.0': '39' },
    stands: { at: 'foundation' },
    cure: 'make-up',
    says: [/Miss the next stitch/],
  },
  {
    name: 'a corner 2 late in the foundation, made up on the way',
    sides: [40, 40, 40, 40],
    counts: {
      'worked.foundation.0': '38',
      'worked.foundation.1': '40',
      'worked.foundation.2': '36',
      'worked.foundation.3': '38',
    },
    stands: { at: 'foundation' },
    cure: 'make-up',
    says: [/Miss the next stitch/, /Work 2 in this stitch\./],
  },
  {
    name: 'one total 1 short, nothing else counted, made up on the way',
    sides: [40, 40, 40, 40],
    counts: { 'worked.total.foundation': '159' },
    stands: { at: 'foundation' },
    cure: 'make-up',
    says: [/Work 2 in this stitch\./],
  },
  {
    name: "the edging's total 1 too many, the strip sewn on, eased in the join",
    sides: [40, 40, 40, 40],
    counts: { 'worked.total.edging.0': '169' },
    stands: { at: 'sewn' },
    cure: 'ease-in',
    says: [/Take 2 of the back with 1 of the front\./],
  },
  {
    name: 'every corner worked over, unravelled',
    sides: [30, 30, 30, 30],
    counts: {
      'worked.edging.0.0': '28',
      'worked.edging.0.1': '28',
      'worked.edging.0.2': '28',
      'worked.edging.0.3': '28',
    },
    stands: { at: 'edging', edging: 0 },
    cure: 'rip-back',
    says: [],
  },
  {
    name: 'the hidden stitch missed at every corner, eased in the join',
    sides: [44, 44, 44, 44],
    counts: { 'worked.edging.0.0': '43', 'worked.edging.0.1': '43' },
    stands: { at: 'sewn' },
    cure: 'ease-in',
    says: [/Take 2 of the front with 1 of the back\./],
  },
  {
    name: 'one side 2 too long and the next 2 short, sewn on, eased in the join',
    sides: [60, 60, 60, 60],
    counts: { 'worked.edging.0.1': '62', 'worked.edging.0.2': '58' },
    stands: { at: 'sewn' },
    cure: 'ease-in',
    says: [/Take 2 of the back with 1 of the front\./, /Take 2 of the front with 1 of the back\./],
  },
  {
    name: 'a hexagon with one foundation side 1 too long, made up on the way',
    sides: [30, 32, 34, 30, 32, 34],
    counts: { 'worked.foundation.3': '29' },
    stands: { at: 'foundation' },
    cure: 'make-up',
    says: [/Miss the next stitch/],
  },
  {
    name: 'a triangle with two corners a stitch late on the edging, unravelled',
    sides: [36, 36, 36],
    counts: { 'worked.edging.0.0': '37', 'worked.edging.0.1': '36', 'worked.edging.0.2': '35' },
    stands: { at: 'edging', edging: 0 },
    cure: 'rip-back',
    says: [],
  },
  {
    name: 'the join begun 2 places too far on, made again',
    sides: [40, 30, 40, 30],
    counts: { 'seen.drift.0': '-2', 'seen.drift.1': '-2', 'seen.left-over': '0' },
    stands: { at: 'join', side: 1 },
    cure: 'redo-join',
    says: [],
  },
];

describe('a cure that is taken is worked', () => {
  test.each(journeys)('$name', ({ sides, more, counts, stands, cure: kind, says }) => {
    const store = open(sides, more);
    for (const [field, text] of Object.entries(counts)) store.send({ type: 'TYPE', field, text });
    const before = store.snapshot();
    expect(before.problems).toEqual([]);
    const { explanations } = explain(before.making.plan, before.making.seen, { stands });
    const cure = explanations
      .filter(({ front }) => !front)
      .flatMap(({ cures }) => cures)
      .find((one) => one.kind === kind && one.then !== 'does-not-meet');
    if (!cure)
      throw new Error(
        `no ${kind} among ${explanations.flatMap(({ cures }) => cures.map((one) => one.kind))}`,
      );

    store.send({ type: 'OPEN', project: curedProject(before, cure), place: 0, answered: [] });
    const { making, problems, project } = store.snapshot();
    expect(problems).toEqual([]);
    expect(making.pairing.verdict.kind).toBe('meets');
    expect(making.pairing.gaps).toEqual([]);
    expect(project.adjustments).toEqual(cure.adjustments);

    const from = goesOnAt(making, cure, 0);
    const told: string[] = [];
    const done = new Set<number>();
    for (let i = from; i < making.steps.length; i++) {
      const step = making.steps.at(i);
      expect(step.mishap, `step ${i}`).toBeUndefined();
      for (const act of step.adjustments ?? []) done.add(act);
      const { act, check = '', caution = '' } = sayStep(step, making, speech);
      told.push([act, check, caution].join(' '));
    }
    for (const said of says)
      expect(told.filter((one) => said.test(one)).length, `${said}`).toBeGreaterThan(0);
    expect(told.filter((one) => /mishap|does not ask/i.test(one))).toEqual([]);
    // Every one of them is carried out at some step that is still to come.
    expect(done.size).toBe(cure.adjustments.length);

    store.send({ type: 'UNDO' });
    expect(store.snapshot().project).toEqual(before.project);
  });
});
