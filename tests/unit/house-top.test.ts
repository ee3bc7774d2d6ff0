import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { usualPaths } from '../setup/chrome.mjs';
import { countReport } from '../setup/test.mjs';

/** What the top folder may hold, beside dot files. */
const allowed = [
  'src',
  'core',
  'assets',
  'tests',
  'index.html',
  'package.json',
  'package-lock.json',
  'vite.config.ts',
  'tsconfig.json',
  'biome.json',
  'README.md',
  'DEVELOPERS.md',
  'CHANGELOG.md',
  'LICENSE',
];
/** Made by the scripts, ignored by git. */
const made = ['node_modules', 'dist', 'pictures'];

const strangers = (names: string[]) =>
  names.filter((name) => !name.startsWith('.') && !allowed.includes(name) && !made.includes(name));

describe('the top folder', () => {
  it('holds what it should and nothing else', () => {
    expect(strangers(readdirSync('.'))).toEqual([]);
    for (const name of ['src', 'core', 'assets', 'tests', 'index.html']) expect(existsSync(name)).toBe(true);
  });

  it('is found out with a stranger in it', () => {
    expect(strangers(['src', 'scripts', 'dist', '.ci', 'vitest.config.ts'])).toEqual([
      'scripts',
      'vitest.config.ts',
    ]);
  });

  it('keeps what is made out of git', () => {
    const ignored = readFileSync('.gitignore', 'utf8').split('\n');
    for (const name of [...made, '.cache']) expect(ignored).toContain(`/${name}/`);
  });
});

describe('packages', () => {
  const lock = JSON.parse(readFileSync('package-lock.json', 'utf8'));
  const wanted = JSON.parse(readFileSync('package.json', 'utf8'));

  it('are the ones that the lock file names', () => {
    const { dependencies, devDependencies } = lock.packages[''];
    expect({ dependencies, devDependencies }).toEqual({
      dependencies: wanted.dependencies,
      devDependencies: wanted.devDependencies,
    });
  });

  it('come from no address of their own', () => {
    const packages = Object.entries<{ resolved?: string }>(lock.packages);
    expect(packages.filter(([, { resolved }]) => resolved).map(([name]) => name)).toEqual([]);
  });

  it('run nothing when they are installed', () => {
    const packages = Object.entries<{ hasInstallScript?: boolean; optional?: boolean }>(lock.packages);
    const found = packages.filter(([, { hasInstallScript, optional }]) => hasInstallScript && !optional);
    expect(found.map(([name]) => name)).toEqual([]);
  });
});

describe('the run of all tests', () => {
  const report = (numbers: object) => ({
    numPassedTests: 0,
    numFailedTests: 0,
    numPendingTests: 0,
    testResults: [],
    ...numbers,
  });

  it.each([
    ['all well', report({ numPassedTests: 3 }), 0, { passed: 3, failed: 0 }],
    ['a failure', report({ numPassedTests: 3, numFailedTests: 1 }), 1, { passed: 3, failed: 1 }],
    ['no test at all', report({}), 0, { passed: 0, failed: 1 }],
    ['no report', null, 0, { passed: 0, failed: 1 }],
    ['an error outside the tests', report({ numPassedTests: 3 }), 1, { passed: 3, failed: 1 }],
    [
      'a file that could not be read',
      report({ numPassedTests: 3, testResults: [{ status: 'failed', assertionResults: [] }] }),
      1,
      { passed: 3, failed: 1 },
    ],
  ])('counts %s', (_name, given, exitCode, expected) => {
    expect(countReport(given, exitCode)).toMatchObject(expected);
  });

  it('is started by .ci/run', () => {
    expect(readFileSync('.ci/run', 'utf8')).toContain('npm test');
    if (process.platform !== 'win32') expect(statSync('.ci/run').mode & 0o111).not.toBe(0);
  });

  it('looks for a browser on every system', () => {
    expect(usualPaths('linux', { PATH: '/opt/bin' })).toContain('/opt/bin/chromium');
    expect(usualPaths('darwin', {})).toContain(
      '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    );
    expect(usualPaths('win32', { PROGRAMFILES: 'C:\\Program Files' })).toContain(
      'C:\\Program Files\\Microsoft\\Edge\\Application\\msedge.exe',
    );
  });
});
