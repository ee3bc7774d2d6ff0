/** Finds an installed Chrome, Chromium or Edge for the browser tests; on Debian as root it installs one. */
import { existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { run } from './shell.mjs';

export const whatToInstall =
  'No Chrome, Chromium or Edge was found: install one of them, or set CHROME_PATH to the program.';

const names = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
];
const macPrograms = ['Google Chrome', 'Chromium', 'Microsoft Edge'];
const windowsPrograms = [
  'Google\\Chrome\\Application\\chrome.exe',
  'Chromium\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
];

/** @param {NodeJS.Platform} platform @param {NodeJS.ProcessEnv} environment @returns {string[]} where to look, best first */
export function usualPaths(platform, environment) {
  const home = environment.HOME ?? '';
  if (platform === 'darwin') {
    return macPrograms.flatMap((name) =>
      ['', home].map((start) => `${start}/Applications/${name}.app/Contents/MacOS/${name}`),
    );
  }
  if (platform === 'win32') {
    const starts = ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].map((name) => environment[name]);
    return windowsPrograms.flatMap((name) => starts.flatMap((start) => (start ? [`${start}\\${name}`] : [])));
  }
  const folders = [...(environment.PATH ?? '').split(delimiter), '/usr/bin', '/usr/local/bin', '/snap/bin'];
  return names.flatMap((name) => folders.filter(Boolean).map((folder) => join(folder, name)));
}

/** @returns {string | null} the program, or null if none is installed */
export function findChrome() {
  const named = process.env.CHROME_PATH;
  if (named) return existsSync(named) ? named : null;
  return usualPaths(process.platform, process.env).find((path) => existsSync(path)) ?? null;
}

function isDebianRoot() {
  if (process.platform !== 'linux' || process.getuid?.() !== 0 || !existsSync('/etc/os-release'))
    return false;
  return /^ID=debian$/m.test(readFileSync('/etc/os-release', 'utf8'));
}

/** Installs a package where that is possible without asking: on Debian, as root. @param {string} name */
export async function installOnDebian(name) {
  if (!isDebianRoot()) return;
  console.log(`Installing ${name} ...`);
  const quiet = { DEBIAN_FRONTEND: 'noninteractive' };
  const words = ['install', '-y', '-qq', '--no-install-recommends', name];
  if ((await run('apt-get', words, quiet)) !== 0) {
    await run('apt-get', ['update', '-qq'], quiet);
    await run('apt-get', words, quiet);
  }
}

/** Finds a browser, or installs one where that is possible without asking. @returns {Promise<string | null>} */
export async function ensureChrome() {
  if (!findChrome() && !process.env.CHROME_PATH) await installOnDebian('chromium');
  return findChrome();
}
