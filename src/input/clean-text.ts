/** Text from outside: shown as text only, never as markup. */

import { isPatternField } from '../state/pattern-fields.ts';
import type { Field } from '../state/snapshot.ts';

const longestText = 200;

/** Without control characters and those that turn the direction of writing around, and not endless. */
export const cleanText = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
  text.replace(/[\u0000-\u001f\u007f\u202a-\u202e\u2066-\u2069]/g, '').slice(0, longestText);

const longestLines = 8000;

/** Texts of several lines: the same, line by line. */
const cleanLines = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
  text.replace(/[\u0000-\u0009\u000b-\u001f\u007f\u202a-\u202e\u2066-\u2069]/g, '').slice(0, longestLines);

/** What is typed into a field, as it is kept. */
export const cleanField = (field: Field, text: string): string =>
  isPatternField(field) ? cleanLines(text) : cleanText(text);
