/**
 * Where a view looks: centre in world units and CSS px per world unit. Pure; angles never enter,
 * the drawing is moved and scaled but never turned.
 */
import type { Box } from '../draw-list.ts';

export type Camera = { x: number; y: number; px: number };

/** A rectangle in CSS px within the host. */
export type Rect = { x: number; y: number; width: number; height: number };
export type Point = { x: number; y: number };

/** A place on the screen with a camera behind it: what takes points from the world to the screen and back. */
export type Viewport = { region: Rect; camera: Camera };

/** Larger by `factor` about a point in CSS px within the host. */
export type Zoom = { factor: number; about: Point };

/** Smallest and largest CSS px a stitch. The largest still shows some five stitches on a phone. */
export const LEAST_PX = 0.002;
export const MOST_PX = 96;

export const isEmpty = (region: Rect): boolean => region.width < 1 || region.height < 1;

/** The point in the middle of a region, in CSS px within the host. */
export const middleOf = ({ x, y, width, height }: Rect): Point => ({ x: x + width / 2, y: y + height / 2 });

export const contains = (region: Rect, { x, y }: Point): boolean =>
  x >= region.x && y >= region.y && x < region.x + region.width && y < region.y + region.height;

/** World point to CSS px within the host. */
export function toScreen({ camera, region }: Viewport, { x, y }: Point): Point {
  return {
    x: region.x + region.width / 2 + (x - camera.x) * camera.px,
    y: region.y + region.height / 2 + (y - camera.y) * camera.px,
  };
}

/** CSS px within the host to a world point. */
export function toWorld({ camera, region }: Viewport, { x, y }: Point): Point {
  return {
    x: camera.x + (x - region.x - region.width / 2) / camera.px,
    y: camera.y + (y - region.y - region.height / 2) / camera.px,
  };
}

/** The part of the world that shows, with a margin in CSS px around it. */
export function shownBox({ camera, region }: Viewport, marginPx = 0): Box {
  const halfWidth = (region.width / 2 + marginPx) / camera.px;
  const halfHeight = (region.height / 2 + marginPx) / camera.px;
  return {
    x0: camera.x - halfWidth,
    y0: camera.y - halfHeight,
    x1: camera.x + halfWidth,
    y1: camera.y + halfHeight,
  };
}

/** The camera that shows all of `bounds` with `marginPx` around it. */
export function fitBounds(bounds: Box, region: Rect, marginPx: number): Camera {
  const width = Math.max(bounds.x1 - bounds.x0, 1e-6);
  const height = Math.max(bounds.y1 - bounds.y0, 1e-6);
  const margin = Math.min(marginPx, region.width * 0.1, region.height * 0.1);
  const px = Math.min((region.width - 2 * margin) / width, (region.height - 2 * margin) / height);
  return { x: (bounds.x0 + bounds.x1) / 2, y: (bounds.y0 + bounds.y1) / 2, px: clampPx(px) };
}

export const clampPx = (px: number, least = LEAST_PX): number =>
  Math.min(MOST_PX, Math.max(least, Number.isFinite(px) ? px : 1));

/** Zooms so that the world point under the one zoomed about stays where it is. */
export function zoomAbout(viewport: Viewport, { factor, about }: Zoom, leastPx = LEAST_PX): Camera {
  const { camera, region } = viewport;
  const px = clampPx(camera.px * factor, leastPx);
  const held = toWorld(viewport, about);
  return {
    x: held.x - (about.x - region.x - region.width / 2) / px,
    y: held.y - (about.y - region.y - region.height / 2) / px,
    px,
  };
}

/** Keeps the middle of the view over the drawing, so that it cannot be lost. */
export function keepOver(camera: Camera, bounds: Box): Camera {
  return {
    x: Math.min(bounds.x1, Math.max(bounds.x0, camera.x)),
    y: Math.min(bounds.y1, Math.max(bounds.y0, camera.y)),
    px: camera.px,
  };
}

/** The camera a share of the way from one to another; zoom is spaced evenly in ratio. */
export function between(from: Camera, to: Camera, share: number): Camera {
  if (share >= 1) return to;
  return {
    x: from.x + (to.x - from.x) * share,
    y: from.y + (to.y - from.y) * share,
    px: from.px * (to.px / from.px) ** share,
  };
}

export const overlaps = (one: Box, other: Box): boolean =>
  one.x0 <= other.x1 && one.x1 >= other.x0 && one.y0 <= other.y1 && one.y1 >= other.y0;
