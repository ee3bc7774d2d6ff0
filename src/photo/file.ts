/** Looking at a file before it is read as a photo. */

/** Larger files are not read: a phone's own photos are some ten megabytes. */
export const mostMegabytes = 60;

export type FileProblem = 'no-picture' | 'too-large' | 'empty' | 'broken';

export function problemOf(file: Pick<File, 'type' | 'size'>): Exclude<FileProblem, 'broken'> | null {
  if (file.size === 0) return 'empty';
  if (file.type !== '' && !file.type.startsWith('image/')) return 'no-picture';
  return file.size > mostMegabytes * 1_000_000 ? 'too-large' : null;
}

/** The first file of what was pasted or dropped. */
export const fileIn = (data: DataTransfer | null): File | null => data?.files[0] ?? null;
