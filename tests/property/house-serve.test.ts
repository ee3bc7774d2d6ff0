import { request } from 'node:http';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, it } from 'vitest';
import { readPages, type Server, serve } from '../setup/serve.mjs';

/** Asks with the path exactly as it is: `fetch` would tidy it first. */
function askRaw(address: string, path: string): Promise<{ status: number; body: Buffer }> {
  const { hostname, port } = new URL(address);
  return new Promise((done, failed) => {
    const asking = request({ hostname, port, path }, (answer) => {
      const parts: Buffer[] = [];
      answer.on('data', (part: Buffer) => parts.push(part));
      answer.on('end', () => done({ status: answer.statusCode ?? 0, body: Buffer.concat(parts) }));
    });
    asking.on('error', failed).end();
  });
}

describe('the server', () => {
  // Any small folder will do: the project's own pictures and manifest.
  const folder = 'assets';
  let server: Server;
  beforeAll(async () => {
    server = await serve(folder);
  });
  afterAll(() => server.close());

  it('gives no file from outside its folder, whatever path is asked for', async () => {
    const inside = [...readPages(folder).keys()];
    const piece = fc.constantFrom(
      '..',
      '.',
      '/',
      '%2e%2e',
      '%2f',
      '\\',
      'package.json',
      'assets',
      'favicon.svg',
      '%00',
      '?',
      'src',
    );
    const path = fc.array(piece, { minLength: 1, maxLength: 8 }).map((pieces) => `/${pieces.join('/')}`);
    const odd = fc.stringMatching(/^\/[!-~]{0,40}$/);
    await fc.assert(
      fc.asyncProperty(fc.oneof(path, odd), async (asked) => {
        const { status, body } = await askRaw(server.address, asked);
        const named = asked.replace(/[?#].*$/s, '');
        if (!inside.includes(named)) return status === 404 || status === 400;
        return status === 200 && body.equals(server.pages.get(named)?.body ?? Buffer.alloc(0));
      }),
      { numRuns: 2000 },
    );
  });
});
