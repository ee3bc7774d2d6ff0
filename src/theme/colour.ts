/**
 * Colour arithmetic: sRGB hex in, numbers out. Luminance and contrast as WCAG 2.2 defines them.
 */

/** Red, green, blue, each 0–255. */
export type Rgb = readonly [red: number, green: number, blue: number];

/** Reads `#rrggbb` or `#rgb`; anything else gives mid grey, so that a drawing never fails over a colour. */
export function readHex(hex: string): Rgb {
  const digits = hex.trim().replace(/^#/, '');
  const long = digits.length === 3 ? [...digits].map((digit) => digit + digit).join('') : digits;
  if (!/^[0-9a-f]{6}$/i.test(long)) return [128, 128, 128];
  const value = Number.parseInt(long, 16);
  return [value >> 16, (value >> 8) & 255, value & 255];
}

/** Writes `#rrggbb`; channels are rounded and clamped. */
export function writeHex(rgb: Rgb): string {
  const digits = rgb.map((channel) =>
    Math.round(Math.min(255, Math.max(0, channel)))
      .toString(16)
      .padStart(2, '0'),
  );
  return `#${digits.join('')}`;
}

const linear = (channel: number): number => {
  const part = channel / 255;
  return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
};

/** Relative luminance, 0 black to 1 white (WCAG 2.2). */
export function luminance(hex: string): number {
  const [red, green, blue] = readHex(hex);
  return 0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue);
}

/** Contrast ratio of two colours, 1–21 (WCAG 2.2). */
export function contrast(one: string, other: string): number {
  const [a, b] = [luminance(one), luminance(other)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** Mixes two colours; `share` 0 gives the first, 1 the second. */
export function mix(from: string, to: string, share: number): string {
  const [a, b] = [readHex(from), readHex(to)];
  const channel = (index: 0 | 1 | 2) => a[index] + (b[index] - a[index]) * share;
  return writeHex([channel(0), channel(1), channel(2)]);
}

/** A contrast to reach on every one of some papers; `ratio` is 1–21. */
export type LeastContrast = { papers: readonly string[]; ratio: number };

/**
 * The first colour on the way from `colour` to `ink` that has the contrast asked for, beginning at
 * share `least`. Falls back on `ink` itself.
 */
export function towardsContrast(
  colour: string,
  ink: string,
  { papers, ratio }: LeastContrast,
  least = 0,
): string {
  const enough = (hex: string) => papers.every((paper) => contrast(hex, paper) >= ratio);
  for (let share = least; share < 1; share += 0.04) {
    const candidate = mix(colour, ink, share);
    if (enough(candidate)) return candidate;
  }
  return ink;
}
