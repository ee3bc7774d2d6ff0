/**
 * A small server for the built pages, on this machine only. It reads the folder once: only files that
 * are in it have an address, and a later build does not disturb a running server.
 */
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { headerPolicy } from './policy.mjs';
import { filesUnder } from './shell.mjs';

/** @typedef {{ type: string, body: Buffer, zipped: Buffer | null, lasting: boolean }} Page */
/** @typedef {Map<string, Page>} Pages Address from `/` on → what is answered. */
/** @typedef {{ address: string, pages: Pages, close: () => Promise<void> }} Server */

/** @type {Record<string, string>} */
const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.txt': 'text/plain; charset=utf-8',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
};
const zippable = new Set(['.html', '.js', '.css', '.svg', '.json', '.webmanifest', '.txt']);

/**
 * What the app uses is allowed to it and to no frame in it. `web-share` is so by default, and not named:
 * browsers that cannot share complain about the word.
 * @type {Record<string, string>}
 */
export const safetyHeaders = {
  'Content-Security-Policy': headerPolicy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Permissions-Policy':
    'screen-wake-lock=(self), clipboard-write=(self), camera=(), geolocation=(), microphone=()',
};

/** What is answered for one file. @param {string} name @param {Buffer | string} content @returns {Page} */
export function pageOf(name, content) {
  const body = Buffer.from(content);
  const ending = extname(name);
  return {
    type: types[ending] ?? 'application/octet-stream',
    body,
    zipped: zippable.has(ending) ? gzipSync(body) : null,
    // The build puts a hash of the content into the name of everything under assets/.
    lasting: /^assets\/.+-[\w-]{8}\.\w+$/.test(name),
  };
}

/** Reads a built folder into pages. @param {string} folder @returns {Pages} */
export function readPages(folder) {
  const pages = new Map(
    filesUnder(folder).map((name) => [`/${name}`, pageOf(name, readFileSync(join(folder, name)))]),
  );
  const home = pages.get('/index.html');
  if (home) pages.set('/', home);
  return pages;
}

/**
 * @param {Pages} pages @param {Record<string, string>} headers
 * @returns {import('node:http').RequestListener}
 */
function answerFrom(pages, headers) {
  return (request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { ...headers, Allow: 'GET, HEAD' }).end();
      return;
    }
    const page = pages.get((request.url ?? '/').replace(/[?#].*$/s, ''));
    if (!page) {
      response.writeHead(404, { ...headers, 'Content-Type': 'text/plain; charset=utf-8' });
      response.end('There is nothing at this address.\n');
      return;
    }
    const zipped = String(request.headers['accept-encoding'] ?? '').includes('gzip') ? page.zipped : null;
    const body = zipped ?? page.body;
    response.writeHead(200, {
      ...headers,
      'Content-Type': page.type,
      'Content-Length': body.length,
      'Cache-Control': page.lasting ? 'public, max-age=31536000, immutable' : 'no-cache',
      ...(page.zipped ? { Vary: 'Accept-Encoding' } : {}),
      ...(zipped ? { 'Content-Encoding': 'gzip' } : {}),
    });
    response.end(request.method === 'HEAD' ? undefined : body);
  };
}

/** @param {import('node:http').Server} server @param {number} port @returns {Promise<number>} the port, or 0 if it is taken */
function listen(server, port) {
  return new Promise((done, failed) => {
    server.once('error', (/** @type {NodeJS.ErrnoException} */ error) => {
      if (error.code === 'EADDRINUSE') done(0);
      else failed(error);
    });
    server.listen(port, '127.0.0.1', () => {
      const bound = server.address();
      done(typeof bound === 'object' && bound ? bound.port : port);
    });
  });
}

/**
 * Serves a built folder.
 * @param {string} folder
 * @param {number} [firstPort] tried first, then the next ones up; 0 = any free port
 * @param {Record<string, string>} [headers] sent with every answer
 * @returns {Promise<Server>} `pages` may be changed while it runs
 */
export async function serve(folder, firstPort = 0, headers = safetyHeaders) {
  const pages = readPages(folder);
  for (let port = firstPort; port < firstPort + 20; port += 1) {
    const server = createServer(answerFrom(pages, headers));
    const bound = await listen(server, port);
    if (bound === 0) continue;
    const close = () =>
      /** @type {Promise<void>} */ (
        new Promise((done) => {
          server.close(() => done());
          server.closeAllConnections();
        })
      );
    return { address: `http://127.0.0.1:${bound}/`, pages, close };
  }
  throw new Error(`Ports ${firstPort} to ${firstPort + 19} are all taken`);
}
