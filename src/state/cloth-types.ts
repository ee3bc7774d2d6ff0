/** What is known of the cloth, as values; `cloth.ts` reads them. */
import type { ClothPlan, ClothShape, Note, Pin, SewingPlan } from '../../core/index.ts';

export type Becomes = 'cushion' | 'bag' | 'cover';

export type Measures = {
  value(field: string): number | undefined;
  chosen<T extends string>(field: string, standard: T): T;
  problems: readonly Note[];
};

/** What is sewn, in the back's order: side j of the back faces front side `faces[j]`. */
export type Cloth = {
  measures: Measures;
  becomes: Becomes;
  isMirrored: boolean;
  shape: ClothShape['shape'];
  /** Problems of fields that cannot be read, and of measures that cannot be. At fields. */
  problems: readonly Note[];
  notes: readonly Note[];
  /** Measured enough to cut; null until then. */
  plan: ClothPlan | null;
  pins: readonly Pin[] | null;
  spacing: number;
  depth: number | undefined;
  isByMachine: boolean;
  sewing: SewingPlan | null;
};
