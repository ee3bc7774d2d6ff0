import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSources, type Source, withoutComments } from '../setup/sources.ts';

const shipped = [
  ...readSources(['src', 'core'], ['.ts', '.css']),
  { path: 'index.html', text: readFileSync('index.html', 'utf8') },
];

/** What must not stand in shipped code: it puts text in as markup or code, or the content policy blocks it. */
const forbidden: [name: string, pattern: RegExp][] = [
  ['markup from text', /\b(innerHTML|outerHTML|insertAdjacentHTML|setHTMLUnsafe|createContextualFragment)\b/],
  ['markup from text', /\b(unsafeHTML|unsafeSVG|unsafeStatic|DOMParser|parseHTMLUnsafe|srcdoc)\b/],
  ['writing into the page', /\bdocument\s*\.\s*write(ln)?\b/],
  ['code from text', /\beval\s*\(|\bnew\s+Function\b|\bset(Timeout|Interval)\s*\(\s*['"`]/],
  ['style attribute', /<[a-z][^<>]*\sstyle\s*=/i],
  ['inline handler', /<[a-z][^<>]*\son[a-z]+\s*=/i],
  ['number field that spins', /type\s*=\s*(\\?["'])?number\b|\.type\s*=\s*['"`]number/],
  ["the browser's own checks", /<(input|select|textarea)\b[^<>]*\s(required|maxlength|pattern)\b/],
  ['zoom forbidden', /user-scalable\s*=\s*no|maximum-scale/],
  ['talk to the console', /\bconsole\.(log|debug|info)\b/],
  ['foreign address', /\b(fetch|import)\s*\(\s*['"`]https?:|\bsrc\s*=\s*["']https?:|url\(\s*["']?https?:/],
];

function findings(sources: Source[]): string[] {
  return sources.flatMap(({ path, text }) => {
    const code = path.endsWith('.ts') ? withoutComments(text) : text;
    return forbidden.flatMap(([name, pattern]) => {
      const found = pattern.exec(code);
      if (!found) return [];
      return [`${path}:${code.slice(0, found.index).split('\n').length} ${name}: ${found[0]}`];
    });
  });
}

describe('shipped code', () => {
  it('has nothing that the content policy or the person would trip over', () => {
    expect(shipped.length).toBeGreaterThan(5);
    expect(findings(shipped)).toEqual([]);
  });

  it.each([
    "box.innerHTML = '<b>';",
    "box.insertAdjacentHTML('beforeend', text);",
    'unsafeHTML(text);',
    "document.write('x');",
    "eval('1');",
    "new Function('return 1');",
    "setTimeout('go()', 10);",
    'html`<div class="a" style="color: red"></div>`;',
    'html`<p style=colour></p>`;',
    'html`<button onclick="go()"></button>`;',
    'html`<input type="number">`;',
    "field.type = 'number';",
    'html`<input name="a" required>`;',
    "console.log('here');",
    "fetch('https://example.org/');",
  ])('is found out with %s', (text) => {
    expect(findings([{ path: 'src/planted.ts', text }])).toHaveLength(1);
  });

  it.each([
    'html`<button @click=go class="onward"></button>`;',
    '// box.innerHTML would be blocked',
    "box.style.setProperty('--yarn', colour);",
    'html`<input inputmode="numeric" aria-required="true">`;',
    "const address = 'https://example.org/'; // not asked for anything",
  ])('may hold %s', (text) => {
    expect(findings([{ path: 'src/planted.ts', text }])).toEqual([]);
  });
});

describe('files', () => {
  const longest = 500;
  const tooLong = (sources: Source[]) =>
    sources
      .map(({ path, text }) => ({ path, lines: text.split('\n').length - 1 }))
      .filter(({ lines }) => lines > longest)
      .map(({ path, lines }) => `${path}: ${lines} lines`);

  it(`have at most ${longest} lines`, () => {
    const all = readSources(['src', 'core', 'tests'], ['.ts', '.mjs', '.css']);
    expect(tooLong(all)).toEqual([]);
  });

  it('of 501 lines are found out', () => {
    expect(tooLong([{ path: 'a.ts', text: '\n'.repeat(501) }])).toEqual(['a.ts: 501 lines']);
    expect(tooLong([{ path: 'a.ts', text: '\n'.repeat(500) }])).toEqual([]);
  });

  it('carry no notes to oneself', () => {
    const note = /\b(TODO|FIXME|XXX|HACK)\b/;
    const found = readSources(['src', 'core', 'tests'], ['.ts', '.mjs', '.css']).filter(
      ({ path, text }) => !path.includes('/house') && note.test(text),
    );
    expect(found.map(({ path }) => path)).toEqual([]);
  });
});
