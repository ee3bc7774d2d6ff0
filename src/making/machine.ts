/**
 * The making as a statechart: which act is under way, from counting the front to the last end woven in.
 *
 * The place in `steps` decides the state, so a jump and the same number of single steps end alike; a question
 * (is the ring untwisted, is the pad in) bars the way until it is answered. No clock here: playing is the parent's.
 */
import { assign, setup } from 'xstate';
import type { Step, Steps } from '../../core/index.ts';
import type { WalkEvent } from '../state/snapshot.ts';
import { backward, forward, furthest, type Question, questionsOf } from './moving.ts';

type Asks = NonNullable<Step['asks']>;

export type MakingContext = {
  steps: Steps;
  questions: readonly Question[];
  place: number;
  answered: readonly Asks[];
};

export type MakingInput = { steps: Steps; place: number; answered: readonly Asks[] };

/** `TAKE`: the project changed; the making goes on at the same place as far as it reaches. */
export type MakingEvent = WalkEvent | ({ type: 'TAKE' } & Partial<MakingInput> & { steps: Steps });

/** The state a step belongs to, as a path in the chart. */
export function stateOf(step: Step): string {
  switch (step.stage) {
    case 'front':
      return step.corner >= 0 ? 'frontEdge.corner' : 'frontEdge.side';
    case 'foundation':
      if (step.kind === 'slip-knot' || step.kind === 'start-chains') return 'foundation.start';
      return step.corner >= 0 ? 'foundation.corner' : 'foundation.leg';
    case 'foundation-closing':
      if (step.kind === 'fasten-off') return 'foundationClosing.ending';
      if (step.kind === 'tape-ends') return 'foundationClosing.taping';
      if (step.kind === 'check-twist') return 'foundationClosing.untwisted';
      if (step.kind === 'close-tops') return 'foundationClosing.tops';
      return step.kind === 'close-base' ? 'foundationClosing.base' : 'foundationClosing.ends';
    case 'edging':
      if (step.kind === 'right-side') return 'edging.rightSide';
      if (step.kind === 'attach' || step.kind === 'attach-chain') return 'edging.attach';
      return step.corner >= 0 ? 'edging.corner' : 'edging.side';
    case 'edging-closing':
      if (step.kind === 'fasten-off') return 'edgingClosing.ending';
      return step.kind === 'close-round' ? 'edgingClosing.over' : 'edgingClosing.ends';
    case 'cloth':
      return clothState(step);
    case 'join':
      return joinState(step);
    case 'join-closing':
      if (step.kind === 'fasten-off') return 'joinClosing.ending';
      return step.kind === 'join-close' ? 'joinClosing.close' : 'joinClosing.ends';
    case 'finished':
      return 'finished';
  }
}

function clothState({ kind }: Step): string {
  if (kind === 'lay-strip') return 'cloth.laying';
  if (kind.startsWith('cloth-')) return 'cloth.pinning';
  return kind.startsWith('sew-') ? 'cloth.sewing' : 'cloth.turning';
}

function joinState(step: Step): string {
  switch (step.kind) {
    case 'wrong-sides':
    case 'join-marker':
      return 'join.together';
    case 'join-attach':
      return 'join.attach';
    case 'long-loop':
      return 'join.resting';
    case 'pad-in':
      return 'join.pad';
    case 'pin-last':
      return 'join.pinning';
    case 'take-loop':
      return 'join.goingOn';
    case 'look-for-holes':
      return 'join.looking';
    case 'last-hole':
      return 'join.lastHole';
    default:
      return step.corner >= 0 ? 'join.corner' : 'join.side';
  }
}

/** Every state of the chart, each with the acts that come before it in the making. */
export const makingStates = {
  frontEdge: ['side', 'corner'],
  foundation: ['start', 'leg', 'corner'],
  foundationClosing: ['ending', 'taping', 'untwisted', 'tops', 'base', 'ends'],
  edging: ['rightSide', 'attach', 'side', 'corner'],
  edgingClosing: ['ending', 'over', 'ends'],
  cloth: ['laying', 'pinning', 'sewing', 'turning'],
  join: [
    'together',
    'attach',
    'side',
    'corner',
    'resting',
    'pad',
    'pinning',
    'goingOn',
    'looking',
    'lastHole',
  ],
  joinClosing: ['ending', 'close', 'ends'],
  finished: [],
} as const;

const leaves = Object.entries(makingStates).flatMap(([parent, children]) =>
  children.length > 0 ? children.map((child) => `${parent}.${child}`) : [parent],
);

/** The place an event leads to, never past an open question. */
function destination(context: MakingContext, event: MakingEvent): number {
  const { steps, questions, place, answered } = context;
  const wanted = wantedPlace(context, event);
  const bar = furthest(steps, questions, answered);
  // Whoever stands beyond a question already (the project changed) may stay, but not go on.
  return Math.min(Math.max(0, wanted), Math.max(bar, Math.min(place, wanted)), steps.length - 1);
}

function wantedPlace({ steps, place }: MakingContext, event: MakingEvent): number {
  switch (event.type) {
    case 'NEXT':
      return forward(steps, place, event.by ?? 'stitch');
    case 'BACK':
      return backward(steps, place, event.by ?? 'stitch');
    case 'JUMP':
      return Number.isFinite(event.to) ? Math.trunc(event.to) : place;
    default:
      return place;
  }
}

/** An answer opens the way and takes the step it was asked at. */
function answer(context: MakingContext, asks: Asks): Partial<MakingContext> {
  const here = context.steps.at(context.place);
  if (here.asks !== asks) return {};
  const answered = context.answered.includes(asks) ? context.answered : [...context.answered, asks];
  return { answered, place: Math.min(context.place + 1, context.steps.length - 1) };
}

function take(context: MakingContext, event: Extract<MakingEvent, { type: 'TAKE' }>): MakingContext {
  return {
    steps: event.steps,
    questions: questionsOf(event.steps),
    place: Math.min(Math.max(0, event.place ?? context.place), event.steps.length - 1),
    answered: event.answered ?? context.answered,
  };
}

const arrivals = leaves.map((state) => ({
  guard: { type: 'isAt' as const, params: { state } },
  target: `#making.${state}`,
}));

export const makingMachine = setup({
  types: {} as { context: MakingContext; events: MakingEvent; input: MakingInput },
  guards: {
    isAt: ({ context }, params: { state: string }) =>
      stateOf(context.steps.at(context.place)) === params.state,
  },
  actions: {
    move: assign(({ context, event }) => ({ place: destination(context, event) })),
    answer: assign(({ context, event }) => (event.type === 'ANSWER' ? answer(context, event.asks) : {})),
    take: assign(({ context, event }) => (event.type === 'TAKE' ? take(context, event) : {})),
  },
}).createMachine({
  id: 'making',
  context: ({ input }) => ({
    steps: input.steps,
    questions: questionsOf(input.steps),
    place: Math.min(Math.max(0, input.place), input.steps.length - 1),
    answered: input.answered,
  }),
  initial: 'arriving',
  on: {
    NEXT: { target: '.arriving', actions: 'move' },
    BACK: { target: '.arriving', actions: 'move' },
    JUMP: { target: '.arriving', actions: 'move' },
    ANSWER: { target: '.arriving', actions: 'answer' },
    TAKE: { target: '.arriving', actions: 'take' },
  },
  states: {
    arriving: { always: arrivals },
    frontEdge: { initial: 'side', states: { side: {}, corner: {} } },
    foundation: { initial: 'start', states: { start: {}, leg: {}, corner: {} } },
    foundationClosing: {
      initial: 'ending',
      states: { ending: {}, taping: {}, untwisted: {}, tops: {}, base: {}, ends: {} },
    },
    edging: { initial: 'rightSide', states: { rightSide: {}, attach: {}, side: {}, corner: {} } },
    edgingClosing: { initial: 'ending', states: { ending: {}, over: {}, ends: {} } },
    cloth: { initial: 'laying', states: { laying: {}, pinning: {}, sewing: {}, turning: {} } },
    join: {
      initial: 'together',
      states: {
        together: {},
        attach: {},
        side: {},
        corner: {},
        resting: {},
        pad: {},
        pinning: {},
        goingOn: {},
        looking: {},
        lastHole: {},
      },
    },
    joinClosing: { initial: 'ending', states: { ending: {}, close: {}, ends: {} } },
    finished: {},
  },
});
