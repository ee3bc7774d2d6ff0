/** One making laid on the ring of slots: computed once, when first asked for, and kept with the making. */
import type { Round } from '../../core/index.ts';
import type { Making } from '../state/snapshot.ts';
import { type Stretch, slotsBelow, stretchesOf } from './rounds.ts';
import { backSlots, frontSlots, ringOf, type Slots } from './slots.ts';

/** What the drawing needs of a making. */
export type Drawn = Pick<Making, 'edge' | 'plan' | 'acts' | 'worked' | 'pairing' | 'known'>;

type LaidRound = {
  name: 'foundation' | 'edging';
  edging: number;
  round: Round;
  stretches: Stretch[];
  /** Where the hand is known to have done otherwise, or is asked to: what only makes a count typed has no place. */
  marks: Round['marks'];
};

export type Ring = {
  slots: Slots;
  /** Foundation first, then the edgings from the inside out. */
  rounds: LaidRound[];
  frontSlots(): Float32Array;
  /** Slots of the nodes of `rounds[index]`. */
  roundSlots(index: number): Float32Array;
};

const rings = new WeakMap<Drawn['pairing'], { drawn: Drawn; ring: Ring }>();

/** The ring of a making. The same pairing on the same work gives the same ring. */
export function ringFor(drawn: Drawn): Ring {
  const known = rings.get(drawn.pairing);
  const isSame = known?.drawn.worked === drawn.worked && known.drawn.edge === drawn.edge;
  if (known && isSame && known.drawn.known === drawn.known) return known.ring;
  const ring = layRing(drawn);
  rings.set(drawn.pairing, { drawn, ring });
  return ring;
}

function layRing({ edge, worked, pairing, known = Number.POSITIVE_INFINITY }: Drawn): Ring {
  const marksOf = ({ marks }: Round) => marks.filter(({ mishap }) => mishap < known);
  const slots = ringOf(edge, pairing);
  const rounds: LaidRound[] = [
    {
      name: 'foundation',
      edging: 0,
      round: worked.foundation,
      stretches: stretchesOf(worked.foundation, 'foundation'),
      marks: marksOf(worked.foundation),
    },
    ...worked.edgings.map((round, edging) => ({
      name: 'edging' as const,
      edging,
      round,
      stretches: stretchesOf(round, `edging${edging}`),
      marks: marksOf(round),
    })),
  ];
  const own: (Float32Array | undefined)[] = [];
  let front: Float32Array | undefined;
  const roundSlots = (index: number): Float32Array => {
    const known = own[index];
    if (known) return known;
    const laid =
      index === rounds.length - 1
        ? backSlots(slots)
        : slotsBelow(
            rounds[index + 1]!.round,
            roundSlots(index + 1),
            rounds[index]!.round,
            Math.max(1, slots.count),
          );
    own[index] = laid;
    return laid;
  };
  return {
    slots,
    rounds,
    frontSlots: () => {
      front ??= frontSlots(slots);
      return front;
    },
    roundSlots,
  };
}
