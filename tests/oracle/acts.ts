/**
 * The whole making as a plain list of acts, taken one after another from what the simulation made: the front is
 * counted, every node of every round is one act, every joined pair is one.
 */
import { countRound, NodeKind, type PairRun, type Plan, type Round, type Worked } from '../../core/index.ts';

export type Act = {
  stage: string;
  kind: string;
  edging: number;
  /** What the act makes or joins; -1 where nothing. */
  node: number;
  backNode: number;
  /** The node worked into, where the act makes one. */
  into?: number;
  /** Side or corner of the piece, and place in this leg or corner, where the act makes or joins something. */
  side?: number;
  corner?: number;
  place?: number;
  mishap?: number;
};

const act = (stage: string, kind: string, given: Partial<Act> = {}): Act => ({
  stage,
  kind,
  edging: 0,
  node: -1,
  backNode: -1,
  ...given,
});

const kindOf = (code: number, isFoundation: boolean): string => {
  if (code === NodeKind.cornerChain) return 'corner-chain';
  if (code === NodeKind.cornerStitch) return 'corner-stitch';
  return isFoundation ? 'foundation-treble' : 'double-crochet';
};

type Here = { side: number; corner: number; place: number };

/** Side, corner and place of every node of a round, by walking it. */
function placesOf(round: Round): Here[] {
  const { corners } = countRound(round);
  const places: Here[] = [];
  let here: Here = { side: 0, corner: -1, place: 0 };
  let cornerLeft = 0;
  for (let node = 0; node < round.length; node++) {
    for (const [corner, turn] of round.turns.entries()) {
      if (turn !== node) continue;
      cornerLeft = corners[corner]?.size ?? 0;
      here =
        cornerLeft > 0
          ? { side: -1, corner, place: 0 }
          : { side: (corner + 1) % corners.length, corner: -1, place: 0 };
    }
    places.push({ ...here });
    here.place++;
    if (here.corner >= 0 && --cornerLeft === 0) {
      here = { side: (here.corner + 1) % corners.length, corner: -1, place: 0 };
    }
  }
  return places;
}

function actsOfRound(round: Round, edging: number): Act[] {
  const isFoundation = round.name === 'foundation';
  const places = placesOf(round);
  const marked = new Map(round.marks.map(({ node, mishap }) => [node, mishap]));
  return Array.from(round.kinds, (code, node) => {
    if (code === NodeKind.closing || code === NodeKind.start) return [];
    const mishap = marked.get(node);
    return [
      act(round.name, kindOf(code, isFoundation), {
        edging,
        node,
        into: round.into[node] as number,
        ...(places[node] as Here),
        ...(mishap === undefined ? {} : { mishap }),
      }),
    ];
  }).flat();
}

/** The closing's own stitch, if it has one, and the mishap noted when the round is closed. */
function closing(round: Round): Partial<Act> {
  const isOwn = round.length > 0 && round.kinds[round.length - 1] === NodeKind.closing;
  const at = isOwn ? round.length - 1 : round.length;
  const mark = round.marks.findLast(({ node }) => node === at);
  return { node: isOwn ? at : -1, ...(mark ? { mishap: mark.mishap } : {}) };
}

function frontActs(plan: Plan): Act[] {
  const acts: Act[] = [];
  plan.edge.sides.forEach((count, side) => {
    const size = plan.edge.corners[side]?.size ?? 0;
    for (let place = 0; place < count; place++)
      acts.push(act('front', 'count-stitch', { node: acts.length, side, corner: -1, place }));
    for (let place = 0; place < size; place++)
      acts.push(act('front', 'count-corner', { node: acts.length, side, corner: side, place }));
  });
  return acts;
}

/** The join: everything but the attach place, the pad when only the last side is left, the attach place itself. */
function joinActs(plan: Plan, runs: readonly PairRun[], back: Round): Act[] {
  const fronts = frontActs(plan);
  const held = runs.filter(({ kind }) => kind === 'joined' || kind === 'open');
  // What is taken together with a pair stands right behind it.
  const taken = new Map(
    runs.flatMap((run, i) => (run.together ? [[runs[i - 1] as PairRun, run.together.act] as const] : [])),
  );
  const pairs = held.flatMap((run) =>
    Array.from({ length: run.count }, (_, i) => {
      const node = (run.front + i) % plan.edge.total;
      const { side, corner, place } = fronts[node] as Required<Act>;
      const backNode = (run.back - i + back.length) % back.length;
      const mishap = i === run.count - 1 ? taken.get(run) : undefined;
      const carries = mishap === undefined ? {} : { mishap };
      return act('join', 'slip-stitch', { node, backNode, side, corner, place, ...carries });
    }),
  );
  const isOpen = held[0]?.kind === 'open';
  const [attached, ...rest] = pairs;
  const before = rest.slice(0, Math.max(0, padAfter(plan, pairs) - 1));
  return [
    act('join', 'wrong-sides'),
    act('join', 'join-marker'),
    act('join', 'join-attach'),
    ...before,
    act('join', 'long-loop'),
    act('join', 'pad-in'),
    act('join', 'pin-last'),
    act('join', 'take-loop'),
    ...rest.slice(before.length),
    act('join', 'look-for-holes'),
    ...(attached && !isOpen ? [{ ...attached, kind: 'last-hole' }] : []),
    act('join-closing', 'fasten-off'),
    act('join-closing', 'join-close'),
    act('join-closing', 'ends-inside'),
  ];
}

/** Pairs up to the first stitch of the last side in join order, the attach place counted; three quarters without sides. */
function padAfter(plan: Plan, pairs: Act[]): number {
  const k = plan.edge.sides.length;
  if (k === 1) return Math.floor((pairs.length * 3) / 4);
  const last = (plan.choices.joinStart.side + k - 1) % k;
  const fronts = frontActs(plan);
  const start = pairs[0]?.node ?? 0;
  // Front positions from the start to the last side, whether they found a partner or not.
  const ahead = fronts.map((_, i) => (start + i) % fronts.length);
  const until = ahead.findIndex((node) => fronts[node]?.side === last && fronts[node]?.corner === -1);
  const passed = new Set(ahead.slice(0, until));
  return pairs.filter(({ node }) => passed.has(node)).length;
}

/** Every act of the making, in order. */
export function actsOf(plan: Plan, worked: Worked, runs: readonly PairRun[]): Act[] {
  const { foundation, edgings } = worked;
  const counts = plan.choices.foundationStart.counts;
  return [
    ...frontActs(plan),
    act('foundation', 'slip-knot'),
    act('foundation', 'start-chains', { node: counts === 1 ? 0 : -1 }),
    ...actsOfRound(foundation, 0),
    act('foundation-closing', 'fasten-off'),
    act('foundation-closing', 'tape-ends'),
    act('foundation-closing', 'check-twist'),
    act('foundation-closing', 'close-tops', closing(foundation)),
    act('foundation-closing', 'close-base'),
    act('foundation-closing', 'weave-ends'),
    ...edgings.flatMap((round, edging) => [
      act('edging', 'right-side', { edging }),
      act('edging', 'attach', { edging }),
      act('edging', 'attach-chain', { edging }),
      ...actsOfRound(round, edging),
      act('edging-closing', 'fasten-off', { edging }),
      act('edging-closing', 'close-round', { edging, ...closing(round) }),
      act('edging-closing', 'weave-ends', { edging }),
    ]),
    ...[
      'lay-strip',
      'cloth-centres',
      'cloth-corners',
      'cloth-pins',
      'sew-out',
      'sew-back',
      'sew-fast',
      'pins-out',
      'turn-strip',
    ].map((kind) => act('cloth', kind)),
    ...joinActs(plan, runs, edgings.at(-1) as Round),
    act('finished', 'finished'),
  ];
}
