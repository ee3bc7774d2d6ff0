/** What a table offers and what it asks for: its public face. */
import type { ThemeName, Yarns } from '../theme/theme.ts';
import type { Scene, SceneView, Spot } from './draw-list.ts';
import type { Painter } from './painters/painter.ts';
import type { Rect } from './view/camera.ts';

export type ViewId = SceneView['id'];

export type TableOptions = {
  theme: ThemeName;
  yarns: Yarns;
  /** What each view is called for someone who does not see it. Without names the views take no focus. */
  names?: Record<ViewId, string>;
  /** The pointer is over another mark, or over none. */
  onPoint?: (spot: Spot | null) => void;
  /** A mark was tapped or clicked. */
  onChoose?: (spot: Spot) => void;
  /** A hand moved a view: its new centre in world units and CSS px a stitch. */
  onMoved?: (view: ViewId, centre: { x: number; y: number }, px: number) => void;
  /** Leave the GPU alone; for tests and machines that ask for it. */
  flat?: boolean;
};

export type Table = {
  draw(scene: Scene): void;
  setTheme(theme: ThemeName, yarns: Yarns): void;
  /** Where the two views lie, in CSS px within the host. A view of no size is not drawn. */
  setRegions(regions: Record<ViewId, Rect>): void;
  setNames(names: Record<ViewId, string>): void;
  zoom(view: ViewId, factor: number): void;
  /** Moves the drawing by CSS px. */
  pan(view: ViewId, dx: number, dy: number): void;
  /** Goes back to where the scene asks the view to look. */
  fit(view: ViewId): void;
  /** Looks at a place in the world, keeping the zoom: for following a focus by keyboard. */
  lookAt(view: ViewId, x: number, y: number): void;
  /** The nearest mark to a point in CSS px within the host. */
  spotAt(x: number, y: number): Spot | null;
  /** Rectangle around a mark in CSS px within the host. */
  boxOf(spot: Spot): Rect | null;
  /** All of a view, as it is fitted, as a picture. */
  exportSvg(view: ViewId, title: string): string;
  exportPng(view: ViewId, widthPx: number): Promise<Blob>;
  /** `gpu`, or `flat` where the browser has none. */
  readonly painter: Painter['kind'];
  /** Frames drawn so far; for tests that nothing is drawn in vain. */
  frames(): number;
  destroy(): void;
};
