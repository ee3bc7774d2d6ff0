/**
 * Links: whatever is sent comes back the same, and what was cut or changed on the way is refused by name, never read as
 * another panel. CRC-32 check value: "123456789" gives cbf43926 (the CRC catalogue's check string).
 */
import { deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { readLink, type Shared, writeLink } from '../../src/input/link.ts';
import { example } from '../../src/state/project.ts';
import { anyShared } from './any-project.ts';

const ours: Shared = {
  project: example,
  dialect: 'uk',
  hand: 'right',
  units: 'cm',
  tab: 'edge',
  place: 0,
  answered: [],
};
const linkOf = (version: string, packing: string, data: string, sum: string): string =>
  `#panel=${version}${packing}${sum}${data}`;

const sumOf = (text: string): string => {
  let sum = ~0;
  for (const byte of Buffer.from(text)) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
  }
  return (~sum >>> 0).toString(36).padStart(7, '0');
};
const made = (version: string, packing: string, bytes: Buffer): string => {
  const data = bytes.toString('base64url');
  return linkOf(version, packing, data, sumOf(version + packing + data));
};
const spaced = (spaces: number): Buffer =>
  Buffer.from(`{"p":{},"d":"uk","h":"right","u":"cm","t":"edge"${' '.repeat(spaces)}}`);

afterEach(() => {
  vi.unstubAllGlobals();
});

describe('a link', () => {
  it('brings back what was sent', async () => {
    await fc.assert(
      fc.asyncProperty(anyShared, async (sent) => {
        expect(await readLink(await writeLink(sent))).toEqual({ ok: true, shared: sent });
      }),
      { numRuns: 1000 },
    );
  });

  it('of a usual panel has at most 300 signs', async () => {
    const worked = { 'worked.edging.0.1': '37', 'worked.foundation.1': '35', 'seen.left-over': '2' };
    const panel = { ...example, texts: { ...example.texts, ...worked } };
    expect((await writeLink(ours)).length).toBeLessThanOrEqual(300);
    expect(
      (await writeLink({ ...ours, project: panel, tab: 'wrong', place: 320 })).length,
    ).toBeLessThanOrEqual(300);
  });

  it('cut at any place is told as cut', async () => {
    const link = await writeLink(ours);
    for (let length = 2; length < link.length; length++)
      expect(await readLink(link.slice(0, length)), link.slice(0, length)).toEqual({ ok: false, why: 'cut' });
  });

  it('changed on the way is refused, or says what it said', async () => {
    const signs = [...'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_=#'];
    await fc.assert(
      fc.asyncProperty(
        anyShared,
        fc.array(fc.tuple(fc.nat(400), fc.constantFrom(...signs)), { minLength: 1, maxLength: 3 }),
        async (sent, changes) => {
          const link = await writeLink(sent);
          const changed = [...link];
          for (const [at, sign] of changes) changed[7 + (at % (link.length - 7))] = sign;
          const read = await readLink(changed.join(''));
          if (read?.ok) expect(read.shared).toEqual(sent);
          else expect(read?.why).toMatch(/^(cut|newer|unreadable)$/);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it.each(['', '#', '#top', '#recipe-heading'])('%j is none', async (fragment) => {
    expect(await readLink(fragment)).toBeNull();
  });

  it('of a later version, of no panel, and of what never ends is refused by name', async () => {
    expect(Number.parseInt(sumOf('123456789'), 36).toString(16)).toBe('cbf43926');
    expect(await readLink(made('2', 'p', Buffer.from('{}')))).toEqual({ ok: false, why: 'newer' });
    expect(await readLink(made('1', 'p', Buffer.from('{}')))).toEqual({ ok: false, why: 'unreadable' });
    expect(await readLink(made('1', 'z', Buffer.from('no deflate')))).toEqual({
      ok: false,
      why: 'unreadable',
    });
    // Unpacked whole it would be a panel, with 50 MB of spaces in it: it is refused because it is not unpacked whole.
    expect(await readLink(made('1', 'z', deflateRawSync(spaced(1000))))).toMatchObject({ ok: true });
    expect(await readLink(made('1', 'z', deflateRawSync(spaced(50_000_000))))).toEqual({
      ok: false,
      why: 'unreadable',
    });
  });

  it('longer than any panel is refused, packed or not', async () => {
    expect(await readLink(made('1', 'p', spaced(1000)))).toMatchObject({ ok: true });
    expect(await readLink(made('1', 'p', spaced(400_000)))).toEqual({ ok: false, why: 'unreadable' });
  });

  it('that unpacks to a thousand times as much is fed in small slices, and no further than the limit', async () => {
    let fed = 0;
    const unpacker = new TransformStream<Uint8Array, Uint8Array>({
      transform(slice, controller) {
        fed += slice.length;
        controller.enqueue(new Uint8Array(slice.length * 1000));
      },
    });
    vi.stubGlobal('DecompressionStream', function unpacking() {
      return unpacker;
    });
    expect(await readLink(made('1', 'z', Buffer.alloc(100_000)))).toEqual({ ok: false, why: 'unreadable' });
    expect(fed).toBeGreaterThan(0);
    expect(fed).toBeLessThanOrEqual(4096);
  });
});
