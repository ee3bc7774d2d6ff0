/** A photo as the device kept it, with what was marked on it. What cannot be read is as if nothing was kept. */
import * as v from 'valibot';

const point = v.object({ x: v.pipe(v.number(), v.finite()), y: v.pipe(v.number(), v.finite()) });

const kept = v.object({
  photo: v.instance(Blob),
  through: v.pipe(v.array(point), v.maxLength(100)),
  marks: v.pipe(v.array(v.object({ ...point.entries, isProposed: v.boolean() })), v.maxLength(2000)),
  lookedTo: v.nullable(point),
  openTo: v.nullable(point),
  righted: v.pipe(v.number(), v.integer(), v.minValue(0)),
  /** What was put into the field, as it was written there; null before. */
  counted: v.nullable(v.string()),
  /** The panel's name when the photo was taken in. */
  panel: v.string(),
});

export type KeptPhoto = v.InferOutput<typeof kept>;

export function readKeptPhoto(found: unknown): KeptPhoto | null {
  const read = v.safeParse(kept, found);
  return read.success ? read.output : null;
}
