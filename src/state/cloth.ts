/**
 * What follows for the cloth from what was typed: read when it is first asked for, and again when the project, the
 * making or the units are others. Its own problems stand in nobody's way: the walk goes on without a measure.
 */
import {
  type ClothInput,
  type ClothPlan,
  type ClothShape,
  cutCloth,
  meanOf,
  type Note,
  perimeter,
  pieceSides,
  pinsFor,
  pinsForRound,
  sewByHand,
} from '../../core/index.ts';
import { type LengthUnit, readDecimal, readLength } from '../input/length.ts';
import { clothRowOf, clothFields as f, type Stretch } from './cloth-fields.ts';
import type { Becomes, Cloth, Measures } from './cloth-types.ts';
import type { Field, Making, Project, Snapshot } from './snapshot.ts';

/** Defaults that are our own choice, told where they stand. mm. */
export const clothDefaults = { spacing: 50, thickness: 4, working: 500, tail: 80 } as const;

export function readMeasures(texts: Project['texts'], units: LengthUnit): Measures {
  const values = new Map<Field, number>();
  const problems: Note[] = [];
  for (const [field, text] of Object.entries(texts)) {
    const row = clothRowOf(field);
    if (!row || row.reads === 'choice' || text.trim() === '') continue;
    const isLength = row.reads === 'length' || row.reads === 'long';
    const read = isLength
      ? readLength(longUnit(text, row.reads, units), units, row.most)
      : readDecimal(text, row.most);
    const bounds = { least: row.least, most: row.most, reads: row.reads };
    if (!read.ok) problems.push({ at: field, code: read.code, params: bounds });
    else if (row.reads === 'whole' && !Number.isInteger(read.value))
      problems.push({ at: field, code: 'not-whole', params: bounds });
    else if (read.value < row.least) problems.push({ at: field, code: 'too-small', params: bounds });
    else if (read.value > row.most) problems.push({ at: field, code: 'too-large', params: bounds });
    else values.set(field, read.value);
  }
  return {
    problems,
    value: (field) => values.get(field),
    chosen: <T extends string>(field: Field, standard: T): T => {
      const row = clothRowOf(field);
      const text = texts[field];
      return row?.reads === 'choice' && text !== undefined && row.of.includes(text) ? (text as T) : standard;
    },
  };
}

/** A ball band names metres or yards. */
function longUnit(text: string, reads: 'length' | 'long', units: LengthUnit): string {
  if (reads === 'length') return text;
  const bare = /[a-z]\s*$/i.test(text.replace(/\u00a0(cm|in)$/, ''));
  if (bare) return text;
  const isInch = text.endsWith('\u00a0in') || (!text.endsWith('\u00a0cm') && units === 'inch');
  return `${text.replace(/\u00a0(cm|in)$/, '')} ${isInch ? 'yd' : 'm'}`;
}

/** What of the making bears on the cloth. */
type Piece = Pick<Making, 'edge' | 'plan'>;

export function clothOf(project: Project, units: LengthUnit, making: Piece): Cloth {
  const measures = readMeasures(project.texts, units);
  const isRound = making.edge.corners.length === 0;
  const k = making.edge.sides.length;
  const shape = isRound
    ? 'round'
    : k === 4 && measures.chosen<'rectangle' | 'sides'>(f.outline, 'rectangle') === 'rectangle'
      ? 'rectangle'
      : 'polygon';
  const asked = askedShape(measures, shape, k);
  const missing = asked.missing.map((at): Note => ({ at, code: 'empty', params: {} }));
  const depth = measures.value(f.depth);
  const common = {
    measures,
    becomes: measures.chosen<Becomes>(f.becomes, 'cushion'),
    isMirrored: measures.chosen<'panel' | 'cloth'>(f.front, 'panel') === 'cloth',
    shape,
    spacing: measures.value(f.spacing) ?? clothDefaults.spacing,
    depth,
    isByMachine: measures.chosen<'hand' | 'machine'>(f.sewing, 'hand') === 'machine',
  } as const;
  const nothing = { plan: null, pins: null, sewing: null };
  const needed = [
    ...missing,
    ...(depth === undefined ? [{ at: f.depth, code: 'empty', params: {} }] : []),
    ...missingRule(measures),
  ];
  const unread = new Set(measures.problems.map(({ at }) => at));
  const problems = [...measures.problems, ...needed.filter(({ at }) => !unread.has(at))];
  if (!asked.shape || depth === undefined || needed.length > 0)
    return { ...common, ...nothing, problems, notes: asked.notes };
  const cut = cutCloth(inputOf(measures, asked, depth, making));
  if (!cut.ok)
    return {
      ...common,
      ...nothing,
      problems: [
        ...problems,
        ...cut.problems.map((problem) => ({ ...problem, at: fieldOfCore(problem.at) })),
      ],
      notes: asked.notes,
    };
  const plan = cut.value;
  const back = backSides(plan, making);
  const sides = back.map(({ cut: length, stitches }) => ({ length, stitches }));
  return {
    ...common,
    problems,
    notes: [...asked.notes, ...plan.notes],
    plan,
    pins: isRound
      ? pinsForRound(sides[0] as (typeof sides)[number], common.spacing)
      : pinsFor(sides, common.spacing),
    sewing: sewByHand({
      sides: back.map(({ seam, stitches }) => ({ seam, stitches })),
      hasCorners: !isRound,
      thickness: measures.value(f.thickness) ?? clothDefaults.thickness,
      working: measures.value(f.working) ?? clothDefaults.working,
      tail: measures.value(f.tail) ?? clothDefaults.tail,
    }),
  };
}

type Asked = { shape: ClothShape | null; missing: Field[]; notes: Note[]; give: number };

/** The panel as measured: two readings of a length are one, and a second that is missing is no fault. */
function askedShape(measures: Measures, shape: ClothShape['shape'], k: number): Asked {
  const notes: Note[] = [];
  const missing: Field[] = [];
  let give = 0;
  const twice = (first: Field, second: Field): number => {
    const readings = [measures.value(first), measures.value(second)].filter((one) => one !== undefined);
    if (readings.length === 0) {
      missing.push(first);
      return 0;
    }
    const mean = meanOf(readings, first);
    notes.push(...mean.notes);
    give = Math.max(give, mean.give);
    return mean.length;
  };
  const diagonals = (count: number): number[] | undefined => {
    const all = Array.from({ length: count }, (_, n) => measures.value(f.diagonal(n))).filter(
      (one) => one !== undefined,
    );
    return count > 0 && all.length === count ? all : undefined;
  };
  if (shape === 'round') {
    const diameter = twice(f.diameter(0), f.diameter(1));
    return { shape: { shape, diameter }, missing, notes, give };
  }
  if (shape === 'rectangle') {
    const width = twice(f.width(0), f.width(1));
    const height = twice(f.height(0), f.height(1));
    const both = diagonals(2) as [number, number] | undefined;
    return { shape: { shape, width, height, ...(both && { diagonals: both }) }, missing, notes, give };
  }
  // A side left empty is as long as the one before it.
  const sides: number[] = [];
  for (let side = 0; side < k; side++) {
    const length = measures.value(f.side(side)) ?? sides[side - 1];
    if (length === undefined) missing.push(f.side(0));
    else sides.push(length);
  }
  const across = diagonals(k - 3);
  return {
    shape: { shape, sides, ...(across && { diagonals: across }) },
    missing: missing.slice(0, 1),
    notes,
    give,
  };
}

const missingRule = (measures: Measures): Note[] =>
  measures.chosen<'snug' | 'exact' | 'own'>(f.rule, 'snug') === 'own' &&
  measures.value(f.allowance) === undefined
    ? [{ at: f.allowance, code: 'empty', params: {} }]
    : [];

/** mm a stitch, from a stretch that was counted and measured. */
export function pitchOf(measures: Measures, of: Stretch): number | undefined {
  const stitches = measures.value(f.stretchStitches(of));
  const length = measures.value(f.stretchLength(of));
  return stitches === undefined || length === undefined ? undefined : length / stitches;
}

function inputOf(measures: Measures, asked: Asked, depth: number, making: Piece): ClothInput {
  const rule = measures.chosen<'snug' | 'exact' | 'own'>(f.rule, 'snug');
  const given = <K extends string>(key: K, value: number | undefined) =>
    (value === undefined ? {} : { [key]: value }) as { [key in K]?: number };
  const { plan } = making;
  const inFrontOrder = (sides: readonly number[]): number[] =>
    plan.edge.sides.map((_, side) => sides[plan.faces.indexOf(side)] as number);
  return {
    panel: asked.shape as ClothShape,
    depth,
    rule: rule === 'own' ? { allowance: measures.value(f.allowance) ?? 0 } : rule,
    ...given('frontEdge', measures.value(f.frontEdge)),
    ...given('edging', measures.value(f.edging)),
    pitch: {
      ...given('front', pitchOf(measures, 'front')),
      ...given('top', pitchOf(measures, 'top')),
      ...given('base', pitchOf(measures, 'base')),
    },
    counts: {
      front: plan.edge.sides,
      strip: inFrontOrder(plan.foundation.sides),
      edging: inFrontOrder(plan.edgings.at(-1)?.sides ?? []),
    },
    give: asked.give,
  };
}

export type BackSide = { cut: number; seam: number; stitches: number; frontSide: number };

/** The strip's sides in the order in which it was worked. */
export function backSides(
  plan: ClothPlan,
  { plan: { faces, foundation } }: Pick<Making, 'plan'>,
): BackSide[] {
  const [cuts, seams] = [pieceSides(plan.cut), pieceSides(plan.seam)];
  return faces.map((frontSide, side) => ({
    cut: cuts[frontSide] as number,
    seam: seams[frontSide] as number,
    stitches: foundation.sides[side] as number,
    frontSide,
  }));
}

export const seamLength = (plan: ClothPlan): number => perimeter(plan.seam);

/** The field in which a problem of core's can be mended. */
export function fieldOfCore(at: string): Field {
  const indexed = /^panel\.(sides|diagonals)\[(\d+)\]/.exec(at);
  if (indexed) return indexed[1] === 'sides' ? f.side(Number(indexed[2])) : f.diagonal(Number(indexed[2]));
  const known: Record<string, Field> = {
    'panel.width': f.width(0),
    'panel.height': f.height(0),
    'panel.diameter': f.diameter(0),
    'panel.diagonals': f.diagonal(0),
    'panel.sides': f.side(0),
    depth: f.depth,
    'rule.allowance': f.allowance,
    frontEdge: f.frontEdge,
    edging: f.edging,
    'pitch.front': f.stretchLength('front'),
    'pitch.top': f.stretchLength('top'),
    'pitch.base': f.stretchLength('base'),
  };
  return known[at] ?? at;
}

let last: { project: Project; units: LengthUnit; making: Making; cloth: Cloth } | null = null;

/** The cloth of a snapshot; the last one is kept, since most events change nothing of it. */
export function clothOfSnapshot({
  project,
  settings,
  making,
}: Pick<Snapshot, 'project' | 'settings' | 'making'>): Cloth {
  const { units } = settings;
  if (last?.project !== project || last.units !== units || last.making !== making)
    last = { project, units, making, cloth: clothOf(project, units, making) };
  return last.cloth;
}
