/** Reads a built folder: what the page loads at once, what later, and how heavy it is. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { gzipSync } from 'node:zlib';
import { filesUnder } from '../setup/shell.mjs';

export type Built = ReadonlyMap<string, Buffer>;

export function readBuilt(folder: string): Built {
  return new Map(filesUnder(folder).map((name) => [name, readFileSync(`${folder}/${name}`)]));
}

/** SHA-256 of every file. */
export function hashes(built: Built): Record<string, string> {
  const pairs = [...built].map(([name, content]) => [
    name,
    createHash('sha256').update(content).digest('hex'),
  ]);
  return Object.fromEntries(pairs);
}

export const textOf = (built: Built, name: string): string => built.get(name)?.toString('utf8') ?? '';

export type InWorker = { cache: string; files: string[] };

const inWorker = /\{"cache":.*?\]\}/;

/** What the build put into the service worker. */
export const builtInto = (worker: string): InWorker => JSON.parse(inWorker.exec(worker)?.[0] ?? 'null');

/** The worker of another build: the same with another cache and list of files. */
export const withOther = (worker: string, other: InWorker): string =>
  worker.replace(inWorker, () => JSON.stringify(other));

const staticImport = /(?:^|[;}\s])(?:import|export)(?:[\w$\s{},*]*from)?\s*["'`](\.[^"'`]+)["'`]/g;
const dynamicImport = /\bimport\(\s*["'`](\.[^"'`]+)["'`]\s*\)/g;
/** The address of a thread. */
const threadAddress = /\bnew URL\(\s*["'`]([^"'`]+\.js)["'`]\s*,\s*import\.meta\.url\)/g;

function follow(built: Built, starts: string[], pattern: RegExp): Set<string> {
  const reached = new Set<string>();
  const walk = (name: string) => {
    if (reached.has(name) || !built.has(name)) return;
    reached.add(name);
    for (const found of textOf(built, name).matchAll(pattern)) {
      walk(posix.join(posix.dirname(name), found[1] ?? ''));
    }
  };
  for (const start of starts) walk(start);
  return reached;
}

/** Scripts loaded before the first line runs: those in the page and all that they import outright. */
export function firstScripts(built: Built): Set<string> {
  const page = textOf(built, 'index.html');
  const named = [...page.matchAll(/(?:src|href)="\.\/([^"]+\.js)"/g)].map((found) => found[1] ?? '');
  return follow(built, named, staticImport);
}

/** Scripts that are asked for later, with all that they import. */
export function laterScripts(built: Built): Set<string> {
  const first = firstScripts(built);
  const reached = new Set(first);
  let size = -1;
  while (size !== reached.size) {
    size = reached.size;
    for (const pattern of [dynamicImport, staticImport, threadAddress]) {
      for (const name of follow(built, [...reached], pattern)) reached.add(name);
    }
  }
  return new Set([...reached].filter((name) => !first.has(name)));
}

/** Kilobytes (1,000 bytes) of files as they travel, each packed by itself. */
export function packedKilobytes(built: Built, names: Iterable<string>): number {
  let bytes = 0;
  for (const name of names) bytes += gzipSync(built.get(name) ?? '', { level: 9 }).length;
  return bytes / 1000;
}

/** What in a page is not allowed to be in it: script, styles or handlers written inline. */
export function inlineCode(page: string): string[] {
  const patterns = [
    /<script(?![^>]*\bsrc=)[^>]*>/gi,
    /<style\b[^>]*>/gi,
    /<[^>]+\son[a-z]+=[^>]*>/gi,
    /<[^>]+\sstyle=[^>]*>/gi,
  ];
  return patterns.flatMap((pattern) => [...page.matchAll(pattern)].map(([found]) => found));
}

/** Width and height of a PNG, from its header. */
export function pngSize(content: Buffer | undefined): string {
  return content ? `${content.readUInt32BE(16)}x${content.readUInt32BE(20)}` : 'missing';
}
