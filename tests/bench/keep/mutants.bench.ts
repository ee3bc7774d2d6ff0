/**
 * `npm run bench:keep [-- projects mutants seed]`: random projects through link and file and back (100,000), and as many
 * links and files that something happened to (1,000,000): every one a refusal by name or a correct panel. Tells how
 * many of each, and how long the slowest took; ends with an error if one is wrong or slower than 200 ms.
 */
import fc from 'fast-check';
import { type Panel, readFile, writeFile } from '../../../src/input/file.ts';
import { readLink, type Shared, writeLink } from '../../../src/input/link.ts';
import { anyShared } from '../../property/any-project.ts';
import {
  type Draw,
  drawFrom,
  fileFault,
  linkFault,
  mangled,
  savedOn,
  twistedFile,
  twistedLink,
} from '../../property/mutants.ts';

const [projects = 100_000, mutants = 1_000_000, seed = 20261] = process.argv.slice(2).map(Number);
const slowestAllowed = 200;
const atATime = 1000;

const tally = new Map<string, number>();
const count = (name: string): unknown => tally.set(name, (tally.get(name) ?? 0) + 1);
let slowest = { ms: 0, text: '' };
let wrong = 0;

/**
 * The work's answer; its time is told if it is the slowest so far. What took long is done twice more and the least of
 * the three counts: the machine may have been away.
 */
async function timed<T>(text: string, work: () => T | Promise<T>): Promise<T> {
  const since = performance.now();
  const answer = await work();
  let ms = performance.now() - since;
  for (let again = 0; again < 2 && ms > slowest.ms; again++) {
    const from = performance.now();
    await work();
    ms = Math.min(ms, performance.now() - from);
  }
  if (ms > slowest.ms) slowest = { ms, text };
  return answer;
}

function fault(what: string, text: string): void {
  wrong += 1;
  if (wrong <= 10) console.log(`WRONG: ${what}\n${text.slice(0, 2000)}`);
}

const panelOf = ({ project, place, answered }: Shared): Panel => ({ project, place, answered });

/** Random panels, some at a time: another draw each time. */
const drawn = (turn: number): Shared[] => fc.sample(anyShared, { numRuns: atATime, seed: seed + turn });

async function roundTrips(): Promise<void> {
  const since = performance.now();
  for (let done = 0; done < projects; done += atATime) {
    for (const shared of drawn(done).slice(0, projects - done)) {
      const link = await writeLink(shared);
      const sent = await timed(link, () => readLink(link));
      if (!sent?.ok) fault('a sound link is refused', link);
      else if (linkFault(sent, shared)) fault(linkFault(sent, shared) as string, link);
      const text = writeFile([panelOf(shared)], savedOn);
      const read = await timed(text, () => readFile(text));
      if (!read.ok || read.trust !== 'as-saved') fault('a sound file is refused', text);
      else if (fileFault(read, [panelOf(shared)])) fault(fileFault(read, [panelOf(shared)]) as string, text);
    }
  }
  const ms = performance.now() - since;
  console.log(`${projects} projects through link and file: ${wrong} wrong, ${(ms / 1000).toFixed(0)} s`);
}

async function oneLink(shared: Shared, link: string, draw: Draw): Promise<void> {
  const isTwisted = draw(2) === 0;
  const text = isTwisted ? twistedLink({ shared, text: link }, draw) : mangled(link, draw);
  const read = await timed(text, () => readLink(text));
  count(`link ${read === null ? 'that is none of ours' : read.ok ? 'read' : `refused: ${read.why}`}`);
  const what = linkFault(read, isTwisted ? null : shared);
  if (what) fault(what, text);
}

async function oneFile(shared: Shared, file: string, draw: Draw): Promise<void> {
  const isTwisted = draw(2) === 0;
  const text = isTwisted ? twistedFile(file, draw) : mangled(file, draw);
  const read = await timed(text, () => readFile(text));
  count(`file ${read.ok ? `read: ${read.trust}` : `refused: ${read.why}`}`);
  const what = fileFault(read, isTwisted ? null : [panelOf(shared)]);
  if (what) fault(what, text);
}

async function mutated(): Promise<void> {
  const since = performance.now();
  const draw = drawFrom(seed);
  for (let done = 0; done < mutants; ) {
    for (const shared of drawn(-1 - done)) {
      const link = await writeLink(shared);
      const file = writeFile([panelOf(shared)], savedOn);
      for (let times = 0; times < 10 && done < mutants; times += 2, done += 2) {
        await oneLink(shared, link, draw);
        await oneFile(shared, file, draw);
      }
    }
  }
  const ms = performance.now() - since;
  console.log(
    `${mutants} links and files that something happened to: ${wrong} wrong, ${(ms / 1000).toFixed(0)} s`,
  );
  for (const [name, number] of [...tally].toSorted(([, one], [, other]) => other - one))
    console.log(`  ${`${number}`.padStart(8)} ${name}`);
}

await roundTrips();
const wrongBefore = wrong;
wrong = 0;
await mutated();
const isSlow = slowest.ms > slowestAllowed;
console.log(
  `the slowest took ${slowest.ms.toFixed(1)} ms  (goal ${slowestAllowed}${isSlow ? ': NOT MET' : ''})`,
);
if (isSlow) console.log(slowest.text.slice(0, 2000));
if (wrong + wrongBefore > 0 || isSlow) process.exitCode = 1;
