/** The making cut into sections: so many steps of one stage, each made only when asked for. */
import type { Stage, Step, StepKind, StepTarget } from '../types.ts';

export type Section = {
  length: number;
  stage: Stage;
  edging: number;
  /** The step at an offset within the section; its `index` is filled in by `steps`. */
  at(offset: number): Step;
  /** The offset of the step that makes a node (in the join: joins a front position), or -1. */
  find(node: number): number;
  /** Offsets at which a side or corner begins. */
  stretches: { offset: number; side: number; corner: number }[];
};

export const nowhere: StepTarget = { on: 'nothing', edging: 0, node: -1, loop: 'none' };

/** A step with nothing in it but what is given. */
export function bareStep(
  stage: Stage,
  kind: StepKind,
  given: Partial<Omit<Step, 'stage' | 'kind' | 'index'>> = {},
): Step {
  return {
    index: 0,
    stage,
    kind,
    edging: 0,
    side: -1,
    corner: -1,
    place: -1,
    of: 0,
    node: -1,
    backNode: -1,
    target: nowhere,
    yarn: 'none',
    loopsBefore: 1,
    loopsAfter: 1,
    done: 0,
    ofRound: 0,
    toMarker: -1,
    toCorner: -1,
    marker: false,
    ...given,
  };
}

/** A section of single acts, each with a kind of its own. */
export function actsSection(stage: Stage, edging: number, steps: Step[]): Section {
  return {
    length: steps.length,
    stage,
    edging,
    at: (offset) => steps[offset] as Step,
    find: (node) => steps.findIndex((act) => act.node >= 0 && act.node === node),
    stretches: [{ offset: 0, side: -1, corner: -1 }],
  };
}

/** Where markers fall along a leg, after every `every` stitches of it, and how far the corner at its end is, if there is one. */
export function markerAhead(
  place: number,
  of: number,
  every: number,
  endsInCorner: boolean,
): { toMarker: number; toCorner: number; marker: boolean } {
  const ahead = every - 1 - (place % every);
  return {
    toMarker: place + ahead < of ? ahead : -1,
    toCorner: endsInCorner ? of - 1 - place : -1,
    marker: ahead === 0,
  };
}
