/** Finds an installed Firefox for the tests in a second browser; on Debian as root it installs one. */
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { installOnDebian } from './chrome.mjs';

const names = ['firefox', 'firefox-esr'];
const usual = [
  '/Applications/Firefox.app/Contents/MacOS/firefox',
  'C:\\Program Files\\Mozilla Firefox\\firefox.exe',
];

/** @returns {string | null} the program, or null if none is installed */
export function findFirefox() {
  const named = process.env.FIREFOX_PATH;
  if (named) return existsSync(named) ? named : null;
  const folders = (process.env.PATH ?? '').split(delimiter).filter(Boolean);
  const paths = names.flatMap((name) => folders.map((folder) => join(folder, name)));
  return [...paths, ...usual].find((path) => existsSync(path)) ?? null;
}

/** Finds Firefox, or installs it where that is possible without asking. @returns {Promise<string | null>} */
export async function ensureFirefox() {
  if (!findFirefox()) await installOnDebian('firefox-esr');
  return findFirefox();
}
