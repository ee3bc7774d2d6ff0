/** One view of the table: what it shows, where it looks, and the motion it is in. */

import type { Part, SceneView, Sign } from '../draw-list.ts';
import type { Growth, ViewFrame } from '../painters/painter.ts';
import { between, type Camera, isEmpty, type Rect } from './camera.ts';
import type { Looking } from './looking.ts';
import { type Motion, STEP_MS, shareOf, wantsLessMotion } from './motion.ts';
import { anyMoved, signsBetween } from './sign-motion.ts';

export type ViewState = {
  id: SceneView['id'];
  pad: HTMLElement;
  region: Rect;
  scene: SceneView | null;
  looking: Looking | null;
  /** Camera and signs as drawn last, and the motion away from them. */
  from: { camera: Camera; signs: readonly Sign[] } | null;
  growth: Omit<Growth, 'share'> | null;
  motion: Motion | null;
  /** What a cancelled drag goes back to. */
  held: Looking | null;
};

export const NOWHERE: Rect = { x: 0, y: 0, width: 0, height: 0 };
/** More new marks than this at once are a jump, not a step. */
const MOST_GROWING = 6;

/** Ends any motion: what is shown is what is. */
export function settle(state: ViewState): void {
  state.motion = null;
  state.from = null;
  state.growth = null;
}

/** What to paint of a view at `now`; nothing where it has no room or no scene. */
export function frameOf(state: ViewState, now: number): ViewFrame[] {
  const { scene, looking, region } = state;
  if (scene === null || looking === null || isEmpty(region)) return [];
  const share = state.motion === null ? 1 : shareOf(state.motion, now);
  const { from } = state;
  return [
    {
      view: scene,
      region,
      camera: from === null ? looking.camera : between(from.camera, looking.camera, share),
      signs: from === null ? scene.signs : signsBetween(from.signs, scene.signs, share),
      growth: state.growth === null || share >= 1 ? null : { ...state.growth, share },
    },
  ];
}

/** Starts the motion from what is shown now to the new state, where there is something to move. */
export function startMotion(
  state: ViewState,
  before: SceneView | null,
  shownNow: ViewFrame | undefined,
): void {
  settle(state);
  if (before === null || shownNow === undefined || wantsLessMotion()) return;
  const { scene, looking, region } = state;
  const way = travel(shownNow.camera, looking!.camera, region);
  if (way > 1.2) return;
  const growth = growthOf(before.parts, scene!.parts);
  if (way === 0 && growth === null && !anyMoved(shownNow.signs, scene!.signs)) return;
  state.from = { camera: shownNow.camera, signs: shownNow.signs };
  state.growth = growth;
  state.motion = { start: performance.now(), length: STEP_MS };
}

/** How far a camera travels, in widths of the region. */
function travel(from: Camera, to: Camera, region: Rect): number {
  const way = Math.hypot(to.x - from.x, to.y - from.y) * Math.max(from.px, to.px);
  return way / Math.max(region.width, 1) + Math.abs(Math.log2(to.px / from.px)) / 4;
}

/** Marks made between two lists of parts, where it is a step and not a jump. */
function growthOf(before: readonly Part[], after: readonly Part[]): Omit<Growth, 'share'> | null {
  for (const part of after) {
    const old = before.find((one) => one.key === part.key && one.revision === part.revision);
    if (old === undefined || part.made <= old.made || part.made - old.made > MOST_GROWING) continue;
    return { part: part.key, from: old.made, to: part.made };
  }
  return null;
}
