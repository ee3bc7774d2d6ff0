/** A template as text, near enough to HTML to look for words and attributes in it. */
import { nothing } from 'lit-html';

type Template = { strings: readonly string[]; values: readonly unknown[] };

const isTemplate = (value: unknown): value is Template =>
  typeof value === 'object' && value !== null && 'strings' in value && 'values' in value;

export function flatten(value: unknown): string {
  if (value === nothing || value === null || value === undefined || value === false) return '';
  if (typeof value === 'function') return '"handler"';
  if (Array.isArray(value)) return value.map(flatten).join('');
  if (!isTemplate(value)) return typeof value === 'object' ? directiveText(value) : String(value);
  return value.strings.map((piece, index) => piece + flatten(value.values[index])).join('');
}

/** Directives such as `live` carry what they show as their first value. */
function directiveText(value: object): string {
  const given = (value as { values?: readonly unknown[] }).values?.[0];
  return typeof given === 'string' ? `"${given}"` : '';
}
