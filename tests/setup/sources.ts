/** Reads the project's source files and what each imports, for the tests that hold the import table. */
import { readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { filesUnder, root } from './shell.mjs';

export type Source = { path: string; text: string };

/** One import as written. `target` is a path from the top folder, or the package's name. */
export type Import = { from: string; target: string; typesOnly: boolean };

/** All files under the folders with one of the endings. */
export function readSources(folders: string[], endings = ['.ts']): Source[] {
  return folders.flatMap((folder) =>
    filesUnder(`${root}/${folder}`)
      .filter((name) => endings.some((ending) => name.endsWith(ending)))
      .map((name) => ({
        path: `${folder}/${name}`,
        text: readFileSync(`${root}/${folder}/${name}`, 'utf8'),
      })),
  );
}

/** The text with comments blanked out, line numbers kept. Strings are left alone. */
export function withoutComments(text: string): string {
  const piece =
    /\/\*[\s\S]*?\*\/|(^|[^:\\])\/\/[^\n]*|'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`/g;
  return text.replace(piece, (found, before: string | undefined) => {
    if (found.startsWith('/*')) return found.replace(/[^\n]/g, ' ');
    if (before !== undefined) return before;
    return found;
  });
}

const statement = /(?:^|[\n;])\s*(import|export)\b(\s+type\b)?([^'";=()]*?)from\s*['"]([^'"]+)['"]/g;
const bare = /(?:^|[\n;])\s*import\s*['"]([^'"]+)['"]/g;
const dynamic = /\bimport\s*\(\s*['"`]([^'"`]+)['"`]/g;

/** Where an import leads, from the top folder; a package stays as it is. */
function resolve(from: string, written: string): string {
  const address = written.replace(/[?#].*$/, '');
  return address.startsWith('.') ? posix.join(posix.dirname(from), address) : address;
}

export function importsOf({ path, text }: Source): Import[] {
  const code = withoutComments(text);
  const lead = (written: string, typesOnly: boolean) => ({
    from: path,
    target: resolve(path, written),
    typesOnly,
  });
  return [
    ...[...code.matchAll(statement)].map((found) => lead(found[4] ?? '', found[2] !== undefined)),
    ...[...code.matchAll(bare)].map((found) => lead(found[1] ?? '', false)),
    ...[...code.matchAll(dynamic)].map((found) => lead(found[1] ?? '', false)),
  ];
}

/** Rings of files that import each other, each once, as `a.ts → b.ts → a.ts`. Imports of types count too. */
export function cyclesIn(imports: Import[]): string[] {
  const leadsTo = new Map<string, string[]>();
  for (const { from, target } of imports) leadsTo.set(from, [...(leadsTo.get(from) ?? []), target]);
  const done = new Set<string>();
  const cycles: string[] = [];
  const walk = (file: string, path: string[]) => {
    const seenAt = path.indexOf(file);
    if (seenAt >= 0) {
      cycles.push([...path.slice(seenAt), file].join(' → '));
      return;
    }
    if (done.has(file)) return;
    for (const next of leadsTo.get(file) ?? []) walk(next, [...path, file]);
    done.add(file);
  };
  for (const file of leadsTo.keys()) walk(file, []);
  return cycles;
}
