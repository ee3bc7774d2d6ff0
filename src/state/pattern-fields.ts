/** What is typed for the written pattern; kept with the project as any other text. */
import type { Field } from './snapshot.ts';

export const patternFields = {
  title: 'pattern.title',
  designer: 'pattern.designer',
  notes: 'pattern.notes',
  /** `both` where UK and US terms stand beside each other. */
  terms: 'pattern.terms',
  /** One size a line: "small: 62, 38, 62, 38". */
  sizes: 'pattern.sizes',
  /** The rule by which sizes are filled in: stitches more a side, and how many sizes. */
  ruleMore: 'pattern.rule-more',
  ruleCount: 'pattern.rule-count',
  /** A written pattern that is checked, and how it says its rounds are worked. */
  checked: 'pattern.checked',
  checkSides: 'pattern.check-sides',
  checkCorner: 'pattern.check-corner',
  checkArm: 'pattern.check-arm',
  /** Not empty where its totals take the corners in. */
  checkTakes: 'pattern.check-takes',
} as const satisfies Record<string, Field>;

const all: ReadonlySet<Field> = new Set(Object.values(patternFields));
export const isPatternField = (field: Field): boolean => all.has(field);
