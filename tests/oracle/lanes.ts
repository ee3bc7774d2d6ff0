/** Puts a pairing's runs into the oracle's words, place by place, so that both can be laid side by side. */
import { countRound, type Edge, type PairRun, type Round } from '../../core/index.ts';
import type { Piece, Place } from './join.ts';

export const pieceOfEdge = ({ sides, corners }: Edge): Piece => ({
  sides,
  corners: corners.map(({ size }) => size),
});

export function pieceOfRound(round: Round): Piece {
  const { sides, corners } = countRound(round);
  return { sides, corners: corners.map(({ size }) => size) };
}

/** Names of all positions, from the first stitch of side 0. */
function namesFromSide0({ sides, corners }: Piece): string[] {
  return sides.flatMap((count, i) => [
    ...Array.from({ length: count }, (_, n) => `S${i}.${n}`),
    ...Array.from({ length: corners[i] ?? 0 }, (_, n) => `C${i}.${n}`),
  ]);
}

/** Names by node: a worked round begins inside side 0, so the stitches before node 0 come last. */
export function namesByNode(round: Round): string[] {
  const names = namesFromSide0(pieceOfRound(round));
  const lastTurn = round.turns.at(-1);
  if (lastTurn === undefined) return names;
  const corner = pieceOfRound(round).corners.at(-1) ?? 0;
  const afterLastCorner = round.length - lastTurn - corner;
  return [...names.slice(afterLastCorner), ...names.slice(0, afterLastCorner)];
}

export function placesOf(runs: readonly PairRun[], front: Edge, back: Round): Place[] {
  const fronts = namesFromSide0(pieceOfEdge(front));
  const backs = namesByNode(back);
  return runs.flatMap((run) =>
    Array.from({ length: run.count }, (_, i): Place => {
      const frontName = fronts[(run.front + i) % fronts.length] as string;
      const backName = backs[(run.back - i + 2 * backs.length) % backs.length] as string;
      return {
        front: run.kind === 'back-alone' ? null : frontName,
        back: run.kind === 'front-alone' ? null : backName,
        joined: run.kind === 'joined',
      };
    }),
  );
}
