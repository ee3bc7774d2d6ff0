/**
 * Files and links: 1,000 random projects come back the same, and of 8,000 that something happened to each is refused by
 * name or correct. `npm run bench:keep` does it with 100,000 and 1,000,000, and tells how long the slowest took.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readFile, writeFile } from '../../src/input/file.ts';
import { readLink, writeLink } from '../../src/input/link.ts';
import { anyPanel, anyShared } from './any-project.ts';
import {
  drawFrom,
  fileFault,
  isPublished,
  linkFault,
  mangled,
  savedOn,
  twistedFile,
  twistedLink,
} from './mutants.ts';

const panels = fc.array(anyPanel, { minLength: 1, maxLength: 3 });
const seed = fc.nat();

describe('a file', () => {
  it('brings back the panels that were saved, and is as the published schema says', () => {
    fc.assert(
      fc.property(panels, (saved) => {
        const text = writeFile(saved, savedOn);
        expect(readFile(text)).toEqual({ ok: true, panels: saved, unread: 0, trust: 'as-saved' });
        expect(isPublished(JSON.parse(text))).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  it('changed on the way is refused by name, or says that it was changed, or is as it was', () => {
    fc.assert(
      fc.property(panels, seed, (saved, drawn) => {
        const text = mangled(writeFile(saved, savedOn), drawFrom(drawn));
        expect(fileFault(readFile(text), saved)).toBeNull();
      }),
      { numRuns: 3000 },
    );
  });

  it('twisted and summed anew is refused by name, or holds panels that are whole', () => {
    fc.assert(
      fc.property(panels, seed, (saved, drawn) => {
        const text = twistedFile(writeFile(saved, savedOn), drawFrom(drawn));
        expect(fileFault(readFile(text), null)).toBeNull();
      }),
      { numRuns: 3000 },
    );
    expect(Object.keys(Object.prototype)).toEqual([]);
  });
});

describe('a link', () => {
  it('twisted and summed anew is refused by name, or holds a panel that is whole', async () => {
    await fc.assert(
      fc.asyncProperty(anyShared, seed, async (shared, drawn) => {
        const text = twistedLink({ shared, text: '' }, drawFrom(drawn));
        expect(linkFault(await readLink(text), null)).toBeNull();
      }),
      { numRuns: 1000 },
    );
  });

  it('changed on the way is refused by name, or is as it was', async () => {
    await fc.assert(
      fc.asyncProperty(anyShared, seed, async (shared, drawn) => {
        const link = mangled(await writeLink(shared), drawFrom(drawn));
        expect(linkFault(await readLink(link), shared)).toBeNull();
      }),
      { numRuns: 1000 },
    );
  });
});
