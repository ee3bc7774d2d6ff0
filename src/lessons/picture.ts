/** The picture of a question: what lies there now, with the places to tap numbered as the list beside it is. */
import { nothing, type SVGTemplateResult, svg } from 'lit-html';
import { items } from '../stitch/render.ts';
import type { Speech } from '../words/words.ts';
import type { Item } from './lesson.ts';
import { askedScene, type Spot } from './scenes.ts';

/** A tapped place is this part of the picture's width in radius: 46 px across where the picture is 300 px wide. */
export const TAP_SHARE = 13;

/** Tapping a place is the same as its button in the list, so the picture's own places are hidden from the list of controls. */
export function askedPicture(
  item: Item,
  speech: Speech,
  says: string,
  answer: (option: string) => void,
): SVGTemplateResult | typeof nothing {
  const { scene, frame, spots } = askedScene(item, speech);
  if (scene.length === 0) return nothing;
  const view = `${frame.x} ${frame.y} ${frame.width} ${frame.height}`;
  const radius = frame.width / TAP_SHARE;
  return svg`<svg class="stitch-drawing asked" viewBox=${view}>
    <g role="img" aria-label=${says}>${items(scene)}</g>
    <g aria-hidden="true">${spots.map((spot) => tap(spot, item, radius, answer))}</g>
  </svg>`;
}

function tap(
  { option, centre: [x, y] }: Spot,
  { question }: Item,
  radius: number,
  answer: (option: string) => void,
): SVGTemplateResult {
  const number = ((question?.options ?? []) as readonly string[]).indexOf(option) + 1;
  return svg`<g class="tap" @click=${() => answer(option)}>
    <circle class="tap-place" cx=${x} cy=${y} r=${radius}></circle>
    <text class="tap-number" x=${x} y=${y + radius * 0.36} font-size=${radius} text-anchor="middle">${number}</text>
  </g>`;
}
