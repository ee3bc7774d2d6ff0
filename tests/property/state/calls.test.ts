/** What a change costs: core is asked once each for what the change bears on, and not at all for the rest. */
import { afterEach, expect, test, vi } from 'vitest';
import { example, standardSettings } from '../../../src/state/project.ts';
import type { AppEvent } from '../../../src/state/snapshot.ts';
import { openStore } from '../../../src/state/store.ts';

const counted = ['readEdge', 'planBack', 'mishapsOf', 'work', 'pair', 'steps'] as const;
type Counted = (typeof counted)[number];

const calls = vi.hoisted(() => ({ of: {} as Record<string, number> }));

vi.mock('../../../core/index.ts', async (original) => {
  const core = await original<Record<string, unknown>>();
  const counting = Object.entries(core).map(([name, value]) => [
    name,
    typeof value !== 'function'
      ? value
      : (...given: unknown[]) => {
          calls.of[name] = (calls.of[name] ?? 0) + 1;
          return value(...given);
        },
  ]);
  return Object.fromEntries(counting);
});

const stores: { stop(): void }[] = [];
afterEach(() => {
  for (const store of stores.splice(0)) store.stop();
});

/** How often each was asked for by the last of the events. */
function callsOf(...events: AppEvent[]): Record<Counted, number> {
  const start = {
    project: example,
    settings: standardSettings,
    tab: 'edge',
    place: 0,
    answered: [],
  } as const;
  const store = openStore(start);
  stores.push(store);
  for (const event of events.slice(0, -1)) store.send(event);
  calls.of = {};
  store.send(events.at(-1) as AppEvent);
  return Object.fromEntries(counted.map((name) => [name, calls.of[name] ?? 0])) as Record<Counted, number>;
}

const none = { readEdge: 0, planBack: 0, mishapsOf: 0, work: 0, pair: 0, steps: 0 };
const all = { readEdge: 1, planBack: 1, mishapsOf: 1, work: 1, pair: 1, steps: 1 };
const type = (field: string, text: string): AppEvent => ({ type: 'TYPE', field, text });
const mishap: AppEvent = {
  type: 'CHANGE',
  project: { mishaps: [{ kind: 'stitch-missed', round: 'edging', edging: 0, side: 1, place: 6, count: 1 }] },
};

test.each<[string, AppEvent[], Record<Counted, number>]>([
  ['a side typed', [type('side.1', '41')], all],
  ['a side typed, with a mishap in', [mishap, type('side.1', '41')], all],
  ['the same number in other words', [type('side.1', '40 st')], none],
  ['where the back begins', [type('lead', '12')], { ...all, readEdge: 0 }],
  ['a count on the work', [type('worked.edging.0.1', '39')], { ...all, readEdge: 0, planBack: 0 }],
  ['a mishap put in', [mishap], { ...all, readEdge: 0, planBack: 0 }],
  [
    'another manner of joining',
    [{ type: 'SETTLE', settings: { manner: 'stitch-by-stitch' } }],
    { ...none, pair: 1, steps: 1 },
  ],
  ['the pace', [{ type: 'SETTLE', settings: { pace: 700 } }], none],
  [
    'a colour of yarn',
    [{ type: 'SETTLE', settings: { yarns: { ...standardSettings.yarns, front: '#112233' } } }],
    none,
  ],
  ['the terms', [{ type: 'SETTLE', settings: { dialect: 'us' } }], none],
  ['another place of the app', [{ type: 'SHOW', tab: 'walk' }], none],
  ['a stitch of the walk', [{ type: 'NEXT' }], none],
  ['something pointed at', [{ type: 'POINT', at: { round: 'front', edging: 0, node: 3 } }], none],
  ['a side that cannot be read', [type('side.1', 'forty')], { ...none, readEdge: 1 }],
  ['a count that cannot be read', [type('worked.edging.0.1', '62-63')], none],
  ['a cloth measure', [type('cloth.width.0', '41')], none],
])('%s', (_, events, expected) => {
  expect(callsOf(...events)).toEqual(expected);
});
