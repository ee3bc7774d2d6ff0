/**
 * One position in words: what it is, what it is worked into, and its partner. For the pointer and for the twin.
 * Numbers are the maker's own: from 1, in the working order of the piece, each side from its corner.
 */
import { NodeKind, type Round } from '../../core/index.ts';
import type { Pointed } from '../state/snapshot.ts';
import * as say from '../words/position.ts';
import type { Speech } from '../words/words.ts';
import { pointedOn } from './focus.ts';
import { type Drawn, type Ring, ringFor } from './ring.ts';
import { isCorner, type Stretch } from './rounds.ts';
import { slotAt, stretchAt } from './slots.ts';
import { frontStretches } from './whole/build.ts';

export type Described = { title: string; lines: string[] };

/** What stands at a position, without words: for rows of the twin as well. */
export type Standing = {
  /** Side from 0, or the corner it belongs to. */
  side: number;
  corner: number;
  /** Place in its stretch from 0, and how many the stretch has. */
  place: number;
  of: number;
  /** Part of side 0 after the last corner. */
  tail: boolean;
  kind: say.PositionKind;
};

const FRONT_KINDS = { stitch: 'stitch', chain: 'chain' } as const;

/** A node by the index of its round in `ring.rounds`; -1 is the front. */
export type RingNode = { index: number; node: number };

function standingOnFront(drawn: Drawn, node: number): Standing {
  const stretches = frontStretches(drawn.edge);
  const stretch =
    stretches[
      stretchAt(
        stretches.map(({ from }) => from),
        node,
      )
    ]!;
  const made = drawn.edge.corners[stretch.corner]?.made ?? 'chain';
  const kind = node < stretch.cornerFrom ? 'stitch' : made === 'stitch' ? 'corner-stitch' : FRONT_KINDS.chain;
  return standing(stretch, node, kind);
}

function standingOnRound(ring: Ring, { index, node }: RingNode): Standing {
  const { round, stretches, name } = ring.rounds[index]!;
  const stretch =
    stretches[
      stretchAt(
        stretches.map(({ from }) => from),
        node,
      )
    ]!;
  return standing(stretch, node, kindOf(round, node, name === 'foundation'));
}

function kindOf(round: Round, node: number, foundation: boolean): say.PositionKind {
  const kind = round.kinds[node]!;
  if (isCorner(kind)) return kind === NodeKind.cornerStitch ? 'corner-stitch' : 'chain';
  if (kind === NodeKind.closing) return 'closing';
  if (kind === NodeKind.start) return 'start';
  return foundation ? 'foundation-treble' : 'double-crochet';
}

function standing(stretch: Stretch, node: number, kind: say.PositionKind): Standing {
  const inCorner = node >= stretch.cornerFrom;
  return {
    side: stretch.side,
    corner: inCorner ? stretch.corner : -1,
    place: node - (inCorner ? stretch.cornerFrom : stretch.from),
    of: inCorner ? stretch.to - stretch.cornerFrom : stretch.cornerFrom - stretch.from,
    tail: stretch.corner < 0,
    kind,
  };
}

/** Index in `ring.rounds`, or -1 for the front. */
const roundIndex = (pointed: Pick<Pointed, 'round' | 'edging'>): number =>
  pointed.round === 'front' ? -1 : pointed.round === 'foundation' ? 0 : pointed.edging + 1;

export const standingAt = (drawn: Drawn, ring: Ring, at: RingNode): Standing =>
  at.index < 0 ? standingOnFront(drawn, at.node) : standingOnRound(ring, at);

/** Words for a position; null where the making has no such position. */
export function describePosition(drawn: Drawn, pointed: Pointed, speech: Speech): Described | null {
  const ring = ringFor(drawn);
  if (!pointedOn(ring, pointed)) return null;
  const index = roundIndex(pointed);
  const at = { index, node: pointed.node };
  const words = { speech, edgings: ring.rounds.length - 1, round: drawn.edge.corners.length === 0 };
  const here = standingAt(drawn, ring, at);
  const lines = [say.sayKind(here, words)];
  const into = index >= 1 ? ring.rounds[index]!.round.into[pointed.node]! : -1;
  if (into >= 0)
    lines.push(say.sayInto(index - 1, standingAt(drawn, ring, { index: index - 1, node: into }), words));
  if (index >= 0 && ring.rounds[index]!.marks.some(({ node }) => node === pointed.node)) {
    lines.push(say.sayMishap());
  }
  lines.push(...partnerLines(drawn, ring, at, words));
  return { title: say.sayPosition(index, here, words), lines };
}

/** The partner of a position on the two lanes that meet; other rounds have none. */
export function partnerOf(ring: Ring, { index, node }: RingNode): RingNode | null {
  const last = ring.rounds.length - 1;
  if (index >= 0 && index !== last) return null;
  const slots = index < 0 ? ring.frontSlots() : ring.roundSlots(last);
  const { front, back } = slotAt(ring.slots, slots[node]!);
  const other = index < 0 ? back : front;
  return other < 0 ? null : { index: index < 0 ? last : -1, node: other };
}

export const meetsAnother = (ring: Ring, index: number): boolean =>
  index < 0 || index === ring.rounds.length - 1;

function partnerLines(drawn: Drawn, ring: Ring, at: RingNode, words: say.PositionWords): string[] {
  if (!meetsAnother(ring, at.index)) return [];
  const partner = partnerOf(ring, at);
  if (!partner) return [say.sayAlone()];
  return [say.sayPartner(partner.index, standingAt(drawn, ring, partner), words)];
}
