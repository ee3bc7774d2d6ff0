/**
 * Runs TypeScript files on Node, one after another: `node tests/setup/run.mjs FILE-OR-FOLDER [words]`.
 * A folder stands for the `*.bench.ts` and `*.bench.mjs` files directly in it. Further words reach the
 * file as `process.argv.slice(2)`; for a folder the first one picks files by a part of their name.
 */
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { runnerImport } from 'vite';
import { root } from './shell.mjs';

const [target = '', ...words] = process.argv.slice(2);
const path = join(root, target);
const isFolder = statSync(path).isDirectory();
const files = isFolder ? readdirSync(path).filter((name) => /\.bench\.(ts|mjs)$/.test(name)) : [target];
const picked = isFolder && words[0] ? files.filter((name) => name.includes(words[0] ?? '')) : files;
if (picked.length === 0) {
  console.error(`There is no such file under ${target}.`);
  process.exit(1);
}
process.argv.splice(2, Infinity, ...words);
for (const name of picked.sort()) {
  if (isFolder) console.log(`\n${name}`);
  await runnerImport(isFolder ? join(path, name) : path, { configFile: false, root, logLevel: 'error' });
}
