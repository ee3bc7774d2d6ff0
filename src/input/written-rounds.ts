/**
 * The counts of a pattern's rounds, out of its own text, as far as that goes without guessing.
 *
 * Rule: a line is read only where it says one thing: one round, and one number told as its count. Wherever a second
 * number could be meant, nothing is taken. What is read is shown to the person before it is used.
 */

type WrittenCount = { of: 'side' | 'all'; count: number };

export type WrittenRound = {
  /** As the pattern numbers it. */
  round: number;
  line: string;
  /** Null where the line leaves it open. */
  read: WrittenCount | null;
};

const label = /^\W*(?:(?:round|rnd|rd|r|row)\.?\s*(\d+)|(\d+)(?:st|nd|rd|th)\s+(?:round|rnd))\b\s*/i;
const manyRounds =
  /^\W*(?:rounds|rnds|rds|rows)\b|^\W*(?:round|rnd|rd|r|row)\.?\s*\d+\s*(?:-|–|to|and|&)\s*\d/i;
const unsure =
  /\b(?:approx|about|around \d|or so|circa|ca)\b|\d\s*[-–]\s*\d|\d[.,]\d|\d\s*\(\d+\s*[:)]|\(\d+\)\s*\(\d+\)|\b(?:first|second|third|next|last|short|long|other|opposite|remaining)\s+(?:\w+\s+)?sides?\b/i;

const stitch = '(?:sts?|stitch(?:es)?|dc|sc|tr|hdc|htr|dtr|trebles?|double crochets?|single crochets?)';
const perSide =
  '(?:(?:on|along|to)?\\s*(?:each|every|per|a|the)\\s+side|between\\s+(?:each\\s+)?corners?(?:\\s+spaces?)?|,\\s*each side)';

/** Ways in which a line tells its count, the plainest first. */
const told: readonly [of: WrittenCount['of'], pattern: RegExp][] = [
  ['side', new RegExp(`(\\d+)\\s*${stitch}?\\.?\\s*${perSide}`, 'gi')],
  ['all', /total:?\s*(?:of\s*)?(\d+)/gi],
  // "2 dc in all corners" tells no count.
  ['all', new RegExp(`(\\d+)\\s*${stitch}?\\s*in\\s+(?:all|total)\\b(?!\\s*\\w)`, 'gi')],
  // In brackets before more work it is a part of that work.
  ['all', new RegExp(`[([<{]\\s*(\\d+)\\s*${stitch}?\\s*(?:,[^)\\]>}]*)?[)\\]>}]\\s*[.;]?\\s*$`, 'gi')],
  ['all', new RegExp(`(?:=|–|—|-|now have)\\s*(\\d+)\\s*${stitch}?\\s*[.;]?\\s*$`, 'gi')],
  ['all', new RegExp(`(?:^|[.:])\\s*(\\d+)\\s*${stitch}?\\s*(?:[.;]|$)`, 'gi')],
];

/** What could be a count as well: never taken for one, but another number beside it is not taken either. */
const rivals: readonly RegExp[] = [
  new RegExp(`^(\\d+)\\s*${stitch}\\s*[([]`, 'gi'),
  new RegExp(`,\\s*(\\d+)\\s*${stitch}\\s*\\.?\\s*$`, 'gi'),
  new RegExp(`\\.\\s*(\\d+)\\s*${stitch}`, 'gi'),
];

/** Every line that begins with a round. Lines that name none are passed over. */
export function readWrittenRounds(text: string): WrittenRound[] {
  return text.split('\n').flatMap((raw): WrittenRound[] => {
    const line = raw.trim();
    const first = label.exec(line);
    if (manyRounds.test(line)) {
      const [from = '0'] = /\d+/.exec(line) ?? [];
      return [{ round: Number(from), line, read: null }];
    }
    if (!first) return [];
    const rest = line.slice(first[0].length).replace(/^[:.\s–-]+/, '');
    return [{ round: Number(first[1] ?? first[2]), line, read: countIn(rest) }];
  });
}

function countIn(rest: string): WrittenCount | null {
  if (unsure.test(rest)) return null;
  const found = told.flatMap(([of, pattern]) =>
    [...rest.matchAll(pattern)].map((match) => ({ of, count: Number(match[1]), at: match.index })),
  );
  const different = found.filter(
    (one, i) => found.findIndex(({ count, of }) => count === one.count && of === one.of) === i,
  );
  const sides = different.filter(({ of }) => of === 'side');
  // The number of a side can look like a count of its own; another number is another count.
  const others = different.filter(
    ({ of, count }) => of === 'all' && !sides.some((side) => side.count === count),
  );
  const [only, another] = [...sides, ...others];
  const isRivalled = rivals.some((pattern) =>
    [...rest.matchAll(pattern)].some((match) => only && Number(match[1]) !== only.count),
  );
  return only && !another && !isRivalled ? { of: only.of, count: only.count } : null;
}
