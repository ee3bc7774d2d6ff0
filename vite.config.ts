import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { pagePolicy, safetyHeaders } from './src/policy.ts';

const publicDir = 'assets/page';
/** The worker must keep its name from build to build. */
const workerFile = 'sw.js';

/** Writes the content policy before everything else in the page. Built pages only: the dev server needs a looser one. */
function contentPolicy(): Plugin {
  return {
    name: 'content-policy',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler: () => [
        {
          tag: 'meta',
          attrs: { 'http-equiv': 'Content-Security-Policy', content: pagePolicy },
          injectTo: 'head-prepend',
        },
      ],
    },
  };
}

function filesUnder(folder: string): string[] {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile());
  return files.map((entry) =>
    join(entry.parentPath, entry.name)
      .slice(folder.length + 1)
      .replaceAll('\\', '/'),
  );
}

/** The licences of what is no script: our own, and the typeface's. Those of the scripts are the build's own `license`. */
function otherLicences(): Plugin {
  const texts = {
    'licence.txt': 'LICENSE',
    'licence-typeface.txt': 'node_modules/@fontsource-variable/atkinson-hyperlegible-next/LICENSE',
  };
  return {
    name: 'other-licences',
    apply: 'build',
    generateBundle() {
      for (const [fileName, from] of Object.entries(texts))
        this.emitFile({ type: 'asset', fileName, source: readFileSync(from) });
    },
  };
}

/** Puts the list of all built files into the service worker, and a cache named by their content. */
function offlineWorker(): Plugin {
  return {
    name: 'offline-worker',
    apply: 'build',
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const contents = new Map<string, string | Uint8Array>();
        for (const file of filesUnder(publicDir)) contents.set(file, readFileSync(join(publicDir, file)));
        for (const [file, output] of Object.entries(bundle)) {
          contents.set(file, output.type === 'chunk' ? output.code : output.source);
        }
        const worker = bundle[workerFile];
        if (worker?.type !== 'chunk') throw new Error('The service worker was not built');
        contents.delete(workerFile);
        const hash = createHash('sha256');
        const files = [...contents.keys()].sort();
        for (const file of files) hash.update(file).update(contents.get(file) ?? '');
        hash.update(worker.code);
        const cache = `ringtrue-${hash.digest('hex').slice(0, 12)}`;
        const addresses = files.map((file) => (file === 'index.html' ? './' : `./${file}`));
        worker.code = worker.code.replace(/\bBUILT\b/, JSON.stringify({ cache, files: addresses }));
      },
    },
  };
}

/**
 * A thread as a file of the build that shares its parts with the page; its address is in `virtual:NAME-address`. The
 * build's own way to make workers packs all of core a second time.
 */
function thread(name: string, file: string): Plugin {
  const address = `virtual:${name}-address`;
  let reference: string | null = null;
  return {
    name: `${name}-thread`,
    buildStart() {
      if (this.environment.mode === 'build')
        reference = this.emitFile({ type: 'chunk', id: `.${file}`, name });
    },
    resolveId: (id) => (id === address ? `\0${id}` : null),
    load(id) {
      if (id !== `\0${address}`) return null;
      const found = reference === null ? `'${file}'` : `import.meta.ROLLUP_FILE_URL_${reference}`;
      return `export default ${found};`;
    },
  };
}

const threads = [
  thread('search', '/src/wrong/search/worker.ts'),
  thread('photo', '/src/photo/photo-thread.ts'),
];

/** Takes out how shaders and templates are indented: lines of the drawing library, lines of ours that begin a tag. */
function withoutIndents(): Plugin {
  return {
    name: 'without-indents',
    renderChunk: (code, { name }) => ({
      code: code.replace(name === 'pixi' ? /\n[ \t]+/g : /\n[ \t]+(?=[<@])/g, '\n'),
      map: null,
    }),
  };
}

export default defineConfig({
  base: './',
  publicDir,
  plugins: [contentPolicy(), withoutIndents(), ...threads, otherLicences(), offlineWorker()],
  // An address below the app's own has nothing.
  appType: 'mpa',
  preview: { headers: { ...safetyHeaders, 'Cache-Control': 'no-cache' } },
  build: {
    target: 'es2023',
    assetsInlineLimit: 0,
    license: { fileName: 'licences.txt' },
    modulePreload: { polyfill: false },
    // The drawing library is one chunk, loaded late; `tests/browser/house-dist.test.ts` holds the weights.
    chunkSizeWarningLimit: 900,
    rolldownOptions: {
      input: { index: 'index.html', sw: 'src/offline/worker.ts' },
      // Core is pure: what of it only a later part asks for, like finding causes, is fetched with that part.
      treeshake: { moduleSideEffects: [{ test: /[\\/]core[\\/]/, sideEffects: false }] },
      output: {
        entryFileNames: ({ name }) => (name === 'sw' ? workerFile : 'assets/[name]-[hash].js'),
        codeSplitting: {
          groups: [
            // The loader of later chunks would else be put into the pixi chunk, and the start would wait for that.
            { name: 'loader', test: /vite.preload-helper|rolldown.runtime/ },
            // The fields and their names, which the start and every place use: one chunk packs better than five.
            {
              name: 'fields',
              test: /[\\/]src[\\/](words[\\/]problems-view|controls[\\/]fields|state[\\/]fields)\.ts/,
            },
            // The making itself, which the start and the search's thread share: one chunk packs better than four.
            {
              name: 'making',
              test: /[\\/]core[\\/]((hand|join)[\\/].+|planning[\\/](plan|choices)|[a-z-]+)\.ts$/,
            },
            // What the photo's page and its thread share, beside them by name.
            { name: 'photo-marks', test: /[\\/]src[\\/]photo[\\/](chain|likeness|line|propose|strip)\.ts/ },
            { name: 'pixi', test: /[\\/]node_modules[\\/](@pixi|pixi\.js)[\\/]/ },
          ],
        },
      },
    },
  },
  test: {
    projects: [
      {
        extends: true,
        // Nothing here leaves a trace in a module: one world for all files halves the time.
        test: {
          name: 'unit',
          include: ['tests/unit/**/*.test.ts'],
          setupFiles: 'tests/setup/seed.ts',
          pool: 'threads',
          isolate: false,
          maxWorkers: '100%',
          // Only against hanging: a busy machine takes its time.
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'property',
          include: ['tests/property/**/*.test.ts'],
          setupFiles: 'tests/setup/seed.ts',
          maxWorkers: '100%',
          testTimeout: 120_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: 'tests/browser/serve-built.ts',
          setupFiles: 'tests/browser/after-each.ts',
          // One browser a worker, for all its files.
          pool: 'forks',
          isolate: false,
          maxWorkers: 2,
          testTimeout: 60_000,
          hookTimeout: 60_000,
          // Once in some hundred openings on a busy machine a part of the page does not come. A second try is printed.
          retry: 1,
          // Polling ends with the first success; a busy machine may take more than the usual second.
          expect: { poll: { timeout: 20_000 } },
        },
      },
    ],
  },
});
