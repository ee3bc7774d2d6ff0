/** Numbers by which lists of differences are looked up: the sum of a sum is the sum of the sums. */

/** A sum of all spots, each with a weight of its own, so that sums of causes are sums of sums. */
export function sumOf(by: Int32Array): number {
  let sum = 0;
  for (let i = 0; i < by.length; i++)
    if (by[i] !== 0) sum = (sum + Math.imul(by[i] as number, weightOf(i))) | 0;
  return sum;
}

/** Well mixed and the same every time (the finaliser of a published 32-bit hash). */
function weightOf(spot: number): number {
  let mixed = Math.imul(spot + 1, 0x9e3779b1);
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return (mixed ^ (mixed >>> 16)) | 1;
}
