/**
 * What a painter is told: views with where they look. It keeps what it can from the last time; nothing is
 * drawn but when told.
 */

import type { SceneView, Sign } from '../draw-list.ts';
import type { Inks } from '../glyphs/inks.ts';
import type { Viewport } from '../view/camera.ts';

/** Marks that have just been made and are still growing into place; `share` 0–1 of the way. */
export type Growth = { part: string; from: number; to: number; share: number };

export type ViewFrame = Viewport & {
  view: SceneView;
  /** Signs as they stand now, perhaps on their way. */
  signs: readonly Sign[];
  growth: Growth | null;
};

export type Painter = {
  kind: 'gpu' | 'flat';
  canvas: HTMLCanvasElement;
  resize(width: number, height: number, density: number): void;
  setInks(inks: Inks): void;
  paint(frames: readonly ViewFrame[]): void;
  destroy(): void;
};

/** Size of a mark that has begun to grow, as a share of its own. */
export const growthScale = (share: number): number => 0.55 + 0.45 * share;

/** A canvas and the GPU context it was given. */
export type GpuCanvas = { canvas: HTMLCanvasElement; context: WebGL2RenderingContext };
