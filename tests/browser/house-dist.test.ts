import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, inject, it } from 'vitest';
import { pagePolicy } from '../../src/policy.ts';
import { root } from '../setup/shell.mjs';
import {
  builtInto,
  firstScripts,
  hashes,
  inlineCode,
  laterScripts,
  packedKilobytes,
  pngSize,
  readBuilt,
  textOf,
} from './built.ts';
import { buildInto } from './serve.ts';

const built = readBuilt(inject('dist'));
const page = textOf(built, 'index.html');

/** A built folder made up for a test. */
const madeUp = (files: Record<string, string>) =>
  new Map(Object.entries(files).map(([name, text]) => [name, Buffer.from(text)]));

describe('the built page', () => {
  it('has no script, style or handler written inline', () => {
    const pages = [...built.keys()].filter((name) => name.endsWith('.html'));
    expect(pages).toEqual(['index.html']);
    expect(inlineCode(page)).toEqual([]);
  });

  it.each([
    '<script>go()</script>',
    '<style>a{}</style>',
    '<p onclick="go()">',
    '<p class="a" style="color:red">',
  ])('is found out with %s', (planted) =>
    expect(inlineCode(page.replace('<body>', `<body>${planted}`))).toHaveLength(1),
  );

  it('states its policy before anything is loaded', () => {
    const stated = /<meta http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(page);
    expect(stated?.[1]?.replaceAll('&#39;', "'")).toBe(pagePolicy);
    expect(pagePolicy).not.toContain('unsafe-');
    expect(stated?.index).toBeLessThan(page.search(/<(script|link|style)\b/));
  });

  it('names its character set within the first 1,024 bytes', () => {
    const at = page.indexOf('<meta charset="utf-8"');
    expect(at).toBeGreaterThan(0);
    expect(at).toBeLessThan(1000);
  });

  it('can be put under any address: every path in it is relative', () => {
    const paths = [...page.matchAll(/(?:src|href)="([^"]*)"/g)].map((found) => found[1]);
    expect(paths.length).toBeGreaterThan(3);
    expect(paths.filter((path) => !path?.startsWith('./'))).toEqual([]);
  });
});

describe('licences', () => {
  it('of everything that is bundled lie beside it, with their texts', () => {
    const scripts = textOf(built, 'licences.txt');
    for (const name of ['lit-html', 'pixi.js', 'valibot', 'xstate'])
      expect(scripts).toContain(`## ${name} - `);
    expect(textOf(built, 'licence.txt')).toMatch(/^MIT License/);
    expect(textOf(built, 'licence-typeface.txt')).toContain('SIL OPEN FONT LICENSE Version 1.1');
  });
});

describe('weight', () => {
  it('before the drawing library is at most 60 kB of packed script', () => {
    const first = firstScripts(built);
    expect(first.size).toBeGreaterThan(0);
    expect([...first].filter((name) => name.includes('pixi'))).toEqual([]);
    expect(packedKilobytes(built, first)).toBeLessThanOrEqual(60);
  });

  /** What is fetched when sheets are shown, when a clip is made, when a written pattern is checked, and when a side is counted on a photo, with their libraries. Each has a weight of its own. */
  const apart: Record<string, number> = {
    'sheets-part': 8,
    'draw-for-print': 1,
    qr: 8,
    'clip-part': 2,
    'draw-clip': 2,
    film: 56,
    stills: 4,
    'check-part': 4,
    photo: 16,
  };
  const isApart = (name: string): boolean =>
    Object.keys(apart).some((part) => name.startsWith(`assets/${part}-`));

  it.each(Object.entries(apart))(
    'of the part "%s" is at most %d kB packed, and it comes later',
    (part, most) => {
      const found = [...laterScripts(built)].filter((name) => name.startsWith(`assets/${part}-`));
      expect(found).not.toHaveLength(0);
      for (const name of found) expect(firstScripts(built)).not.toContain(name);
      expect(packedKilobytes(built, found)).toBeLessThanOrEqual(most);
    },
  );

  it('of all other script is at most 400 kB packed, and the drawing library comes later', () => {
    const later = laterScripts(built);
    expect([...later].filter((name) => name.includes('pixi'))).toHaveLength(1);
    const scripts = [...built.keys()].filter((name) => name.endsWith('.js') && name !== 'sw.js');
    expect(scripts.sort()).toEqual([...firstScripts(built), ...later].sort());
    expect(
      packedKilobytes(
        built,
        scripts.filter((name) => !isApart(name)),
      ),
    ).toBeLessThanOrEqual(400);
  });

  it('of page, styles and letters is at most 150 kB packed', () => {
    const rest = [...built.keys()].filter((name) => /\.(html|css|woff2)$/.test(name));
    expect(packedKilobytes(built, rest)).toBeLessThanOrEqual(150);
  });

  it('is read from what scripts import, at once and later', () => {
    const planted = madeUp({
      'index.html':
        '<script type="module" src="./assets/a.js"></script><link rel="modulepreload" href="./assets/d.js">',
      'assets/a.js': 'import{x as y}from"./b.js";import"./c.js";const l=()=>import(`./pixi.js`)',
      'assets/b.js': 'export*from"./e.js"',
      'assets/c.js': '',
      'assets/d.js': '',
      'assets/e.js': '',
      'assets/pixi.js': 'import{z}from"./f.js";const t=new URL(`g.js`,import.meta.url).href',
      'assets/f.js': '',
      'assets/g.js': '',
    });
    expect([...firstScripts(planted)].sort()).toEqual(
      ['a', 'b', 'c', 'd', 'e'].map((name) => `assets/${name}.js`),
    );
    expect([...laterScripts(planted)].sort()).toEqual(['assets/f.js', 'assets/g.js', 'assets/pixi.js']);
  });
});

describe('offline', () => {
  it('the worker keeps every built file but itself', () => {
    const list = JSON.stringify(builtInto(textOf(built, 'sw.js')).files);
    const wanted = [...built.keys()].filter((name) => name !== 'sw.js');
    const addresses = wanted.map((name) => (name === 'index.html' ? './' : `./${name}`));
    expect(JSON.parse(list).sort()).toEqual(addresses.sort());
  });

  it('the app can be put on a home screen', () => {
    const manifest = JSON.parse(textOf(built, 'manifest.webmanifest'));
    expect(manifest).toMatchObject({
      name: 'Ringtrue',
      short_name: 'Ringtrue',
      start_url: './',
      display: 'standalone',
    });
    expect(manifest).not.toHaveProperty('orientation');
    expect(manifest).not.toHaveProperty('prefer_related_applications');
    const icons: { src: string; sizes: string; type: string }[] = manifest.icons;
    const drawn = icons.filter(({ type }) => type === 'image/png');
    expect(drawn.map(({ sizes }) => sizes)).toEqual(expect.arrayContaining(['192x192', '512x512']));
    for (const { src, sizes } of drawn) expect(pngSize(built.get(src.slice(2))), src).toBe(sizes);
    for (const { src } of icons) expect(built.has(src.slice(2)), src).toBe(true);
    expect(pngSize(built.get('icon-180.png'))).toBe('180x180');
  });
});

describe('building twice', () => {
  mkdirSync(join(root, '.cache'), { recursive: true });
  const folder = mkdtempSync(join(root, '.cache', 'twin-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('gives the same files', async () => {
    expect(await buildInto(folder)).toBe(true);
    expect(hashes(readBuilt(folder))).toEqual(hashes(built));
  });
});
