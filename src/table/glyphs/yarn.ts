/**
 * How a strand becomes yarn: body, folds where it dives under, shadow and light along its rims, plies
 * across, and an outline. Plain paths only, no gradients, so that every painter can draw it.
 */
import type { Role } from './inks.ts';
import { fill, type Layer, OUTLINE, pen } from './layer.ts';
import { beside, outlineOf, type Strand, smooth, within } from './strand.ts';

export type Shading = {
  body: Role;
  /** Lines across the strand that show its twist. */
  plies: number;
  /** Share of the length where the plies begin. */
  from?: number;
  /** Rim that the light falls on: -1 the left of the spine's direction, 1 the right. */
  lit: -1 | 1;
  /** Dark where the strand comes up from below; on unless false. */
  fold?: boolean;
  outline?: boolean;
};

/** The layers of one strand of yarn. */
export function yarn(strand: Strand, shading: Shading): Layer[] {
  const { body, plies, lit, from = 0.16 } = shading;
  const whole = outlineOf(strand);
  const dark = lit === 1 ? -1 : 1;
  const layers = [
    fill(whole, body),
    // Two bands, one within the other, make the strand round.
    fill(rim(strand, dark, 0.85), 'fold', 0.13),
    fill(rim(strand, dark, 0.45), 'fold', 0.16),
  ];
  if (shading.fold !== false) {
    for (const to of [0.14, 0.24, 0.36]) layers.push(fill(outlineOf(strand, 0, to, 5), 'fold', 0.16));
  }
  layers.push(fill(rim(strand, lit, 0.4, [0.3, 0.93]), 'glow', 0.45));
  // Plies run slantwise along the strand: a furrow, and beside it the light on the next ply.
  const lean = 0.42 / Math.max(plies, 3);
  for (let ply = 0; ply < plies; ply++) {
    const share = from + ((0.94 - from) * (ply + 0.5)) / plies;
    const furrow = within(strand, [share - lean, 0.84], [share + lean, -0.84]);
    const ridge = within(strand, [share - lean * 0.5, 0.5], [share + lean * 1.15, -0.72]);
    layers.push(pen(ridge, 'glow', 0.03, 0.28), pen(furrow, 'fold', 0.022, 0.34));
  }
  if (shading.outline !== false) layers.push(pen(whole, 'line', OUTLINE));
  return layers;
}

/** A stretch of a strand, in shares 0–1 of its length. */
type Shares = readonly [from: number, to: number];

/** A sickle along one rim: as wide in its middle as `wide` half-thicknesses, nothing at its ends. */
function rim(strand: Strand, side: -1 | 1, wide: number, [from, to]: Shares = [0.03, 0.99]): string {
  const steps = 8;
  const shares = Array.from({ length: steps + 1 }, (_, step) => from + ((to - from) * step) / steps);
  const outer = shares.map((share) => beside(strand, share, side * 0.92));
  const inner = shares.map((share, step) => {
    const swell = Math.sin((Math.PI * step) / steps);
    return beside(strand, share, side * (0.92 - wide * swell));
  });
  return smooth([...outer, ...inner.reverse()], true);
}
