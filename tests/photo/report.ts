/**
 * What the proposals save, on edges of known count: by difficulty, how often the first proposals are exactly right,
 * and how many taps it takes until all is right, against marking every V by hand and against marks at an even
 * distance; apart where the proposals looked like the marks and where they only went on evenly; and on how many edges
 * the page took more taps than either. `npm run photos:report -- 40 5000` takes forty edges of each difficulty from seed 5000; without a seed
 * they are fresh ones.
 */
import { lineThrough, nearestOn } from '../../src/photo/line.ts';
import { everyDifficulty } from './difficulty.ts';
import { workWith } from './person.ts';
import { type Picture, renderEdge } from './render.ts';
import { byLikeness, evenly } from './ways.ts';

const [words = '20', seed = `${Date.now() % 1_000_000}`] = process.argv.slice(2);
const edges = Number(words);
const first = Number(seed);
console.log(`${edges} edges of each difficulty, from seed ${first}; nothing but rendered pictures.`);

const sum = (values: number[]): number => values.reduce((all, value) => all + value, 0);
const row = (cells: (string | number)[]): string => cells.map((cell) => `${cell}`.padStart(15)).join('');

for (const difficulty of everyDifficulty) {
  const seeds = Array.from({ length: edges }, (_, i) => first + i);
  const outcomes = seeds.map((one) => {
    const picture = renderEdge(difficulty, one);
    const begun = performance.now();
    const page = workWith(picture, byLikeness, one);
    return { page, took: performance.now() - begun, even: workWith(picture, evenly, one) };
  });
  type Outcome = (typeof outcomes)[number];
  const line = (name: string, some: Outcome[]): void =>
    console.log(
      row([
        name,
        some.length,
        sum(some.map(({ page }) => Number(page.exact))),
        sum(some.map(({ even }) => Number(even.exact))),
        sum(some.map(({ page }) => page.byHand)),
        sum(some.map(({ even }) => even.taps)),
        sum(some.map(({ page }) => page.taps)),
        some.filter(({ page, even }) => page.taps > even.taps).length,
        some.filter(({ page }) => page.taps > page.byHand).length,
        some.filter(({ page }) => page.gaveUp).length,
      ]),
    );
  const took = Math.round(sum(outcomes.map((one) => one.took)) / edges);
  console.log(`\n${difficulty}: ${took} ms an edge`);
  console.log(
    row(['', 'edges', 'right at once', 'evenly right', 'taps by hand', 'taps evenly', 'taps here']) +
      row(['more than even', 'more than hand', 'gave up']),
  );
  line('all', outcomes);
  line(
    'alike',
    outcomes.filter(({ page }) => page.isAlike),
  );
  line(
    'only evenly',
    outcomes.filter(({ page }) => !page.isAlike),
  );
}

/** The picture as wide as a camera of twelve megapixels makes it. */
function asTwelveMegapixels({ width, height, data }: Picture): {
  pixels: Omit<Picture, 'vees' | 'look'>;
  scale: number;
} {
  const [wide, tall] = [4000, 3000];
  const scale = wide / width;
  const from = new Uint32Array(data.buffer, data.byteOffset, width * height);
  const to = new Uint32Array(wide * tall);
  for (let y = 0; y < Math.min(tall, Math.floor(height * scale)); y++)
    for (let x = 0; x < wide; x++)
      to[y * wide + x] = from[Math.floor(y / scale) * width + Math.floor(x / scale)] ?? 0;
  return { pixels: { width: wide, height: tall, data: new Uint8ClampedArray(to.buffer) }, scale };
}

let large = renderEdge('fair', first);
for (let seed = first + 1; large.vees.length < 100; seed++) large = renderEdge('fair', seed);
const { pixels, scale } = asTwelveMegapixels(large);
const vees = large.vees.map(({ x, y }) => ({ x: x * scale, y: y * scale }));
const along = lineThrough(vees.filter((_, i) => i % 20 === 0 || i === vees.length - 1));
const marks = vees.slice(0, 3).map((vee) => nearestOn(along, vee).along);
const times = Array.from({ length: 5 }, () => {
  const begun = performance.now();
  byLikeness({ pixels, line: along, marks, lookedTo: marks[2] ?? 0 });
  return Math.round(performance.now() - begun);
});
console.log(
  `\n${vees.length} Vs along ${Math.round(along.length)} pixels of 12 megapixels: ${times.join(', ')} ms`,
);
