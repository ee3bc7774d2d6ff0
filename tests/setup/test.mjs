/**
 * `npm test`: types, lint, unit tests, property tests, build, browser tests, each runner's result as it
 * comes, and on the very last line the sum. `npm run check` (`--quick`): types, lint and unit tests only;
 * the long property runs under tests/property and the browser tests wait for `npm test`.
 */
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensureChrome, whatToInstall } from './chrome.mjs';
import { ensureFirefox } from './firefox.mjs';
import { isStarted, root, runPackage, secondsSince } from './shell.mjs';

/** @typedef {{ passed: number, failed: number, remark?: string }} Count */

/** A step that either holds or does not counts as one test. @param {boolean} holds @returns {Count} */
const one = (holds) => (holds ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 });

/**
 * Reads the numbers of a vitest report. A file that could not be loaded counts as one failed test; so do
 * errors outside any test, and a run without a single test.
 * @param {any} report vitest's JSON report, or null where there is none
 * @param {number} exitCode
 * @returns {Count}
 */
export function countReport(report, exitCode) {
  if (!report) return { passed: 0, failed: 1, remark: 'the runner gave no report' };
  /** @type {{ status: string, assertionResults: unknown[] }[]} */
  const files = report.testResults;
  const unread = files.filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  ).length;
  const passed = report.numPassedTests;
  const failed = report.numFailedTests + unread;
  const skipped = report.numPendingTests + (report.numTodoTests ?? 0);
  if (failed === 0 && passed === 0) return { passed, failed: 1, remark: 'no test ran' };
  if (failed === 0 && exitCode !== 0) return { passed, failed: 1, remark: 'errors outside the tests' };
  return skipped > 0 ? { passed, failed, remark: `${skipped} skipped` } : { passed, failed };
}

/** @param {string} project @returns {Promise<Count>} */
async function runProject(project) {
  const reportFile = join(root, '.cache', `report-${project}-${process.pid}.json`);
  const words = [
    'run',
    '--project',
    project,
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${reportFile}`,
  ];
  const exitCode = await runPackage('vitest/vitest.mjs', words);
  const report = existsSync(reportFile) ? JSON.parse(readFileSync(reportFile, 'utf8')) : null;
  rmSync(reportFile, { force: true });
  return countReport(report, exitCode);
}

/** @param {string} script @param {string[]} words */
const holds = async (script, ...words) => one((await runPackage(script, words)) === 0);

/** Chromium must be there; without Firefox the tests in it are skipped, and counted as skipped. */
async function runBrowserTests() {
  const chrome = await ensureChrome();
  await ensureFirefox();
  if (!chrome) return { ...one(false), remark: whatToInstall };
  process.env.CHROME_PATH = chrome;
  return runProject('browser');
}

/** @type {[name: string, run: () => Promise<Count>][]} */
const quickRunners = [
  ['types of core', () => holds('typescript/bin/tsc', '-p', 'core')],
  ['types', () => holds('typescript/bin/tsc', '-p', '.')],
  ['types of the service worker', () => holds('typescript/bin/tsc', '-p', 'src/offline')],
  ['lint', () => holds('@biomejs/biome/bin/biome', 'check', '.')],
  ['unit tests', () => runProject('unit')],
];
/** @type {typeof quickRunners} */
const longRunners = [
  ['property tests', () => runProject('property')],
  ['browser tests', runBrowserTests],
];

/** @param {string} name @param {Count} count @param {string} [time] */
function lineOf(name, { passed, failed, remark }, time) {
  const notes = [time, remark].filter(Boolean).join('; ');
  return `${failed > 0 ? 'FAILED' : 'ok    '} ${name}: ${passed} passed, ${failed} failed${notes ? ` (${notes})` : ''}`;
}

async function main() {
  const isQuick = process.argv.includes('--quick');
  const start = performance.now();
  /** @type {string[]} */
  const lines = [];
  const sum = { passed: 0, failed: 0 };
  /** @param {string} name @param {Count} count @param {string} [time] */
  const add = (name, count, time) => {
    sum.passed += count.passed;
    sum.failed += count.failed;
    lines.push(lineOf(name, count, time));
    console.log(lines.at(-1));
  };
  for (const [name, runner] of isQuick ? quickRunners : [...quickRunners, ...longRunners]) {
    const since = performance.now();
    console.log(`\n${name}`);
    add(name, await runner(), secondsSince(since));
  }
  console.log(`\n${lines.join('\n')}\nAll in ${secondsSince(start)}.`);
  process.exitCode = sum.failed > 0 ? 1 : 0;
  console.log(`${sum.passed} passed, ${sum.failed} failed`);
}

if (isStarted(import.meta.url)) await main();
