/**
 * An edge of known count as a plain drawing in the plane of the work: where each V sits, and the strands that make it.
 * Seen from above: a V is two legs that open towards the next one and tuck under it; below it stand the posts.
 */
import type { Chance } from './chance.ts';
import type { Ranges } from './difficulty.ts';

export type Point = { x: number; y: number };

/** A piece of yarn: points with a height, and half its width in pixels. */
export type Strand = { points: { x: number; y: number; z: number }[]; radius: number; light: number };

export type Drawn = { strands: Strand[]; vees: Point[]; length: number };

/** One set of values drawn from the ranges. */
export type Look = { [Name in keyof Ranges]: number };

export function lookOf(ranges: Ranges, chance: Chance): Look {
  const names = Object.keys(ranges) as (keyof Ranges)[];
  const look = Object.fromEntries(names.map((name) => [name, chance.between(ranges[name])])) as Look;
  return { ...look, count: chance.whole(ranges.count) };
}

/** The places of the Vs along the edge, in pixels; a missed place is a wider step. */
function placesOf(look: Look, chance: Chance): { at: number; pitch: number }[] {
  const places: { at: number; pitch: number }[] = [];
  let at = look.pitch * 2;
  for (let i = 0; i < look.count; i++) {
    const pitch = look.pitch * Math.max(0.6, 1 + look.tension * chance.normal());
    at += i > 0 && chance.next() < look.missed ? look.pitch * 0.7 : 0;
    places.push({ at: at + pitch / 2, pitch });
    at += pitch;
  }
  return places;
}

/** The way of the edge in the plane: a bow with a lesser wave on it. */
export function wayOf(look: Look, length: number): (along: number) => Point & { turn: number } {
  const height = (at: number): number => {
    const t = at / length;
    return -look.bend * length * (4 * t * (1 - t) + 0.12 * Math.sin(2 * Math.PI * t * 1.5));
  };
  return (at) => ({ x: at, y: height(at), turn: Math.atan2(height(at + 1) - height(at - 1), 2) });
}

export function drawEdge(look: Look, chance: Chance): Drawn {
  const places = placesOf(look, chance);
  const last = places.at(-1);
  const length = (last ? last.at + last.pitch / 2 : 0) + look.pitch * 2;
  const way = wayOf(look, length);
  const strands: Strand[] = [];
  // u along the edge, v away from it towards the work, both in pitches from the V.
  const strandAt = (place: { at: number; pitch: number }, shape: number[][], thick: number): void => {
    const { x, y, turn } = way(place.at);
    const light =
      1 + look.dye * Math.sin(place.at / (look.pitch * 7) + shape.length) + 0.04 * chance.normal();
    const points = shape.map(([u = 0, v = 0, z = 0]) => {
      const along = u * place.pitch;
      const away = v * look.pitch;
      return {
        x: x + along * Math.cos(turn) - away * Math.sin(turn),
        y: y + along * Math.sin(turn) + away * Math.cos(turn),
        z: z * look.pitch,
      };
    });
    strands.push({ points, radius: thick * look.pitch, light });
  };
  const row = (depth: number, shift: number): void => {
    for (const place of places) {
      const at = { ...place, at: place.at + shift * look.pitch };
      const lean = 0.05 * chance.normal();
      strandAt(
        at,
        [
          [lean, depth, -0.3],
          [lean + 0.12, depth + 0.7, -0.2],
          [lean + 0.02, depth + 1.4, -0.3],
        ],
        0.22,
      );
      strandAt(
        at,
        [
          [lean - 0.2, depth, -0.35],
          [lean - 0.24, depth + 0.7, -0.25],
          [lean - 0.1, depth + 1.4, -0.35],
        ],
        0.2,
      );
    }
  };
  row(1.5, chance.between([-0.3, 0.3]));
  row(0.3, 0);
  const plump = chance.between([0.15, 0.19]);
  for (const place of places) {
    const open = 0.33 + 0.03 * chance.normal();
    const lean = 0.06 * chance.normal();
    for (const side of [1, -1]) {
      const leg = (spread: number, thick: number): void =>
        strandAt(
          place,
          [
            [-0.55, 0.03 * side, 0.02],
            [-0.2, (open * 0.75 + spread) * side + lean, 0.2],
            [0.2, (open + spread) * side + lean, 0.22],
            [0.62, (open * 0.55 + spread) * side, -0.02],
          ],
          thick,
        );
      if (chance.next() < look.split) {
        leg(0.1, plump * 0.55);
        leg(-0.1, plump * 0.55);
      } else leg(0, plump);
    }
  }
  return { strands, vees: places.map(({ at }) => ({ x: way(at).x, y: way(at).y })), length };
}
