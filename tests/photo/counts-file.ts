/** The file of counts beside a maker's own photographs: `counts.json`, one entry a side. README says how it is written. */
import * as v from 'valibot';

const place = v.tuple([v.pipe(v.number(), v.minValue(0)), v.pipe(v.number(), v.minValue(0))]);

const entry = v.object({
  photo: v.pipe(v.string(), v.nonEmpty()),
  count: v.pipe(v.number(), v.integer(), v.minValue(4)),
  line: v.pipe(v.array(place), v.minLength(2)),
  marks: v.pipe(v.array(place), v.minLength(3)),
});

/** `count`: stitches that a person counted. `line`, `marks`: pixels of the photo as it stands upright. */
export type CountedPhoto = v.InferOutput<typeof entry>;

export const countsName = 'counts.json';

/** The entries, or a sentence on the first thing that is wrong. */
export function readCounts(text: string): CountedPhoto[] | string {
  let found: unknown;
  try {
    found = JSON.parse(text);
  } catch (error) {
    return `${countsName} is no JSON: ${(error as Error).message}.`;
  }
  if (!Array.isArray(found) || found.length === 0)
    return `${countsName} must be a list with an entry for each side that was counted.`;
  const entries: CountedPhoto[] = [];
  for (const [i, one] of found.entries()) {
    const read = v.safeParse(entry, one);
    if (!read.success) {
      const [issue] = read.issues;
      const at = v.getDotPath(issue) ?? 'it';
      return `Entry ${i + 1} of ${countsName} cannot be used: ${at} ${wants[at.split('.')[0] ?? ''] ?? 'is no entry'}.`;
    }
    entries.push(read.output);
  }
  return entries;
}

const wants: Record<string, string> = {
  photo: 'must be the name of a picture in the same folder',
  count: 'must be a whole number of at least 4 stitches',
  line: 'must be at least two places [x, y], from the first V to the last',
  marks: 'must be the places [x, y] of the first three Vs, or more',
};
