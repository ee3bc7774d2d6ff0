/** Every public function of core, with what it is given when all is well. */
import * as cloth from '../../../core/cloth/index.ts';
import * as core from '../../../core/index.ts';

/** These take what is typed, and are given nothing else. */
const typed = new Set([
  ...Object.keys(cloth),
  'actOf',
  'checkActs',
  'entryOf',
  'has',
  'kindsIn',
  'needs',
  'placeBounds',
  'roundsOf',
  'stepOfAct',
  'stepOfKind',
  'whyNot',
]);

export type Anything = (...given: unknown[]) => unknown;
export const publicFunctions = Object.entries<unknown>(core).filter(
  (entry): entry is [string, Anything] => typeof entry[1] === 'function' && !typed.has(entry[0]),
);

function given<T>(result: core.Result<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

export const input: core.EdgeInput = {
  sides: [12, 9, 12, 8],
  corner: [
    { made: 'chain', size: 2 },
    { made: 'chain', size: 1 },
    { made: 'stitch', size: 1 },
    { made: 'chain', size: 0 },
  ],
  counted: 'one-corner',
};
const choices: core.Choices = {
  edgings: [{ arm: [1, 2], corner: { made: 'chain', size: 2 } }, { arm: 1 }],
  foundationCorner: { made: 'chain', size: 2 },
  start: { side: 1, lead: 1 },
  foundationStart: { counts: 0 },
  foundationClosing: { adds: 1 },
  edgingClosing: { adds: 1 },
  joinStart: { side: 0, fromCorner: 3 },
  markerEvery: 5,
};
export const mishaps: core.Mishap[] = [
  { kind: 'stitch-missed', round: 'foundation', side: 1, place: 1, count: 1 },
  { kind: 'corner-moved', round: 'edging', edging: 1, corner: 1, count: -1, then: 'from-total' },
  { kind: 'arm-missed', corner: 0, end: 'before' },
  { kind: 'join-chain-skipped', corner: 1 },
];
const edge = given(core.readEdge(input));
export const plan = given(core.planBack(edge, choices));
const worked = core.work(plan, mishaps);
const [, second = 0] = plan.foundation.sides;
const seen = {
  foundation: { sides: [null, second, null, null], corners: [2, null, null, null] },
  join: { drift: [null, null, null, null], leftOver: 0 },
};

/** What every public function is given when all is well. */
export const usual: Record<string, unknown[]> = {
  readEdge: [input],
  planBack: [edge, choices],
  planFrontStrip: [plan],
  work: [plan, mishaps],
  countRound: [worked.edgings[0]],
  pair: [edge, worked.edgings[1]!, { start: worked.join, manner: 'corner-to-corner', easing: 'spread' }],
  ease: [40, 3],
  checkRounds: [
    { corner: { made: 'chain', size: 2 }, arm: [1, 1], sides: [3, 5], totals: [12, null], roundsNamed: 1 },
  ],
  checkActs: [mishaps, plan],
  steps: [plan, mishaps, { manner: 'stitch-by-stitch' }],
  explain: [plan, seen, { causes: 1 }],
  mishapsOf: [plan, seen, mishaps],
};

/** Functions that take a person's numbers, with the argument that holds them. */
export const takesNumbers: [name: string, argument: number][] = [
  ['readEdge', 0],
  ['planBack', 1],
  ['checkRounds', 0],
];
