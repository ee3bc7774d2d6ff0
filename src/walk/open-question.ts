import type { Snapshot } from '../state/snapshot.ts';

export type Asked = NonNullable<Snapshot['step']['asks']>;

/** The question this step asks and nobody has answered yet. */
export function openQuestion({ step, answered }: Snapshot): Asked | null {
  return step.asks && !answered.includes(step.asks) ? step.asks : null;
}
