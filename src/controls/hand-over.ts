/**
 * Handing something over to another program: through the device's own way to share where it has one, else by copying.
 * Both must begin within the press itself.
 */

export type Handed = 'shared' | 'copied' | 'cancelled' | 'refused';

/** What is handed over: an address, or lines of text. */
export type Parcel = { url: string } | { text: string };

export const canShare = (): boolean => 'share' in navigator;

/** Shares, and copies where that is not possible. */
export async function share(parcel: Parcel): Promise<Handed> {
  if (!canShare()) return copy(parcel);
  try {
    await navigator.share(parcel);
    return 'shared';
  } catch (error) {
    // The person has closed the device's own window.
    return error instanceof DOMException && error.name === 'AbortError' ? 'cancelled' : copy(parcel);
  }
}

export async function copy(parcel: Parcel): Promise<Handed> {
  try {
    await navigator.clipboard.writeText('url' in parcel ? parcel.url : parcel.text);
    return 'copied';
  } catch {
    return 'refused';
  }
}
