/** The outlines of hook and needle, in their own frame: tip at the origin, handle towards +x. */
import { from, heading, type Point } from './point.ts';

/** Half the thickness of the hook's shaft. */
export const SHAFT = 11;

/** A head with its lip, the throat cut under it, the taper, the shaft. The lip looks to +y. */
export function hookOutline(length: number): Point[] {
  return [
    [0, -1],
    [3, -7],
    [11, -10.5],
    [26, -SHAFT],
    [60, -SHAFT],
    [length, -SHAFT],
    [length, SHAFT],
    [74, SHAFT],
    [52, 7.5],
    [34, 2.5],
    [24, 0.5],
    [19.5, 1.5],
    [20, 5],
    [24.5, 9.5],
    [25, 12],
    [21, 13],
    [12, 11],
    [3.5, 6],
  ];
}

/** A blunt sewing-up needle with a long eye. */
export function needleOutline(length: number): Point[] {
  return [
    [0, 0],
    [10, -2.6],
    [36, -4.2],
    [length - 34, -4.6],
    [length - 18, -6.5],
    [length - 5, -5],
    [length, 0],
    [length - 5, 5],
    [length - 18, 6.5],
    [length - 34, 4.6],
    [36, 4.2],
    [10, 2.6],
  ];
}

export const eyeOutline = (length: number): Point[] => [
  [length - 26, 0],
  [length - 18, -2.6],
  [length - 9, -1.8],
  [length - 6, 0],
  [length - 9, 1.8],
  [length - 18, 2.6],
];

/** Puts an outline where the tool is. With `flipped` the lip looks the other way (left-handed work). */
export function place(outline: readonly Point[], tip: Point, angle: number, flipped: boolean): Point[] {
  const along = heading(angle);
  const across: Point = flipped ? [along[1], -along[0]] : [-along[1], along[0]];
  return outline.map(([u, v]) => from({ origin: tip, along, across }, u, v));
}
