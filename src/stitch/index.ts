/** Inside a stitch: what the rest of the page uses. */
import './stitch.css';

export { drawing, forHand, stepDrawing, stepScene, wholeScene } from './drawing.ts';
export type { StitchEvent } from './machine.ts';
export { kindOf, type StitchKind } from './moves.ts';
export { type SendStitch, type StitchView, stitchPanel } from './panel.ts';
export { browserMotion, createStitch, MOVE_MS, type Motion, type Stitch } from './stitch.ts';
export { plain, type Variant, variantOf } from './variant.ts';
