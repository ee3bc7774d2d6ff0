/** Builds the page and serves it for tests and pictures, by the builder's own preview, from a folder of its own. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { preview } from 'vite';
import { root, runPackage } from '../setup/shell.mjs';

/** What is on disk in `folder` is what is served, at once: a test may change it. `address` ends in `/`. */
export type Server = {
  address: string;
  folder: string;
  read(file: string): string;
  write(file: string, text: string): void;
  close(): Promise<void>;
};

/** Builds into a folder, whatever is there. Answers whether it went well. */
export async function buildInto(folder: string): Promise<boolean> {
  const words = ['build', '--outDir', folder, '--emptyOutDir', '--logLevel', 'warn'];
  // The test runner's own NODE_ENV would make this a developer's build.
  return (await runPackage('vite/bin/vite.js', words, { NODE_ENV: 'production' })) === 0;
}

/** @throws where it cannot be built: there is nothing to look at */
export async function serveBuilt(): Promise<Server> {
  const run = mkdtempSync(join(tmpdir(), 'ringtrue-'));
  const folder = join(run, 'built');
  if (!(await buildInto(folder))) throw new Error('The build failed.');
  const server = await serve(folder);
  const close = async (): Promise<void> => {
    await server.close();
    rmSync(run, { recursive: true, force: true });
  };
  return { ...server, close };
}

/**
 * Serves a copy that only this caller sees. `headers` are sent beside or instead of the usual ones. Its folder lies
 * beside what it is a copy of and goes with that, as a file may still be on its way when the server is closed.
 */
export async function serveCopy(of: string, headers?: Record<string, string>): Promise<Server> {
  const folder = mkdtempSync(join(dirname(of), 'copy-'));
  cpSync(of, folder, { recursive: true });
  return serve(folder, headers);
}

async function serve(folder: string, headers?: Record<string, string>): Promise<Server> {
  const server = await preview({
    root,
    logLevel: 'error',
    build: { outDir: folder },
    preview: { host: '127.0.0.1', port: 0, ...(headers ? { headers } : {}) },
  });
  return {
    address: server.resolvedUrls?.local[0] as string,
    folder,
    read: (file) => readFileSync(join(folder, file), 'utf8'),
    write: (file, text) => writeFileSync(join(folder, file), text),
    close: () => server.close(),
  };
}
