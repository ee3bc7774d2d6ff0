/** The small piece of the miscount lesson: two rings of Vs, each back side numbered, gaps and surplus marked. */
import { type SVGTemplateResult, svg } from 'lit-html';
import type { Plan } from '../../core/index.ts';
import type { Speech } from '../words/words.ts';

const MIDDLE = 150;
const WIDE = 400;
/** Half a ring's side: the front lies outside, the back inside. */
const FRONT = 118;
const BACK = 92;

type Side = { x: number; y: number; dx: number; dy: number };

/**
 * Side j of the back as it is seen from its own right side: the first on top, as in every drawing, then on along
 * the way the round runs. Right-handed work runs anticlockwise, so side 2 lies on the left; left-handed on the right.
 */
function sideOf(j: number, half: number, hand: Speech['hand']): Side {
  const way = hand === 'right' ? 1 : -1;
  const centre = WIDE / 2;
  const sides: Side[] = [
    { x: centre + way * half, y: MIDDLE - half, dx: -way, dy: 0 },
    { x: centre - way * half, y: MIDDLE - half, dx: 0, dy: 1 },
    { x: centre - way * half, y: MIDDLE + half, dx: way, dy: 0 },
    { x: centre + way * half, y: MIDDLE + half, dx: 0, dy: -1 },
  ];
  return sides[j % 4] as Side;
}

/** A V that points along the side. */
function vee({ x, y, dx, dy }: Side, size: number, look: string): SVGTemplateResult {
  const half = size / 2;
  const angle = (Math.atan2(dy, dx) * 180) / Math.PI;
  return svg`<path class=${look} transform="translate(${x} ${y}) rotate(${angle})" d="M${-half} 0Q${-half * 0.2} ${-half * 1.1} ${half} ${-half * 0.8}M${-half} 0Q${-half * 0.2} ${half * 1.1} ${half} ${half * 0.8}"></path>`;
}

/** `half`: of the ring's side, which the row lies in the middle of; `pitch`: from one V to the next. */
type Row = { side: Side; half: number; count: number; pitch: number; look: string };

function row({ side, half, count, pitch, look }: Row): SVGTemplateResult[] {
  const size = pitch * 0.8;
  return Array.from({ length: count }, (_, i) => {
    const along = half - (count * pitch) / 2 + (i + 0.5) * pitch;
    return vee({ ...side, x: side.x + side.dx * along, y: side.y + side.dy * along }, size, look);
  });
}

/** Two chains turn each corner of a ring. */
function chains(half: number, look: string): SVGTemplateResult[] {
  const centre = WIDE / 2;
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([sx = 1, sy = 1]) => {
    const [x, y] = [centre + sx * (half + 3), MIDDLE + sy * (half + 3)];
    const turn = sx * sy * 45 + 90;
    return svg`<g transform="translate(${x} ${y}) rotate(${turn})">
      <ellipse class=${look} cx="-8.5" rx="7" ry="3.6"></ellipse><ellipse class=${look} cx="8.5" rx="7" ry="3.6"></ellipse>
    </g>`;
  });
}

/** `surplus` per back side; null before it is told. */
export function gapPicture(
  plan: Plan,
  surplus: readonly number[] | null,
  hand: Speech['hand'],
  says: string,
): SVGTemplateResult {
  const last = plan.edgings.at(-1) ?? plan.foundation;
  return svg`<svg class="gap-picture" viewBox="0 0 ${WIDE} 300" role="img" aria-label=${says}>
    ${chains(FRONT, 'gap-front')} ${chains(BACK, 'gap-back')}
    <text class="gap-view" x=${WIDE / 2} y=${MIDDLE - 4} text-anchor="middle">the back's</text>
    <text class="gap-view" x=${WIDE / 2} y=${MIDDLE + 18} text-anchor="middle">right side</text>
    ${plan.faces.map((face, j) =>
      sidePicture(j, hand, {
        front: plan.edge.sides[face] ?? 0,
        planned: last.sides[j] ?? 0,
        surplus: surplus?.[j] ?? 0,
      }),
    )}
  </svg>`;
}

type Counts = { front: number; planned: number; surplus: number };

function sidePicture(
  j: number,
  hand: Speech['hand'],
  { front, planned, surplus }: Counts,
): SVGTemplateResult {
  const pitch = (2 * BACK - 16) / Math.max(planned + Math.max(0, surplus), 1);
  const back = sideOf(j, BACK, hand);
  const label = sideOf(j, 58, hand);
  const end = BACK + ((planned + surplus - 0.5) * pitch) / 2;
  const mark = { x: back.x + back.dx * (end + pitch * 0.5), y: back.y + back.dy * (end + pitch * 0.5) };
  const proud = { x: back.x + back.dx * (end - pitch * 0.25), y: back.y + back.dy * (end - pitch * 0.25) };
  return svg`<g>
    ${row({ side: sideOf(j, FRONT, hand), half: FRONT, count: front, pitch: (2 * FRONT - 24) / Math.max(front, 1), look: 'gap-front' })}
    ${row({ side: back, half: BACK, count: planned + surplus, pitch, look: 'gap-back' })}
    ${surplus < 0 ? svg`<circle class="gap-none" cx=${mark.x} cy=${mark.y} r="11"></circle>` : ''}
    ${surplus > 0 ? svg`<circle class="gap-more" cx=${proud.x} cy=${proud.y} r="13"></circle><circle class="gap-more" cx=${proud.x} cy=${proud.y} r="9"></circle>` : ''}
    <text class="gap-label" x=${label.x + label.dx * 58} y=${label.y + label.dy * 58 + 6} text-anchor="middle">${j + 1}</text>
  </g>`;
}
