/** The face of cloth: measuring, cutting, pinning, sewing, yarn. */
export { type Candidate, type CountsWanted, countsFor, type SideCandidates } from './counts.ts';
export { cutCloth } from './cut.ts';
export { type Layout, layOut } from './layout.ts';
export { lieBand } from './lies.ts';
export { type LengthUnit, meanOf, mmPerInch, type Rounding, toTape } from './measuring.ts';
export { type Pad, type PadRule, padFor, padRules, padSizes } from './pad.ts';
export { type Pin, pinsFor, pinsForRound } from './pins.ts';
export { machineThread, type SewingPlan, sewByHand } from './sewing.ts';
export { clothLimits, growPiece, perimeter, pieceBox, pieceCorners, pieceSides } from './shape.ts';
export type * from './types.ts';
export {
  type Ball,
  type Band,
  ballsFor,
  type Enough,
  enoughFor,
  type Swatch,
  swatchByWeighing,
  together,
  type YarnNeed,
  type YarnPart,
  yarnFor,
} from './yarn.ts';
export { hookNames, weightsFor, type YarnWeight, yarnWeights } from './yarn-weights.ts';
