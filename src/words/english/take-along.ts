/** The sentences of "Take along". */
import type { TakeAlongMessages } from '../pattern/messages.ts';
import { counted } from '../speaker.ts';

export const takeAlong: TakeAlongMessages = {
  heading: 'Take along',
  intro: 'The whole recipe as a pattern to print, to send or to read at the table.',
  yours: 'Yours',
  title: 'title',
  designer: 'designed by',
  notes: 'notes',
  terms: 'Terms of the pattern',
  termsBoth: 'UK and US',
  copy: 'Copy the text',
  saveText: 'Save as text',
  saveMarkdown: 'Save as Markdown',
  saveHtml: 'Save as a page',
  copied: 'The text is copied.',
  notCopied: 'The browser did not let it be copied. Save it instead.',
  saved: ({ file }) => `Saved as ${file}.`,
  waits: 'This is from your last numbers.',
  pattern: 'The pattern',

  sizes: 'Several sizes',
  sizesIntro: 'One size a line: its name, a colon, and its counts as you count them.',
  sizesField: 'sizes',
  rule: 'Or by a rule: each size has',
  ruleField: 'stitches more a side',
  ruleCount: 'sizes in all',
  ruleApply: 'Fill the sizes in',
  sizeWorks: ({ name, total }, { formatting }) => `${name}: works, ${formatting.plain(total)} in all.`,
  sizeFails: ({ name, why }) => `${name}: cannot be worked. ${why}.`,
  sizeUnread: ({ line, sides }, speaker) =>
    `"${line}" is not read. Give a name, a colon, and 1 count or ${counted(speaker, sides, { one: 'count', other: 'counts' })}.`,
  sideOf: ({ side, name }) => `side ${side + 1} of ${name}`,
  ringOf: ({ name }) => `the round of ${name}`,
};
