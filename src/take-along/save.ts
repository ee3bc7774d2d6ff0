/** Handing a text over: as a file, or for pasting elsewhere. */

/** Long enough for any browser to begin to read it. */
const keepAddressMs = 60_000;

export const saveFile = (text: string, type: string, name: string): void =>
  saveBlob(new Blob([text], { type }), name);

export function saveBlob(data: Blob, name: string): void {
  const address = URL.createObjectURL(data);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), keepAddressMs);
}

/** "Hazel Row, No. 2" → "hazel-row-no-2.txt": letters and digits of any script, with single hyphens. */
export function fileNameOf(title: string, ending: string): string {
  const plain = title
    .toLocaleLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return `${plain || 'pattern'}.${ending}`;
}
