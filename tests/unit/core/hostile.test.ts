import { describe, expect, it } from 'vitest';
import * as core from '../../../core/index.ts';
import { nasty, pathsIn, withValue } from './nasty.ts';
import { input, mishaps, numbersOf, plan, publicFunctions, tries, usual } from './public-face.ts';

describe.each(publicFunctions)('%s', (name, run) => {
  const args = usual[name] ?? [];

  it('answers when all is well', () => {
    expect(numbersOf(run, args)).toEqual([]);
  });

  it('throws nothing when given nothing but nonsense', () => {
    const wrong = nasty.flatMap(([what, value]) => {
      const last = tries.has(name) ? [] : [[args[0], args[1], value]];
      return [[value], [value, value], [args[0], value], ...last, [value, value, value]].flatMap(
        (nonsense) => {
          try {
            return numbersOf(run, nonsense).map((found) => `${what}: ${found}`);
          } catch (error) {
            return [`${what} threw ${error}`];
          }
        },
      );
    });
    expect(wrong).toEqual([]);
  });

  it('leaves what it is given as it is', () => {
    const frozen = structuredClone(args.filter((arg) => !ArrayBuffer.isView(arg)));
    const before = JSON.stringify(frozen);
    run(...deepFrozen(frozen));
    expect(JSON.stringify(frozen)).toBe(before);
  });
});

function deepFrozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value;
  for (const inner of Object.values(value)) deepFrozen(inner);
  return Object.freeze(value);
}

describe('what is inherited', () => {
  it('is no property', () => {
    const inherited = Object.create(input);
    expect(core.readEdge(inherited).ok).toBe(false);
    expect(core.work(Object.create(plan)).ok).toBe(false);
  });

  it('cannot be given by a prototype key', () => {
    const result = core.readEdge(JSON.parse(`{"__proto__": ${JSON.stringify(input)}}`));
    expect(result.ok).toBe(false);
    expect(Object.hasOwn(Object.prototype, 'sides')).toBe(false);
  });
});

describe('a plan that has been tampered with', () => {
  it.each(pathsIn(plan).filter((path) => typeof readAt(plan, path) === 'number'))(
    'is refused at %s.%s',
    (...path) => {
      const number = readAt(plan, path) as number;
      const changed = core.work(withValue(plan, path, number + 1));
      // A choice may be changed where everything else would come out the same; a count never.
      if (changed.ok) expect(path[0]).toBe('choices');
      else expect(changed.problems).toEqual([{ at: 'plan', code: 'unreadable', params: {} }]);
    },
  );

  it('is taken when it was only kept and read again', () => {
    expect(core.work(JSON.parse(JSON.stringify(plan)), mishaps)).toEqual(core.work(plan, mishaps));
  });
});

function readAt(value: unknown, path: (string | number)[]): unknown {
  return path.reduce<unknown>((inner, key) => (inner as Record<string | number, unknown>)[key], value);
}
