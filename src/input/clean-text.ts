/** Text from outside: shown as text only, never as markup. */

export const longestText = 200;

/** Without control characters and those that turn the direction of writing around, and not endless. */
export const cleanText = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is taken out
  text.replace(/[\u0000-\u001f\u007f\u202a-\u202e\u2066-\u2069]/g, '').slice(0, longestText);
