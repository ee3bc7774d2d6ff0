/** Causes that stand in one entry of the list: one and the same look tells them apart, or only their place differs. */
import type { Explanation } from '../../core/index.ts';

/** `isElsewhere`: the others are the same slips, in other places. */
export type Group = { best: Explanation; others: Explanation[]; isElsewhere: boolean };

/** In the order of their best; what no look tells of stands by itself. */
export function groupsOf(explanations: readonly Explanation[]): Group[] {
  const byName = new Map<string, Group>();
  const groups: Group[] = [];
  for (const one of explanations) {
    const [look, slips] = [lookOf(one), slipsOf(one)];
    const known = (look !== null && byName.get(look)) || byName.get(slips);
    if (known) {
      known.others.push(one);
      known.isElsewhere &&= slipsOf(known.best) === slips;
      continue;
    }
    const group = { best: one, others: [], isElsewhere: true };
    groups.push(group);
    if (look !== null) byName.set(look, group);
    byName.set(slips, group);
  }
  return groups;
}

/** One slip and two are never told in one breath. */
function lookOf({ tell: [tell], causes }: Explanation): string | null {
  return tell ? `${causes.length} ${tell.key}` : null;
}

/** What was done, and how much of it, but not where. */
const slipsOf = ({ causes }: Explanation): string =>
  JSON.stringify(
    causes.map(({ kind, habit, mishaps: [first], front: [side], backMadeFor }) => [
      kind,
      habit,
      first?.round,
      first?.edging,
      first?.count,
      first?.end,
      first?.then,
      side?.by,
      backMadeFor,
    ]),
  );
