/**
 * What the proposals save, on edges of known count: by difficulty, how often the first proposals are exactly right,
 * and how many taps it takes until all is right, against marking every V by hand and against marks at an even
 * distance. `npm run photos:report -- 40 5000` takes forty edges of each difficulty from seed 5000; without a seed
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
const row = (cells: (string | number)[]): string => cells.map((cell) => `${cell}`.padStart(14)).join('');
console.log(
  row(['', 'exactly right', 'not proposed', 'taps', 'every V', 'evenly', 'evenly right', 'milliseconds']),
);
for (const difficulty of everyDifficulty) {
  const seeds = Array.from({ length: edges }, (_, i) => first + i);
  const outcomes = seeds.map((one) => {
    const picture = renderEdge(difficulty, one);
    const begun = performance.now();
    const alike = workWith(picture, byLikeness, one);
    return { alike, took: performance.now() - begun, even: workWith(picture, evenly, one) };
  });
  console.log(
    row([
      difficulty,
      sum(outcomes.map(({ alike }) => Number(alike.exact))),
      sum(outcomes.map(({ alike }) => Number(alike.declined))),
      sum(outcomes.map(({ alike }) => alike.taps)),
      sum(outcomes.map(({ alike }) => alike.byHand)),
      sum(outcomes.map(({ even }) => even.taps)),
      sum(outcomes.map(({ even }) => Number(even.exact))),
      Math.round(sum(outcomes.map(({ took }) => took)) / edges),
    ]),
  );
  const offered = outcomes.filter(({ alike }) => !alike.declined);
  const taps = (of: (outcome: (typeof outcomes)[number]) => number): number => sum(offered.map(of));
  console.log(
    `    where proposed (${offered.length}): ${taps(({ alike }) => alike.taps)} taps, every V ${taps(({ alike }) => alike.byHand)}, evenly ${taps(({ even }) => even.taps)}`,
  );
}
