/** The other dialect's word beside the person's own, for who wants both: what was said decides which. */
import type { Dialect } from '../state/snapshot.ts';
import { otherDialect, TERM_IDS, type TermForm, type TermId, term } from './terms.ts';

const FORMS: readonly TermForm[] = ['many', 'one', 'short', 'doing', 'done'];

type Word = { id: TermId; says: string };

/** Every word of a dialect, the longest first: "foundation treble" is no "treble". */
const wordsOf = (dialect: Dialect): Word[] =>
  TERM_IDS.flatMap((id) => FORMS.map((form) => ({ id, says: term(id, dialect, form) }))).sort(
    (one, other) => other.says.length - one.says.length,
  );

/** The terms in what was said, each once, in the order in which they are said. */
function termsIn(said: string, dialect: Dialect): TermId[] {
  const found = new Map<TermId, number>();
  let left = said.toLowerCase();
  for (const { id, says } of wordsOf(dialect)) {
    const word = new RegExp(`\\b${says.toLowerCase()}\\b`, 'g');
    left = left.replace(word, (match, at: number) => {
      found.set(id, Math.min(at, found.get(id) ?? at));
      return ' '.repeat(match.length);
    });
  }
  return [...found].sort(([, one], [, other]) => one - other).map(([id]) => id);
}

/** "treble: US double crochet"; empty where both dialects say the same. */
export function sayOtherTerms(said: string, dialect: Dialect): string {
  const other = otherDialect(dialect);
  return termsIn(said, dialect)
    .filter((id) => term(id, dialect) !== term(id, other))
    .map((id) => `${term(id, dialect)}: ${other.toUpperCase()} ${term(id, other)}`)
    .join(' · ');
}
