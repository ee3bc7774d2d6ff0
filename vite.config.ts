import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { pagePolicy } from './tests/setup/policy.mjs';

const publicDir = 'assets/page';

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

/** The service worker's text. It keeps every built file, and a new one waits until the page says `take-over`. */
function workerText(cache: string, files: string[]): string {
  return `const CACHE = ${JSON.stringify(cache)};
const FILES = ${JSON.stringify(files)};
addEventListener('install', (event) => {
  const fresh = FILES.map((file) => new Request(file, { cache: 'reload' }));
  event.waitUntil(caches.open(CACHE).then((kept) => kept.addAll(fresh)));
});
addEventListener('activate', (event) => {
  const old = (name) => name.startsWith('ringtrue-') && name !== CACHE;
  const tidy = (names) => Promise.all(names.filter(old).map((name) => caches.delete(name)));
  event.waitUntil(caches.keys().then(tidy).then(() => clients.claim()));
});
addEventListener('message', (event) => {
  if (event.data === 'take-over') skipWaiting();
});
addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== location.origin) return;
  const wanted = request.mode === 'navigate' ? './' : request;
  const keptFile = caches.match(wanted, { cacheName: CACHE, ignoreVary: true });
  event.respondWith(keptFile.then((answer) => answer ?? fetch(request)));
});
`;
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

/** Adds `sw.js`, with the list of all built files and a cache named by their content. */
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
        const hash = createHash('sha256');
        const files = [...contents.keys()].sort();
        for (const file of files) hash.update(file).update(contents.get(file) ?? '');
        const cache = `ringtrue-${hash.digest('hex').slice(0, 12)}`;
        const addresses = files.map((file) => (file === 'index.html' ? './' : `./${file}`));
        this.emitFile({ type: 'asset', fileName: 'sw.js', source: workerText(cache, addresses) });
      },
    },
  };
}

/**
 * The search's thread as a file of the build that shares its parts with the page. The build's own way to make workers
 * packs all of core a second time.
 */
function searchThread(): Plugin {
  const file = '/src/wrong/search/worker.ts';
  let reference: string | null = null;
  return {
    name: 'search-thread',
    buildStart() {
      if (this.environment.mode === 'build')
        reference = this.emitFile({ type: 'chunk', id: `.${file}`, name: 'search' });
    },
    resolveId: (id) => (id === 'virtual:search-address' ? `\0${id}` : null),
    load(id) {
      if (id !== '\0virtual:search-address') return null;
      const address = reference === null ? `'${file}'` : `import.meta.ROLLUP_FILE_URL_${reference}`;
      return `export default ${address};`;
    },
  };
}

export default defineConfig({
  base: './',
  publicDir,
  plugins: [contentPolicy(), searchThread(), offlineWorker()],
  build: {
    target: 'es2023',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // The drawing library is one chunk, loaded late; `tests/browser/house-dist.test.ts` holds the weights.
    chunkSizeWarningLimit: 900,
    rolldownOptions: {
      // Core is pure: what of it only a later part asks for, like finding causes, is fetched with that part.
      treeshake: { moduleSideEffects: [{ test: /[\\/]core[\\/]/, sideEffects: false }] },
      output: {
        codeSplitting: {
          groups: [
            // The loader of later chunks would else be put into the pixi chunk, and the start would wait for that.
            { name: 'loader', test: /vite.preload-helper|rolldown.runtime/ },
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
          pool: 'threads',
          isolate: false,
          // Only against hanging: a busy machine takes its time.
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: { name: 'property', include: ['tests/property/**/*.test.ts'], testTimeout: 120_000 },
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
        },
      },
    ],
  },
});
