/** Where on the ring the hook is at a step, and on which round. */
import type { Step, StepTarget } from '../../core/index.ts';
import type { Pointed } from '../state/snapshot.ts';
import type { Ring } from './ring.ts';
import { slotOfJoin } from './slots.ts';

export type Focus = {
  slot: number;
  /** Index in `ring.rounds` of the round being made; -1 on the front and in the join. */
  working: number;
  /** False where the step is at no place: sewing the cloth, the end. */
  placed: boolean;
};

const within = (slots: Float32Array, node: number): number =>
  slots[Math.max(0, Math.min(slots.length - 1, node))] ?? 0;

export function focusOf(ring: Ring, step: Step): Focus {
  const { stage, node, done } = step;
  switch (stage) {
    case 'front':
      return { slot: within(ring.frontSlots(), node), working: -1, placed: true };
    case 'foundation':
    case 'foundation-closing':
      return onRound(ring, 0, step);
    case 'edging':
    case 'edging-closing':
      return onRound(ring, Math.min(step.edging + 1, ring.rounds.length - 1), step);
    case 'join':
    case 'join-closing':
      if (node >= 0) return { slot: within(ring.frontSlots(), node), working: -1, placed: true };
      return { slot: slotOfJoin(ring.slots, done - 1), working: -1, placed: stage === 'join' && done > 0 };
    default:
      return { slot: ring.slots.shift, working: -1, placed: false };
  }
}

/** A step that makes nothing lies where it is worked into, or at the last stitch made. */
function onRound(ring: Ring, working: number, { node, done, target }: Step): Focus {
  const own = node >= 0 ? node : done - 1;
  if (own < 0 && target.node >= 0 && working > 0) {
    return { slot: within(ring.roundSlots(working - 1), target.node), working, placed: true };
  }
  return { slot: within(ring.roundSlots(working), own), working, placed: true };
}

/** Slot and row of what the hook goes into; row -1 is the front edge. Null where it goes into nothing. */
export function targetOf(ring: Ring, target: StepTarget): { slot: number; round: number } | null {
  if (target.on === 'nothing' || target.loop === 'none' || target.node < 0) return null;
  if (target.on === 'front') return { slot: within(ring.frontSlots(), target.node), round: -1 };
  const round = target.on === 'foundation' ? 0 : Math.min(target.edging + 1, ring.rounds.length - 1);
  return { slot: within(ring.roundSlots(round), target.node), round };
}

/** Slot and row of a place pointed at; null where the making has no such place. */
export function pointedOn(ring: Ring, pointed: Pointed): { slot: number; round: number } | null {
  const round = pointed.round === 'front' ? -1 : pointed.round === 'foundation' ? 0 : pointed.edging + 1;
  if (round >= ring.rounds.length) return null;
  const slots = round < 0 ? ring.frontSlots() : ring.roundSlots(round);
  if (!(pointed.node >= 0 && pointed.node < slots.length)) return null;
  return { slot: slots[pointed.node]!, round };
}
