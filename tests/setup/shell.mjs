/** Small helpers that every script here shares. Node's own modules only. */
import { spawn } from 'node:child_process';
import { existsSync, readdirSync, realpathSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's top folder. */
export const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '');

/** Is this module (its `import.meta.url`) the script that was started? @param {string} moduleUrl */
export function isStarted(moduleUrl) {
  const script = process.argv[1];
  return script !== undefined && existsSync(script) && realpathSync(script) === fileURLToPath(moduleUrl);
}

/**
 * Runs a program in the top folder with its output shown, and answers its exit code.
 * @param {string} program @param {string[]} words @param {NodeJS.ProcessEnv} [environment]
 * @returns {Promise<number>}
 */
export function run(program, words, environment = {}) {
  return new Promise((done) => {
    const env = { ...process.env, ...environment };
    const child = spawn(program, words, { cwd: root, env, stdio: ['ignore', 'inherit', 'inherit'] });
    child.on('error', (error) => {
      console.error(`${program} could not be started: ${error.message}`);
      done(1);
    });
    child.on('close', (code) => done(code ?? 1));
  });
}

/**
 * Runs an installed package's script with this Node, and answers its exit code.
 * @param {string} script under node_modules @param {string[]} words @param {NodeJS.ProcessEnv} [environment]
 */
export function runPackage(script, words, environment) {
  return run(process.execPath, [join(root, 'node_modules', script), ...words], environment);
}

/** Paths of all files under a folder, sorted, with `/` between parts. @param {string} folder */
export function filesUnder(folder) {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile());
  return files
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
}

/** Seconds since a `performance.now()`, for people. @param {number} since */
export function secondsSince(since) {
  return `${((performance.now() - since) / 1000).toFixed(1)} s`;
}
