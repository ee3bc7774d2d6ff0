/** Causes that one and the same look tells apart, as one entry of the list. */
import type { Explanation } from '../../core/index.ts';

export type Group = { best: Explanation; others: Explanation[] };

/** In the order of their best; what no look tells of stands by itself. */
export function groupsOf(explanations: readonly Explanation[]): Group[] {
  const byLook = new Map<string, Group>();
  const groups: Group[] = [];
  for (const one of explanations) {
    const [tell] = one.tell;
    // One slip and two are never told in one breath.
    const key = tell ? `${one.causes.length} ${tell.key}` : null;
    const known = key === null ? undefined : byLook.get(key);
    if (known) {
      known.others.push(one);
      continue;
    }
    const group = { best: one, others: [] };
    groups.push(group);
    if (key !== null) byLook.set(key, group);
  }
  return groups;
}
