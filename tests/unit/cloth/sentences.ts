/** All that the place Cloth says of a project, as lines of text: what its templates come to, without a page. */
import type { TemplateResult } from 'lit-html';
import { vi } from 'vitest';
import { openCloth } from '../../../src/cloth/panel.ts';
import { fileOf } from '../../../src/cloth/saving.ts';
import { clothOf } from '../../../src/state/cloth.ts';
import type { Cloth } from '../../../src/state/cloth-types.ts';
import { derive } from '../../../src/state/derive.ts';
import { example, standardSettings } from '../../../src/state/project.ts';
import type { Snapshot, Units } from '../../../src/state/snapshot.ts';
import { inNumbers } from '../../../src/words/cloth/in-numbers.ts';

const isTemplate = (value: unknown): value is TemplateResult =>
  typeof value === 'object' && value !== null && 'strings' in value && 'values' in value;

/** A template as markup; what listens and what is `nothing` leaves no text. */
function markup(value: unknown): string {
  if (Array.isArray(value)) return value.map(markup).join('');
  if (isTemplate(value))
    return value.strings.reduce((text, part, i) => text + markup(value.values[i - 1]) + part);
  return typeof value === 'string' || typeof value === 'number' ? `${value}` : '';
}

/** A line for each block; what stands in a field is the person's own. */
const linesIn = (text: string): string[] =>
  text
    .replace(/<input[\s\S]*?\/>/g, '')
    .replace(/ aria-label=("?)([^"<>]*)\1/g, '>\n$2\n<x')
    .replace(/<\/?(?:b|span|tspan|a)\b[^>]*>/g, ' ')
    .replace(/<[^>]*>/g, '\n')
    .split('\n')
    .map((line) => line.replace(/[ \t]+/g, ' ').trim())
    .filter((line) => line !== '');

export type Said = { cloth: Cloth; lines: string[] };

const kinds = [
  'lay-strip',
  'cloth-centres',
  'cloth-pins',
  'sew-out',
  'sew-back',
  'pins-out',
  'turn-strip',
] as const;

export function everythingSaid(texts: Record<string, string>, sideCount: number, units: Units): Said {
  const counts = Object.fromEntries(
    Array.from({ length: 6 }, (_, i) => [`side.${i}`, texts['side.0'] ?? '40']),
  );
  const project = { ...example, sideCount, texts: { ...example.texts, ...counts, ...texts } };
  const settings = { ...standardSettings, units, dialect: units === 'inch' ? 'us' : 'uk' } as const;
  const { making } = derive(project, settings);
  if (!making) throw new Error('no making');
  const cloth = clothOf(project, units, making);
  const snapshot = { project, settings, making } as Snapshot;
  vi.stubGlobal('document', { querySelector: () => null });
  vi.stubGlobal('navigator', { languages: ['en-GB'] });
  const panel = openCloth(
    () => {},
    () => 4000,
    () => false,
  )(snapshot, () => {});
  vi.unstubAllGlobals();
  const walk = kinds.flatMap((kind) => {
    const { act, check, caution } = inNumbers(kind, cloth, units);
    return [act, check, caution].flatMap((one) => one ?? []);
  });
  const files = (['laid', 'turned', 'layout'] as const).map(
    (what) => fileOf({ cloth, snapshot }, what)?.text ?? '',
  );
  return { cloth, lines: [markup(panel), ...walk, ...files].flatMap(linesIn) };
}
