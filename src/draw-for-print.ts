/** The drawing on paper: the same lines as on the table, in black on white, whatever the theme. */
import { buildScene } from './drawing/scene.ts';
import { Tone } from './table/draw-list.ts';
import { type Inks, mixInks } from './table/glyphs/inks.ts';
import { pngOf, svgPicture } from './table/painters/export.ts';
import { documentOf, elementOf, type SvgNode } from './table/painters/svg-node.ts';
import type { DrawForPrint, Room } from './take-along/sheets/pictures.ts';
import { LIGHT, type Theme } from './theme/theme.ts';

const black = '#000000';

/** Black alone is enough: the front is white, the foundation light, the edging between them. */
const PRINT: Theme = {
  ...LIGHT,
  paper: '#ffffff',
  raised: '#ffffff',
  ink: black,
  muted: '#333333',
  line: '#999999',
  edge: '#555555',
  gap: black,
  gapText: black,
  marker: black,
  seam: black,
  yarns: { front: '#ffffff', edging: '#9c9c9c', foundation: '#e2e2e2' },
};

/** Outlines and words in full black: a printer draws grey lines as dots. */
function printInks(): Inks {
  const inks = mixInks(PRINT, PRINT.yarns, true);
  const tones = inks.tones.map((ink, tone) =>
    tone === Tone.muted || tone === Tone.paper ? ink : { ...ink, line: black, text: black },
  );
  return { ...inks, tones };
}

/** Paper shows no plies of yarn at this size: they would print as grey, and weigh a hundred times as much. */
const DENSITY = 1;
/** CSS px across a picture to keep. */
const ACROSS = 900;
/** Words on a drawing are made for a screen: on paper they are so much smaller. */
const SMALLER = 1.4;

/** As wide as its room lets it be: a tall picture is drawn for less width, so that its words stay legible. */
function fitted(draw: (across: number) => SvgNode, { width, height }: Room): SvgNode {
  let across = width * SMALLER;
  let picture = draw(across);
  // Words keep their size while the lines shrink: a few rounds come near enough.
  for (let round = 0; round < 4; round++) {
    const over = Number(picture.attributes.height) / (height * SMALLER);
    if (over <= 1) break;
    across /= over;
    picture = draw(across);
  }
  return picture;
}

export const drawForPrint: DrawForPrint = ({ making, settings }, which) => {
  const arrangement = which === 'ring' ? 'diagram' : 'together';
  const { hand } = settings;
  const scene = buildScene({
    making,
    settings: { hand, arrangement },
    step: making.steps.at(0),
    pointed: null,
    preview: true,
    hasClose: false,
  });
  const view = scene.views.find(({ id }) => id === 'whole') ?? null;
  const inks = printInks();
  const onPaper = (across: number) => svgPicture(view, inks, { title: '', across, density: DENSITY });
  return {
    element: (room) => elementOf(fitted(onPaper, room)),
    svg: (title) => documentOf(svgPicture(view, inks, { title, across: ACROSS })),
    png: (widthPx) => pngOf(view, inks, widthPx),
  };
};
