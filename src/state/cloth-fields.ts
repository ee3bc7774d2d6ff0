/**
 * The fields of the cloth: one row each, with how its text is read and its bounds. Lengths are bounded in mm.
 * What is chosen by pressing is kept as text too, so that undo, keeping and links carry it.
 */
import { becomesField, openSideField } from './becomes-fields.ts';
import type { Field } from './snapshot.ts';

export type ClothFieldRow =
  | { reads: 'length' | 'long'; least: number; most: number }
  | { reads: 'number' | 'whole'; least: number; most: number }
  | { reads: 'choice'; of: readonly string[] };

const length = (least: number, most: number): ClothFieldRow => ({ reads: 'length', least, most });
const whole = (least: number, most: number): ClothFieldRow => ({ reads: 'whole', least, most });
const number = (least: number, most: number): ClothFieldRow => ({ reads: 'number', least, most });
const choice = (...of: string[]): ClothFieldRow => ({ reads: 'choice', of });
const money = number(0, 100_000);
const panel = length(1, 20_000);
const mostSides = 24;

/** Pitches are measured on a stretch: so many stitches are so long. */
export type Stretch = 'front' | 'top' | 'base';
export type YarnField = 'foundation' | 'edging' | 'join';

export const clothFields = {
  front: 'cloth.front',
  becomes: becomesField,
  openSide: openSideField,
  outline: 'cloth.outline',
  width: (reading: 0 | 1): Field => `cloth.width.${reading}`,
  height: (reading: 0 | 1): Field => `cloth.height.${reading}`,
  diameter: (reading: 0 | 1): Field => `cloth.diameter.${reading}`,
  side: (side: number): Field => `cloth.side.${side}`,
  diagonal: (which: number): Field => `cloth.diagonal.${which}`,
  depth: 'cloth.depth',
  frontEdge: 'cloth.front-edge',
  edging: 'cloth.edging',
  rule: 'cloth.rule',
  allowance: 'cloth.allowance',
  stretchStitches: (of: Stretch): Field => `cloth.stretch-stitches.${of}`,
  stretchLength: (of: Stretch): Field => `cloth.stretch-length.${of}`,
  spacing: 'cloth.spacing',
  paper: 'cloth.paper',
  sewing: 'cloth.sewing',
  thickness: 'cloth.thickness',
  working: 'cloth.working',
  tail: 'cloth.tail',
  yarnStitches: (part: YarnField): Field => `cloth.yarn-stitches.${part}`,
  yarnLength: (part: YarnField): Field => `cloth.yarn-length.${part}`,
  yarnGrams: (part: YarnField): Field => `cloth.yarn-grams.${part}`,
  ballGrams: (part: 'foundation' | 'edging'): Field => `cloth.ball-grams.${part}`,
  ballLength: (part: 'foundation' | 'edging'): Field => `cloth.ball-length.${part}`,
  left: 'cloth.left',
  weighedBefore: 'cloth.weighed.before',
  weighedAfter: 'cloth.weighed.after',
  pieces: 'cloth.pieces',
  clothWidth: 'cloth.cloth-width',
  way: 'cloth.way',
  repeat: 'cloth.repeat',
  padRule: 'cloth.pad-rule',
  wantedFrom: 'cloth.wanted-from',
  wantedWidth: 'cloth.wanted-width',
  wantedHeight: 'cloth.wanted-height',
  multiple: 'cloth.multiple',
  plus: 'cloth.plus',
  parity: 'cloth.parity',
  price: (of: Price): Field => `cloth.price.${of}`,
} as const;

const prices = ['foundation-ball', 'edging-ball', 'cloth', 'pad', 'thread', 'hour'] as const;
export type Price = (typeof prices)[number];

const stretches: readonly Stretch[] = ['front', 'top', 'base'];
const yarns: readonly YarnField[] = ['foundation', 'edging', 'join'];
const balls = ['foundation', 'edging'] as const;
const readings = [0, 1] as const;
const f = clothFields;

const rows = new Map<Field, ClothFieldRow>([
  [f.front, choice('panel', 'cloth')],
  [f.becomes, choice('cushion', 'bag', 'cover')],
  [f.openSide, whole(1, mostSides)],
  [f.outline, choice('rectangle', 'sides')],
  ...readings.flatMap((n): [Field, ClothFieldRow][] => [
    [f.width(n), panel],
    [f.height(n), panel],
    [f.diameter(n), panel],
  ]),
  ...Array.from({ length: mostSides }, (_, n): [Field, ClothFieldRow] => [f.side(n), panel]),
  ...Array.from({ length: mostSides }, (_, n): [Field, ClothFieldRow] => [f.diagonal(n), panel]),
  [f.depth, length(1, 500)],
  [f.frontEdge, length(0, 500)],
  [f.edging, length(0, 500)],
  [f.rule, choice('snug', 'exact', 'own')],
  [f.allowance, length(0, 500)],
  ...stretches.flatMap((of): [Field, ClothFieldRow][] => [
    [f.stretchStitches(of), whole(1, 1000)],
    [f.stretchLength(of), length(1, 5000)],
  ]),
  [f.spacing, length(5, 1000)],
  [f.paper, choice('a4', 'letter')],
  [f.sewing, choice('hand', 'machine')],
  [f.thickness, length(0.1, 50)],
  [f.working, length(200, 3000)],
  [f.tail, length(0, 200)],
  ...yarns.flatMap((part): [Field, ClothFieldRow][] => [
    [f.yarnStitches(part), whole(1, 10_000)],
    [f.yarnLength(part), length(1, 100_000)],
    [f.yarnGrams(part), number(0.1, 10_000)],
  ]),
  ...balls.flatMap((part): [Field, ClothFieldRow][] => [
    [f.ballGrams(part), number(1, 10_000)],
    [f.ballLength(part), { reads: 'long', least: 1000, most: 10_000_000 }],
  ]),
  [f.left, number(0, 100_000)],
  [f.weighedBefore, number(0.1, 100_000)],
  [f.weighedAfter, number(0, 100_000)],
  [f.pieces, whole(1, 1000)],
  [f.clothWidth, length(50, 5000)],
  [f.way, choice('no', 'yes')],
  [f.repeat, length(1, 5000)],
  [f.padRule, choice('usual', 'full', 'same')],
  [f.wantedFrom, choice('size', 'pad')],
  [f.wantedWidth, panel],
  [f.wantedHeight, panel],
  [f.multiple, whole(1, 1000)],
  [f.plus, whole(0, 1000)],
  [f.parity, choice('any', 'odd', 'even')],
  ...prices.map((of): [Field, ClothFieldRow] => [f.price(of), money]),
]);

export const clothRowOf = (field: Field): ClothFieldRow | undefined => rows.get(field);
export const isClothField = (field: Field): boolean => rows.has(field);
export const clothFieldNames: readonly Field[] = [...rows.keys()];
