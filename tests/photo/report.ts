/**
 * What the proposals save, on edges of known count: by difficulty, how often the first proposals are exactly right,
 * and how many taps it takes until all is right, against marking every V by hand and against marks at an even
 * distance; apart where the proposals looked like the marks and where they only went on evenly; and on how many edges
 * the page took more taps than either. `npm run photos:report -- 40 5000` takes forty edges of each difficulty from seed 5000; without a seed
 * they are fresh ones.
 */
import { everyDifficulty } from './difficulty.ts';
import { workWith } from './person.ts';
import { renderEdge } from './render.ts';
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
