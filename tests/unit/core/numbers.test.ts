/** Numbers that no count can be: refused with a problem, or taken and answered with numbers that are. */
import { describe, expect, it } from 'vitest';
import { badNumbers, nasty, pathsIn, withValue } from './nasty.ts';
import { publicFunctions, takesNumbers, usual } from './public-face.ts';

/** 0 or 1 by their types, and no counts. */
const isEither = (path: (string | number)[]): boolean => ['counts', 'adds'].includes(`${path.at(-1)}`);

const numbers = nasty.filter(([, value]) => typeof value === 'number' && !Object.is(value, -0));
const functions = new Map(publicFunctions);

const readAt = (value: unknown, path: (string | number)[]): unknown =>
  path.reduce<unknown>((inner, key) => (inner as Record<string | number, unknown>)[key], value);

describe.each(takesNumbers)('%s', (name, argument) => {
  const run = functions.get(name);
  const args = usual[name] ?? [];
  const paths = pathsIn(args[argument]).filter(
    (path) => typeof readAt(args[argument], path) === 'number' && !isEither(path),
  );

  it('has numbers to be tried', () => {
    expect(paths.length).toBeGreaterThan(3);
    expect(run?.(...args)).toMatchObject({ ok: true });
  });

  it.each(paths.map((path) => [path.join('.'), path] as const))(
    'answers whatever stands at %s',
    (_, path) => {
      const wrong = numbers.flatMap(([what, value]) => {
        const given = args.map((one, i) => (i === argument ? withValue(one, path, value) : one));
        const answer = run?.(...given) as { ok: boolean; problems?: unknown[] };
        const isAnswer = answer.ok || (answer.problems?.length ?? 0) > 0;
        return [...badNumbers(answer), ...(isAnswer ? [] : ['no answer'])].map(
          (found) => `${what}: ${found}`,
        );
      });
      expect(wrong).toEqual([]);
    },
  );
});

describe.each(Object.entries(usual))('%s', (name, args) => {
  it('leaves what it is given as it is', () => {
    const frozen = structuredClone(args.filter((arg) => !ArrayBuffer.isView(arg)));
    const before = JSON.stringify(frozen);
    functions.get(name)?.(...deepFrozen(frozen));
    expect(JSON.stringify(frozen)).toBe(before);
  });
});

function deepFrozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value;
  for (const inner of Object.values(value)) deepFrozen(inner);
  return Object.freeze(value);
}
