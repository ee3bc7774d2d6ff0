/** A sum by which a change on the way is noticed: CRC-32 (ISO 3309), in seven signs of base 36. */
const sumSigns = 7;

const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit++) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
  return sum;
});

export function sumOf(text: string): string {
  let sum = ~0;
  for (const byte of new TextEncoder().encode(text))
    sum = (sum >>> 8) ^ (table[(sum ^ byte) & 0xff] as number);
  return (~sum >>> 0).toString(36).padStart(sumSigns, '0');
}
