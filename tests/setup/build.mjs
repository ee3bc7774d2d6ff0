/**
 * Builds `dist/` if anything it is made of has changed. The build goes to a folder of its own and is
 * moved into place when whole, so that a server or test never sees half of one.
 */
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ensureInstalled } from './install.mjs';
import { hashOf, isStarted, root, runPackage } from './shell.mjs';

const ingredients = [
  'src',
  'core',
  'assets',
  'index.html',
  'vite.config.ts',
  'tests/setup/policy.mjs',
  'package-lock.json',
];
const cache = join(root, '.cache');
const stampFile = join(cache, 'built');

export const dist = join(root, 'dist');

/** Builds into a folder, whatever is there. Answers whether it went well. @param {string} folder */
export async function buildInto(folder) {
  const words = ['build', '--outDir', folder, '--emptyOutDir', '--logLevel', 'warn'];
  // The test runner's own NODE_ENV would make this a developer's build.
  return (await runPackage('vite/bin/vite.js', words, { NODE_ENV: 'production' })) === 0;
}

/** Builds `dist/` if need be. Answers whether it is there and up to date. */
export async function ensureBuilt() {
  const wanted = hashOf(ingredients, [process.version]);
  const isFresh = existsSync(join(dist, 'index.html')) && existsSync(stampFile);
  if (isFresh && readFileSync(stampFile, 'utf8') === wanted) return true;
  const folder = join(cache, `build-${process.pid}`);
  const leaving = join(cache, `old-${process.pid}`);
  mkdirSync(cache, { recursive: true });
  try {
    if (!(await buildInto(folder))) return false;
    if (existsSync(dist)) renameSync(dist, leaving);
    renameSync(folder, dist);
    writeFileSync(stampFile, wanted);
    return true;
  } finally {
    rmSync(folder, { recursive: true, force: true });
    rmSync(leaving, { recursive: true, force: true });
  }
}

if (isStarted(import.meta.url)) process.exit((await ensureInstalled()) && (await ensureBuilt()) ? 0 : 1);
