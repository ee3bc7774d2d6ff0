/** The drawings as files, named after the project. */
import { pieceBox } from '../../core/index.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import { layoutOf, piecesOf, selvedge } from '../state/cloth-stock.ts';
import { fileNameOf } from '../take-along/save.ts';
import { FILE_NAMES } from '../words/cloth/figures.ts';
import { type Figure, writeFigure } from './figure.ts';
import { layoutPicture } from './layout-picture.ts';
import { laidPicture, turnedPicture } from './picture.ts';
import type { Place } from './place.ts';

/** Null until there is something to draw. */
export function figureOf(
  { cloth, snapshot }: Pick<Place, 'cloth' | 'snapshot'>,
  what: keyof typeof FILE_NAMES,
): Figure | null {
  const { plan, measures } = cloth;
  if (!plan) return null;
  const { units } = snapshot.settings;
  const { faces } = snapshot.making.plan;
  if (what === 'turned') return turnedPicture({ plan, faces, units });
  if (what === 'laid') {
    const depth = cloth.depth ?? 0;
    // An edging that is not measured is drawn half as deep as the foundation.
    const edging = measures.value(f.edging) ?? measures.value(f.frontEdge) ?? depth / 2;
    return laidPicture({ plan, depth, edging, faces, pins: cloth.pins ?? [], units });
  }
  const laid = layoutOf(cloth);
  const clothWidth = measures.value(f.clothWidth);
  if (!laid?.ok || clothWidth === undefined) return null;
  return layoutPicture({
    layout: laid.value,
    clothWidth,
    selvedge,
    piece: pieceBox(plan.cut),
    count: piecesOf(cloth),
    units,
  });
}

export function fileOf(
  place: Pick<Place, 'cloth' | 'snapshot'>,
  what: keyof typeof FILE_NAMES,
): { name: string; text: string } | null {
  const figure = figureOf(place, what);
  if (!figure) return null;
  const { project, settings } = place.snapshot;
  const title = [project.name, FILE_NAMES[what]].filter(Boolean).join(', ');
  return { name: fileNameOf(title, 'svg'), text: writeFigure(figure, title, settings.yarns) };
}
