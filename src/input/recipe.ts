/** From typed text to what core asks for: the front's edge, and the choices for the back. */
import type { Choices, Corner, EdgeInput } from '../../core/index.ts';
import { becomesField, openSideField } from '../state/becomes-fields.ts';
import { fieldNames } from '../state/fields.ts';
import type { Project } from '../state/snapshot.ts';
import { numberFrom, type Reader, readField } from './typed.ts';
import { readWhole } from './whole-number.ts';

/** The front as it was counted. Where a number cannot be read one that does no harm stands, so that all else is judged. */
export function readFront(reader: Reader): EdgeInput {
  const { project, problems } = reader;
  const sides = Array.from({ length: Math.max(1, project.sideCount) }, (_, side) => {
    const field = fieldNames.side(side);
    if (project.texts[field] === undefined) problems.push({ at: field, code: 'empty', params: {} });
    // Too many is core's to say: how many a side may have depends on the corners its count takes in.
    return numberFrom(reader, field, Number.POSITIVE_INFINITY) ?? harmless;
  });
  return project.sideCount === 0
    ? { sides, corner: [], counted: 'stitches-only' }
    : { sides, corner: readCorners(reader), counted: project.counted };
}

const harmless = 1000;

const usualSize = ({ cornerMade }: Project): number => (cornerMade === 'chain' ? 2 : 1);

function readCorners(reader: Reader): Corner | Corner[] {
  const { project } = reader;
  const { cornerMade: made, cornersDiffer, sideCount } = project;
  const each = fieldNames.eachCorner;
  if (!cornersDiffer) return { made, size: numberFrom(reader, each) ?? usualSize(project) };
  // One size for all was asked for before; it stands for the corners that have none of their own yet.
  const size = readField(project, each).value ?? usualSize(project);
  return Array.from({ length: sideCount }, (_, corner) => ({
    made,
    size: numberFrom(reader, fieldNames.corner(corner)) ?? size,
  }));
}

/** The choices. What is not typed is left to core. */
export function readChoices(reader: Reader): Choices {
  const { project } = reader;
  const isRound = project.sideCount === 0;
  const lead = isRound ? undefined : numberFrom(reader, fieldNames.lead);
  const fromCorner = numberFrom(reader, fieldNames.joinFromCorner);
  const markerEvery = numberFrom(reader, fieldNames.markerEvery);
  return {
    ...project.choices,
    edgings: Array.from({ length: project.edgingCount }, (_, n) => readEdging(reader, n)),
    start: { side: frontSide(reader, fieldNames.startSide), ...(lead === undefined ? {} : { lead }) },
    joinStart: {
      side: frontSide(reader, fieldNames.joinSide),
      ...(fromCorner === undefined ? {} : { fromCorner }),
    },
    ...openSide(reader),
    ...(markerEvery === undefined ? {} : { markerEvery }),
  };
}

/** A bag or pocket leaves a side open; a panel without sides to tell apart has none. */
function openSide({ project: { sideCount, texts } }: Reader): Pick<Choices, 'open'> {
  if (texts[becomesField] !== 'bag' || sideCount < 2) return {};
  const side = readWhole(texts[openSideField] ?? '1');
  return { open: side.ok ? Math.min(sideCount, Math.max(1, side.value)) - 1 : 0 };
}

/** Index of the front side told in a field; a round panel has one. */
const frontSide = (reader: Reader, field: string): number =>
  reader.project.sideCount === 0 ? 0 : (numberFrom(reader, field) ?? 1) - 1;

/** An edging's corners are the front's: core settles that. */
function readEdging(reader: Reader, n: number): NonNullable<Choices['edgings']>[number] {
  if (reader.project.sideCount === 0)
    return { arm: 0, increase: numberFrom(reader, fieldNames.increase(n)) ?? 0 };
  const before = numberFrom(reader, fieldNames.armBefore(n)) ?? 1;
  return { arm: [before, numberFrom(reader, fieldNames.armAfter(n)) ?? before] };
}
