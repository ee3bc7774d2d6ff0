/** Values that no form would give, but a damaged file, a changed link or another program might. */

const cyclic: Record<string, unknown> = { sides: [1] };
cyclic.self = cyclic;
const cyclicList: unknown[] = [];
cyclicList.push(cyclicList);

const revoked = Proxy.revocable({}, {});
revoked.revoke();

const boom = (): never => {
  throw new Error('touched');
};

/** Every property is a getter that throws. */
const trapped = Object.defineProperties(
  {},
  Object.fromEntries(
    ['sides', 'corner', 'corners', 'counted', 'kind', 'made', 'size', 'edge', 'choices', 'arm', 'side'].map(
      (key) => [key, { enumerable: true, get: boom }],
    ),
  ),
);

const listWithGetter: unknown[] = [1, 2, 3, 4];
Object.defineProperty(listWithGetter, 1, { get: boom });

const longList: unknown[] = [];
longList.length = 4_294_967_295;

const throwing = new Proxy(
  {},
  { get: boom, has: boom, ownKeys: boom, getOwnPropertyDescriptor: boom, getPrototypeOf: boom },
);

export const nasty: [name: string, value: unknown][] = [
  ['undefined', undefined],
  ['null', null],
  ['NaN', Number.NaN],
  ['Infinity', Number.POSITIVE_INFINITY],
  ['-Infinity', Number.NEGATIVE_INFINITY],
  ['-0', -0],
  ['-1', -1],
  ['a half', 0.5],
  ['1e308', 1e308],
  ['2 ** 53', 2 ** 53],
  ['2 ** 31', 2 ** 31],
  ['true', true],
  ['digits', '12'],
  ['no text', ''],
  ['a long text', 'x'.repeat(10_000)],
  ['__proto__', '__proto__'],
  ['constructor', 'constructor'],
  ['toString', 'toString'],
  ['a symbol', Symbol('twelve')],
  ['a big integer', 12n],
  ['a function', () => 12],
  ['a wrapped number', Object(12)],
  ['no date', new Date(Number.NaN)],
  ['a map', new Map([['sides', [1]]])],
  ['an empty list', []],
  ['a list of holes', new Array(4)],
  ['a list of nothing', [null, undefined, Number.NaN]],
  ['a list in a list', [[12]]],
  ['a list too long to keep', longList],
  ['a list with a getter', listWithGetter],
  ['a list that holds itself', cyclicList],
  ['an empty object', {}],
  ['an object that holds itself', cyclic],
  ['an object without prototype', Object.assign(Object.create(null), { sides: [12], made: 'chain' })],
  ['a frozen object', Object.freeze({ size: 2 })],
  [
    'an object that inherits',
    Object.create({ sides: [12], corner: [], counted: 'stitches-only', made: 'chain' }),
  ],
  ['an object with a __proto__ key', JSON.parse('{"__proto__": {"made": "chain", "size": 2}, "size": 2}')],
  ['an object with getters that throw', trapped],
  ['a proxy that throws', throwing],
  ['a revoked proxy', revoked.proxy],
  ['small columns', new Uint8Array(12)],
  ['columns of fractions', new Float64Array([Number.NaN])],
  ['a buffer', new ArrayBuffer(8)],
];

type Path = (string | number)[];

/** Paths to every value inside plain data, the data itself first. Of long columns only the column. */
export function pathsIn(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return [path];
  const keys = Array.isArray(value) ? [...value.keys()] : Object.keys(value);
  return [path, ...keys.flatMap((key) => pathsIn((value as Record<string, unknown>)[key], [...path, key]))];
}

/** The data with one value put in another's place; only what lies on the way is copied. */
export function withValue(data: unknown, path: Path, value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  const copy: Record<string | number, unknown> = Array.isArray(data)
    ? (data.slice() as unknown as Record<number, unknown>)
    : { ...(data as Record<string, unknown>) };
  copy[key] = withValue(copy[key], rest, value);
  return copy;
}

/** Numbers in an answer that are none, by their paths; functions and columns are passed over. */
export function badNumbers(value: unknown, path = ''): string[] {
  if (typeof value === 'number')
    return Number.isFinite(value) && !Object.is(value, -0) ? [] : [`${path}: ${value}`];
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return [];
  return Object.entries(value).flatMap(([key, inner]) => badNumbers(inner, `${path}.${key}`));
}
