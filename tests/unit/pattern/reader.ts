/**
 * Reads the numbers back out of a written pattern as a maker with a pencil would: it knows the English words of the
 * page, and nothing of the program that wrote them.
 */

type Corner = { made: 'chain' | 'stitch'; size: number };
type Counts = { sides: number[]; corners: Corner[]; total: number };

export type ReadPattern = {
  panel: Counts;
  faces: number[];
  startCounts: 0 | 1;
  closings: { foundation: 0 | 1; edging: 0 | 1 };
  /** Foundation: stitches between the corners, and the corners, in the order of the work. */
  legs: number[];
  turns: Corner[];
  foundation: Counts;
  edgings: { arms: [number, number][]; corners: Corner[]; increase: number; counts: Counts }[];
  markerEvery: number;
  join: { side: number; fromCorner: number } | null;
  pairs: number;
};

/** The text from one heading to the next. */
const part = (text: string, heading: string): string => {
  const from = text.indexOf(`\n${heading}\n`);
  if (from < 0) throw new Error(`no part ${heading}`);
  const rest = text.slice(from + heading.length + 2);
  const next = rest.search(/\n[A-Z][A-Z ]+\n\n/);
  return next < 0 ? rest : rest.slice(0, next);
};

const find = (text: string, pattern: RegExp): string[] => {
  const found = pattern.exec(text);
  if (!found) throw new Error(`${pattern} in ${text}`);
  return found.slice(1).map((one) => one ?? '');
};

const isChain = (unit: string): boolean => unit === 'ch';

/** "2, 2, 1 ch" or "2 ch, 1 dc": a unit stands for all before it that have none. */
function cornersIn(text: string): Corner[] {
  const found = [...text.matchAll(/(\d+)(?: ([a-z/ ]+))?/g)].map(([, size, unit]) => ({
    size: Number(size),
    unit,
  }));
  return found.map(({ size, unit }, i) => {
    const its = unit ?? found.slice(i).find((one) => one.unit)?.unit ?? '';
    return { made: isChain(its.trim()) ? 'chain' : 'stitch', size };
  });
}

function countsIn(text: string): Counts {
  const total = Number(find(text, /(\d+) in all/)[0]);
  const [, sides = '', corners = ''] = /((?:\d+ )?sides [^;]+); ([^;]+);/i.exec(text) ?? [];
  if (sides === '') return { sides: [total], corners: [], total };
  // "6 sides of 30; 6 corners of 2 ch", or each in a row.
  const [, times, each] = /^(\d+) sides of (\d+)$/.exec(sides) ?? [];
  const [, turns, turn = '0 ch'] = /^(\d+) corners (?:of (.+)|without \w+)$/.exec(corners) ?? [];
  return {
    sides: times
      ? new Array(Number(times)).fill(Number(each))
      : sides
          .replace(/sides /i, '')
          .split(',')
          .map(Number),
    corners: turns
      ? new Array(Number(turns)).fill(cornersIn(turn)[0])
      : cornersIn(corners.replace('corners ', '')),
    total,
  };
}

export function readPattern(text: string): ReadPattern {
  const panel = part(text, 'THE PANEL');
  const notes = part(text, 'NOTES ON COUNTING');
  const foundation = part(text, 'FOUNDATION');
  const edging = part(text, 'EDGING');
  const join = part(text, 'JOINING');
  const round = /(\d+) stitches, no corners/.exec(panel);
  const { legs, turns } = legsIn(find(foundation, /\n2\. (.*)\.\n/)[0] ?? '');
  const start = /place (\d+) of panel side (\d+)/.exec(join);
  return {
    panel: round ? { sides: [Number(round[1])], corners: [], total: Number(round[1]) } : countsIn(panel),
    faces: [...notes.matchAll(/side \d+ faces panel side (\d+)/gi)].map(([, side]) => Number(side) - 1),
    startCounts: /starting chains of the foundation count as 1 stitch/.test(notes) ? 1 : 0,
    closings: closingsIn(notes),
    legs,
    turns,
    foundation: countsIn(foundation.split('\n\n').at(-1) ?? ''),
    edgings: edging
      .split(/\n?(?:One round|Round \d+)\n/)
      .slice(1)
      .map(edgingIn),
    markerEvery: Number(find(foundation, /after every (\d+)/)[0]),
    join: start ? { fromCorner: Number(start[1]), side: Number(start[2]) - 1 } : null,
    pairs: Number(find(join, /\n\d\. (\d+) (?:ss|sl st)/)[0]),
  };
}

function closingsIn(notes: string): ReadPattern['closings'] {
  if (/closing of each round makes 1/.test(notes)) return { foundation: 1, edging: 1 };
  if (/closings make no stitch/.test(notes)) return { foundation: 0, edging: 0 };
  return /closing of the foundation makes 1/.test(notes)
    ? { foundation: 1, edging: 0 }
    : { foundation: 0, edging: 1 };
}

/** "30 ftr, 2 ch, [36 ftr, 2 ch] 3 times, 29 ftr": runs of stitches, and the turns between them. */
function legsIn(text: string): { legs: number[]; turns: Corner[] } {
  const spelt = text.replace(/\[([^\]]*)\] (?:(\d+) times|twice)/g, (_, once: string, times = '2') =>
    new Array(Number(times)).fill(once).join(', '),
  );
  const legs: number[] = [];
  const turns: Corner[] = [];
  let isLeg = true;
  for (const item of spelt.split(', ')) {
    const [count, unit] = item === 'turn the corner' ? ['0', 'ch'] : find(item, /^(\d+) (.+)$/);
    if (isLeg) legs.push(Number(count));
    else turns.push({ made: isChain(unit ?? '') ? 'chain' : 'stitch', size: Number(count) });
    isLeg = !isLeg;
  }
  return { legs, turns };
}

function edgingIn(text: string): ReadPattern['edgings'][number] {
  const counts = countsIn(text.split('\n\n').at(-1) ?? '');
  const every = /In each corner: (.*)\./.exec(text);
  const ones = [...text.matchAll(/In corner \d+: (.*)\./g)].map(([, work]) => work ?? '');
  const works = every ? counts.corners.map(() => every[1] ?? '') : ones;
  return {
    arms: works.map(armsIn),
    corners: counts.corners,
    increase: Number(/in one stitch (\d+) times/.exec(text)?.[1] ?? 0),
    counts,
  };
}

/** "1 dc, 2 ch, 1 dc", "1 dc, 1 dc (the corner)", "turn, 1 dc": what stands before and after the corner. */
function armsIn(work: string): [number, number] {
  const parts = work.split(', ');
  const corner = parts.findIndex((one) => /turn|corner|\d ch$/.test(one));
  const count = (part: string | undefined): number => Number(/\d+/.exec(part ?? '')?.[0] ?? 0);
  return [count(parts.slice(0, corner)[0]), count(parts.slice(corner + 1)[0])];
}
