/** A glyph is a list of layers, painted in order; each is one path, filled or drawn with a round pen. */
import type { Role } from './inks.ts';

export type Layer = {
  /** Path data in stitch widths. */
  d: string;
  fill?: Role;
  stroke?: Role;
  /** Of the pen, in stitch widths. */
  width?: number;
  /** On, off … in stitch widths. */
  dash?: readonly number[];
  alpha?: number;
  evenOdd?: boolean;
};

/** Width of the outline of a stitch seen close. */
export const OUTLINE = 0.035;

export const fill = (d: string, role: Role, alpha?: number): Layer =>
  alpha === undefined ? { d, fill: role } : { d, fill: role, alpha };

export const pen = (d: string, role: Role, width: number, alpha?: number): Layer =>
  alpha === undefined ? { d, stroke: role, width } : { d, stroke: role, width, alpha };
