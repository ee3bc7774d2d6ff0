/** The sentences of the kept panels and of files. */
import { many } from './numbers.ts';

export const panelsSay = {
  heading: 'Your panels',
  close: 'Close panels',
  fresh: 'New panel',
  openFile: 'Open a file',
  saveAll: 'Save all as a file',
  saveThis: 'Save it as a file',
  name: 'name of the panel',
  unnamed: 'Unnamed panel',
  inHand: 'in hand',
  open: 'Open',
  copy: 'Copy',
  save: 'Save',
  remove: 'Delete',
  undo: 'Undo',
  unread: 'This one cannot be read by this version of the page. It is kept as it is.',
  onlyOne:
    'This browser lends the page no database, so it keeps one panel only. Save what you want to keep as a file.',
  lookedAt: 'This panel was sent to you. Keep it, or go back to yours: then all your panels are here.',
  noRoom: 'This device has no room for it. Nothing was changed.',
  notTaken: 'The panel in hand could not be kept, so it stays in hand. Save it as a file first.',
  notRead: 'The file could not be read. Nothing was changed.',
  drop: 'Let go to open the file',
} as const;

type FileProblem = 'huge' | 'no-json' | 'strange' | 'newer' | 'damaged';
type FileTrust = 'as-saved' | 'changed' | 'unsummed';

const refusals: Record<FileProblem, string> = {
  huge: 'The file is larger than any that this page saves. Nothing was changed.',
  'no-json': 'The file is not whole, or it holds no panels. Nothing was changed.',
  strange: 'The file was not saved by this page. Nothing was changed.',
  newer: 'The file comes from a newer version. Open the page again to fetch it. Nothing was changed.',
  damaged: 'The file is damaged: no panel in it can be read. Nothing was changed.',
};

export const sayRefused = (why: FileProblem): string => refusals[why];

const trusts: Record<FileTrust, string> = {
  'as-saved': '',
  changed: ' It was changed after it was saved: look over its numbers.',
  unsummed: ' Nothing in it tells whether it is whole: look over its numbers.',
};

/** What came of a file. `there`: how many of its panels were kept before. */
export type FileOpened = { name: string; opened: number; there: number; unread: number; trust: FileTrust };

export function sayOpened({ name, opened, there, unread, trust }: FileOpened): string {
  const all = opened + there;
  const what =
    all === 1
      ? there === 1
        ? `${sayName(name)} is in hand. It was kept here already.`
        : `${sayName(name)} is in hand. What you had is kept below.`
      : `${many(opened, 'panel')} of the file ${opened === 1 ? 'is' : 'are'} below.`;
  const before =
    all > 1 && there > 0
      ? ` ${many(there, 'panel')} of it ${there === 1 ? 'was' : 'were'} kept here already.`
      : '';
  const left =
    unread > 0
      ? ` ${many(unread, 'panel')} of it cannot be read and ${unread === 1 ? 'is' : 'are'} left out.`
      : '';
  return what + before + left + trusts[trust];
}

/** A file was opened where only one panel can be kept. */
export const sayOpenedAlone = (count: number, trust: FileTrust): string =>
  `${count === 1 ? 'The panel of the file' : `The first of ${many(count, 'panel')}`} is in hand. Undo brings yours back.${trusts[trust]}`;

export const sayName = (name: string): string => name.trim() || panelsSay.unnamed;

export const saySaved = (count: number, file: string, left: number): string => {
  const rest =
    left === 0 ? '' : ` ${many(left, 'panel')} that cannot be read ${left === 1 ? 'is' : 'are'} not in it.`;
  return `${many(count, 'panel')} saved as ${file}.${rest}`;
};

export const sayDeleted = (name: string): string => `Deleted: ${sayName(name)}.`;
export const sayTaken = (name: string): string => `${sayName(name)} is in hand.`;
export const sayCopied = (name: string): string => `${sayName(name)} is a panel of its own.`;

/** "4 sides: 64, 40, 64, 40"; of many sides only how many. */
export function sayCounts(sides: number, counts: readonly string[]): string {
  const [first = ''] = counts;
  if (sides === 0) return first === '' ? 'round' : `round: ${first}`;
  const isTold = counts.every((count) => count !== '') && counts.length <= 6;
  return isTold ? `${many(sides, 'side')}: ${counts.join(', ')}` : many(sides, 'side');
}

const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
const hour = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });

/** When a panel was changed: the hour of today, else the day. Both in ms since 1970. */
export function sayChanged(changed: number, now: number): string {
  if (changed === 0) return '';
  const isToday = day.format(changed) === day.format(now);
  return isToday ? `today, ${hour.format(changed)}` : day.format(changed);
}

/** A name that no other panel has: "Cushion", "Cushion 2", "Cushion 3". */
export function freeName(name: string, taken: readonly string[]): string {
  const plain = sayName(name);
  if (!taken.includes(plain)) return plain;
  const stem = plain.replace(/ \d{1,4}$/, '');
  for (let count = 2; ; count++) if (!taken.includes(`${stem} ${count}`)) return `${stem} ${count}`;
}
