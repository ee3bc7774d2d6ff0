/**
 * How fast core is, in one run, and in ratios that hold on another machine: planning, working and pairing a cushion,
 * long panels, memory, and walking a million stitches.
 */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import {
  type Corner,
  type EdgeInput,
  type Plan,
  pair,
  planBack,
  type Result,
  readEdge,
  steps,
  work,
} from '../../core/index.ts';
import { bench } from './harness.ts';

const corner: Corner = { made: 'chain', size: 2 };

function given<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

/** A panel of `sides` equal sides. */
const planOf = (sides: number, stitches: number): Plan =>
  given(
    planBack(given(readEdge({ sides: new Array(sides).fill(stitches), corner, counted: 'stitches-only' }))),
  );

const line = (name: string, said: string, goal: string, isMet: boolean): void => {
  if (!isMet) process.exitCode = 1;
  console.log(`${name.padEnd(52)} ${said}  (goal ${goal}${isMet ? '' : ': NOT MET'})`);
};

// A cushion: 4 sides of 78 and corners of 2 are 320 positions.
const cushionInput: EdgeInput = { sides: [78, 78, 78, 78], corner, counted: 'stitches-only' };
function wholeCushion(): number {
  const edge = given(readEdge(cushionInput));
  const plan = given(planBack(edge));
  const { edgings, join } = work(plan);
  return pair(edge, edgings[0]!, { start: join, manner: 'corner-to-corner' }).pairs;
}
for (let i = 0; i < 200; i++) wholeCushion();
await bench('plan, work and pair a cushion of 320 positions', wholeCushion, {
  times: 400,
  atMostMs: 0.5,
});

// Working alone. Two rounds are made of every panel: foundation and edging.
const hundredThousand = planOf(10, 10_000);
const million = planOf(10, 100_000);
const stitchesMade = (plan: Plan): number => plan.foundation.total + (plan.edgings[0]?.total ?? 0);
const little = await bench('work a panel of 100,000 stitches a round', () => work(hundredThousand), {
  times: 21,
});
const long = await bench('work a panel of 1,000,000 stitches a round', () => work(million), { times: 11 });
const perSecond = stitchesMade(million) / (long.median / 1000);
line(
  'stitches worked in a second',
  `${(perSecond / 1e6).toFixed(1)} million`,
  '10 million or more',
  perSecond >= 10e6,
);
const ratio = long.median / little.median;
line('1,000,000 against 100,000', `${ratio.toFixed(1)} times as long`, '11 or fewer', ratio <= 11);

// Memory: what is held once everything that can be let go is let go.
setFlagsFromString('--expose-gc');
const letGo = runInNewContext('gc') as () => void;
function held(): number {
  letGo();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}
const before = held();
const kept = work(million);
const bytes = (held() - before) / million.edge.total;
const made = kept.foundation.length + (kept.edgings[0]?.length ?? 0);
line(
  `bytes a stitch of the panel, for ${(made / 1e6).toFixed(1)} million made`,
  bytes.toFixed(1),
  '40 or fewer',
  bytes <= 40,
);

// Walking: nothing is built before it is asked for.
const open = await bench('open the steps of a panel of 1,000,000', () => steps(million), {
  times: 21,
});
const openCushion = planOf(4, 78);
const openLittle = await bench('open the steps of a cushion', () => steps(openCushion), {
  times: 101,
});
console.log(
  `${'opening: 1,000,000 against 320'.padEnd(52)} ${(open.median / openLittle.median).toFixed(1)} times as long`,
);
const making = steps(million);
let seed = 1;
const next = (): number => {
  seed = (seed * 48_271) % 2_147_483_647;
  return seed % making.length;
};
await bench('1,000 steps anywhere in a panel of 1,000,000', () => {
  for (let i = 0; i < 1000; i++) making.at(next());
});
await bench('1,000 places found by what they make', () => {
  for (let i = 0; i < 1000; i++) making.stepOf('edging', next() % 1_000_000);
});
