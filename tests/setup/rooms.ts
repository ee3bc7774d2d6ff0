/**
 * The rooms and what flows between them, drawn from what the code imports: `npm run rooms` puts the picture into
 * DEVELOPERS.md, and a test says if it is no longer true.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { type Import, importsOf, readSources } from './sources.ts';

const places = ['edge', 'cloth', 'walk', 'wrong', 'take-along'];

/** The room a file belongs to; the five places of the app are one, and so are the files that put all together. */
function roomOf(path: string): string | null {
  if (path.startsWith('core/')) return 'core';
  const [top, room, file] = path.split('/');
  if (top !== 'src' || !room) return null;
  if (!file) return 'main';
  return places.includes(room) ? 'places' : room;
}

/** From each room to those that use its values (not only its types), without what follows from others. */
export function flowsOf(imports: readonly Import[]): [from: string, to: string][] {
  const uses = new Map<string, Set<string>>();
  for (const { from, target, typesOnly } of imports) {
    const [user, used] = [roomOf(from), roomOf(target)];
    if (typesOnly || !user || !used || user === used) continue;
    uses.set(user, (uses.get(user) ?? new Set()).add(used));
  }
  const reaches = (user: string, used: string, seen = new Set<string>()): boolean =>
    [...(uses.get(user) ?? [])].some(
      (next) => next === used || (!seen.has(next) && reaches(next, used, seen.add(next))),
    );
  return [...uses]
    .flatMap(([user, all]) =>
      [...all]
        .filter(
          (used) =>
            ![...all].some((other) => other !== used && reaches(other, used) && !reaches(other, user)),
        )
        .map((used): [string, string] => [used, user]),
    )
    .sort(([a, b], [c, d]) => `${a} ${b}`.localeCompare(`${c} ${d}`));
}

const begin = '<!-- drawn by npm run rooms -->';
const end = '<!-- end -->';

export function pictureOf(imports: readonly Import[]): string {
  const lines = flowsOf(imports).map(([from, to]) => `  ${from} --> ${to}`);
  return [begin, '```mermaid', 'flowchart LR', ...lines, '```', end].join('\n');
}

/** The text with the picture as it is now. */
export function withPicture(text: string, picture: string): string {
  return text.replace(new RegExp(`${begin}[\\s\\S]*?${end}`), () => picture);
}

/** Of the code as it stands. */
export const picture = (): string => pictureOf(readSources(['src', 'core']).flatMap(importsOf));

if (process.argv[2] === 'write')
  writeFileSync('DEVELOPERS.md', withPicture(readFileSync('DEVELOPERS.md', 'utf8'), picture()));
