import { describe, expect, it } from 'vitest';
import { describePosition } from '../../src/drawing/describe.ts';
import { twinOf } from '../../src/drawing/twin.ts';
import type { Pointed } from '../../src/state/snapshot.ts';
import type { Speech } from '../../src/words/words.ts';
import { CHAINS, makingOf, ONE_SHORT, RECTANGLE } from './drawing-making.ts';

const UK: Speech = { dialect: 'uk', hand: 'right', units: 'cm' };
const US: Speech = { ...UK, dialect: 'us' };
const making = makingOf(RECTANGLE);
const short = makingOf(RECTANGLE, { mishaps: [ONE_SHORT] });
const front = (node: number): Pointed => ({ round: 'front', edging: 0, node });
const edging = (node: number): Pointed => ({ round: 'edging', edging: 0, node });
const foundation = (node: number): Pointed => ({ round: 'foundation', edging: 0, node });

describe('a position in words', () => {
  it('has its number from 1, what it is and whom it meets', () => {
    expect(describePosition(making, front(0), UK)).toEqual({
      title: 'Front, side 1, stitch 1',
      lines: ['Stitch, 1 of 58.', expect.stringMatching(/^Meets the edging, /)],
    });
    // Two chains of the first corner follow its 58 stitches.
    expect(describePosition(making, front(59), UK)!.title).toBe('Front, corner 1, chain 2');
    expect(describePosition(making, front(60), UK)!.title).toBe('Front, side 2, stitch 1');
  });

  it('names the stitch in the terms chosen', () => {
    expect(describePosition(making, edging(5), UK)!.lines[0]).toMatch(/^Double crochet, 6 of /);
    expect(describePosition(making, edging(5), US)!.lines[0]).toMatch(/^Single crochet, 6 of /);
    expect(describePosition(making, foundation(5), UK)!.lines[0]).toMatch(/^Foundation treble, /);
    expect(describePosition(making, foundation(5), US)!.lines[0]).toMatch(/^Foundation double crochet, /);
  });

  it('says what an edging stitch is worked into, and nothing of the kind for a chain', () => {
    const { into } = making.worked.edgings[0]!;
    const node = 5;
    const expected = describePosition(making, foundation(into[node]!), UK)!.title;
    const line = describePosition(making, edging(node), UK)!.lines.find((one) => one.startsWith('Worked'))!;
    expect(line.toLowerCase()).toContain(expected.toLowerCase());
    const chain = making.worked.edgings[0]!.turns[0]!;
    expect(describePosition(making, edging(chain), UK)!.lines.some((one) => one.startsWith('Worked'))).toBe(
      false,
    );
  });

  it('has partners that name each other', () => {
    for (let node = 0; node < making.pairing.front; node += 7) {
      const there = describePosition(making, front(node), UK)!;
      const back = twinOf({ making, step: making.steps.at(0) }, UK);
      const found = back.find(front(node))!;
      const { partner } = back.rows[found.row]!.cell(found.cell);
      const other = describePosition(making, partner!, UK)!;
      expect(other.lines.at(-1)!.toLowerCase()).toContain(there.title.toLowerCase());
      expect(there.lines.at(-1)!.toLowerCase()).toContain(other.title.toLowerCase());
    }
  });

  it('says where there is no partner, once for one stitch short', () => {
    const lines = Array.from({ length: 196 }, (_, node) => describePosition(short, front(node), UK)!.lines);
    expect(lines.filter((one) => one.includes('No partner.'))).toHaveLength(1);
  });

  it('is null where the making has no such place', () => {
    expect(describePosition(making, front(196), UK)).toBeNull();
    expect(describePosition(making, front(-1), UK)).toBeNull();
    expect(describePosition(making, { round: 'edging', edging: 3, node: 0 }, UK)).toBeNull();
  });

  it('tells no side on a round panel', () => {
    const round = makingOf({ sides: [90], corner: [], counted: 'stitches-only' });
    expect(describePosition(round, front(4), UK)!.title).toBe('Front, stitch 5');
  });
});

describe('the list of positions', () => {
  it('has every position of every round once, in working order', () => {
    const { rows } = twinOf({ making, step: making.steps.at(0) }, UK);
    const count = (name: string) =>
      rows.filter(({ round }) => round === name).reduce((sum, row) => sum + row.length, 0);
    expect(count('front')).toBe(196);
    expect(count('foundation')).toBe(making.worked.foundation.length);
    expect(count('edging')).toBe(making.worked.edgings[0]!.length);
    expect(rows[0]!.name).toBe('Front, side 1: 58 stitches');
    expect(rows[1]!.name).toBe('Front, corner 1: 2 chains');
  });

  it('finds a position again, and gives the nearest cell outside a row', () => {
    const twin = twinOf({ making, step: making.steps.at(0) }, UK);
    for (const at of [front(0), front(195), foundation(77), edging(100)]) {
      const { row, cell } = twin.find(at)!;
      expect(twin.rows[row]!.cell(cell).at).toEqual(at);
    }
    expect(twin.find(front(196))).toBeNull();
    expect(twin.rows[0]!.cell(999).at).toEqual(front(57));
    expect(twin.rows[0]!.cell(-5).at).toEqual(front(0));
  });

  it('knows what is made, what is to come and what has no partner', () => {
    const place = short.steps.stepOf('edging', 100, 0);
    const twin = twinOf({ making: short, step: short.steps.at(place) }, UK);
    const states = twin.rows.flatMap((row) => Array.from({ length: row.length }, (_, i) => row.cell(i)));
    const of = (round: string, state: string) =>
      states.filter((cell) => cell.at.round === round && cell.state === state).length;
    expect(of('edging', 'made')).toBe(short.steps.at(place).done);
    expect(of('edging', 'to-come')).toBe(short.worked.edgings[0]!.length - short.steps.at(place).done);
    expect(of('foundation', 'to-come')).toBe(0);
    expect(of('front', 'alone')).toBe(1);
    expect(of('front', 'made')).toBe(195);
  });

  it('lists a million positions without building them', () => {
    const sides = Array.from({ length: 10 }, () => 99_000);
    const large = makingOf({ sides, corner: CHAINS, counted: 'stitches-only' });
    const from = performance.now();
    const twin = twinOf({ making: large, step: large.steps.at(5) }, UK);
    expect(twin.rows.length).toBeLessThan(100);
    expect(twin.rows.reduce((sum, row) => sum + row.length, 0)).toBeGreaterThan(2_900_000);
    expect(twin.rows[4]!.cell(50_000).title).toBe('Front, side 3, stitch 50001');
    // Generous for a busy machine: building cells would take minutes.
    expect(performance.now() - from).toBeLessThan(3000);
  });
});
