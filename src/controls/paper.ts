/**
 * The paper of every sheet that is printed: as chosen, or as where the person lives.
 *
 * Rule: a browser language that names a territory tells it; cm or inches tell nothing of paper.
 * Territories that print on Letter: Unicode CLDR, supplemental data, `paperSize` US-Letter (from memory).
 */
import { clothFields } from '../state/cloth-fields.ts';
import type { Project } from '../state/snapshot.ts';

export type Paper = 'a4' | 'letter';

export const paperField = clothFields.paper;

const onLetter = new Set('BZ CA CL CO CR GT MX NI PA PH PR SV US VE'.split(' '));

/** @param languages BCP 47, most wanted first; the first that names a territory counts, and A4 where none does */
export function paperOfLanguages(languages: readonly string[]): Paper {
  const territory = languages.map(territoryOf).find((one) => one !== undefined);
  return territory && onLetter.has(territory) ? 'letter' : 'a4';
}

function territoryOf(language: string): string | undefined {
  try {
    return new Intl.Locale(language).region;
  } catch {
    return undefined;
  }
}

export function paperOf({ texts }: Pick<Project, 'texts'>): Paper {
  const chosen = texts[paperField];
  return chosen === 'a4' || chosen === 'letter' ? chosen : paperOfLanguages(navigator.languages);
}
