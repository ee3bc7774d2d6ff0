/** Measures a piece of work and prints one line about it. Benches are plain scripts: they run top to bottom. */

export type BenchOptions = {
  /** How often it is measured. Default 15; the first tenth more is thrown away as warm-up. */
  times?: number;
  /** The median must not be above this many milliseconds: if it is, the run ends with an error. */
  atMostMs?: number;
};

export type Measured = { median: number; p95: number; least: number };

/** Milliseconds from sorted samples. */
export function summarise(samples: number[]): Measured {
  const sorted = samples.toSorted((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
  return { median: at(0.5), p95: at(0.95), least: at(0) };
}

/** Prints one measured line, and makes the run fail if it is above its limit. */
export function tell(name: string, { median, p95, least }: Measured, atMostMs?: number): void {
  const isSlow = atMostMs !== undefined && median > atMostMs;
  if (isSlow) process.exitCode = 1;
  const numbers = [median, p95, least].map((ms) => ms.toFixed(ms < 10 ? 2 : 0).padStart(8)).join(' ');
  const limit = atMostMs === undefined ? '' : `  ${isSlow ? 'TOO SLOW, limit' : 'limit'} ${atMostMs}`;
  console.log(`${name.padEnd(52)} ${numbers} ms (median, 95 %, least)${limit}`);
}

/** Measures `work`, prints the line and answers the numbers. `work` may be async; what it returns is ignored. */
export async function bench(
  name: string,
  work: () => unknown,
  options: BenchOptions = {},
): Promise<Measured> {
  const times = options.times ?? 15;
  for (let i = 0; i < Math.ceil(times / 10); i += 1) await work();
  const samples: number[] = [];
  for (let i = 0; i < times; i += 1) {
    const since = performance.now();
    await work();
    samples.push(performance.now() - since);
  }
  const measured = summarise(samples);
  tell(name, measured, options.atMostMs);
  return measured;
}
