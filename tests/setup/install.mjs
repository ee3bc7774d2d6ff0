/** Installs the packages if they are missing or belong to another lock file, Node or machine. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { hashOf, isStarted, root, run } from './shell.mjs';

const stampFile = join(root, 'node_modules', '.ringtrue-stamp');

/** What the installed packages must belong to. */
export function wantedStamp() {
  return hashOf(['package-lock.json'], [process.version, process.platform, process.arch]);
}

/** True when nothing has to be installed. */
export function isInstalled() {
  return existsSync(stampFile) && readFileSync(stampFile, 'utf8') === wantedStamp();
}

/** Installs if need be. Answers false, after one sentence, when that fails. */
export async function ensureInstalled() {
  if (isInstalled()) return true;
  console.log('Installing packages ...');
  // npm_execpath is npm's own script; without it (plain `node tests/setup/...`) npm is found by its name.
  const npm = process.env.npm_execpath;
  const words = ['ci', '--include=dev', '--no-audit', '--no-fund'];
  const code = npm?.endsWith('.js')
    ? await run(process.execPath, [npm, ...words])
    : await run(process.platform === 'win32' ? 'npm.cmd' : 'npm', words);
  if (code !== 0) {
    console.error('The packages could not be installed: see what npm says above, then try again.');
    return false;
  }
  writeFileSync(stampFile, wantedStamp());
  return true;
}

if (isStarted(import.meta.url) && !(await ensureInstalled())) process.exit(1);
