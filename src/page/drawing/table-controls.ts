/** What the panels ask of the drawing. */

export type ViewId = 'whole' | 'close';

export type TableControls = {
  /** Factor above 1 is closer. */
  zoom(view: ViewId, factor: number): void;
  /** Moves the view by CSS px. */
  pan(view: ViewId, dx: number, dy: number): void;
  fit(view: ViewId): void;
  /** The view as an SVG document with a title. */
  exportSvg?(view: ViewId, title: string): string;
  /** The view as a PNG so many px across. */
  exportPng?(view: ViewId, widthPx: number): Promise<Blob>;
};
