/**
 * What the words of the trade mean to the literal reader. Written down here and nowhere taken from the app:
 * Craft Yarn Council terms as reprinted; cushion and pad: common practice.
 */
export type Terms = 'uk' | 'us';
export type Hand = 'right' | 'left';

export type Glossary = {
  /** The stitch of the foundation, the same in short, and many of them. */
  foundationStitch: string;
  tall: string;
  tallMany: string;
  /** The stitch of the edging, and of the join. */
  short: string;
  slip: string;
  pad: string;
  cushion: string;
  miss: string;
  unravel: string;
};

export const GLOSSARY: Record<Terms, Glossary> = {
  uk: {
    foundationStitch: 'foundation treble',
    tall: 'treble',
    tallMany: 'trebles',
    short: 'double crochet',
    slip: 'slip stitch',
    pad: 'cushion pad',
    cushion: 'cushion',
    miss: 'Miss',
    unravel: 'unravel',
  },
  us: {
    foundationStitch: 'foundation double crochet',
    tall: 'double crochet',
    tallMany: 'double crochets',
    short: 'single crochet',
    slip: 'slip stitch',
    pad: 'pillow form',
    cushion: 'pillow',
    miss: 'Skip',
    unravel: 'rip back',
  },
};

/** A right-handed maker works towards the left, a left-handed one towards the right. */
export const ONWARDS: Record<Hand, string> = { right: 'left', left: 'right' };

const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth'];

/** "second" → 2, "12th" → 12; the ending must go with the number. */
export function ordinalOf(word: string): number {
  const spelt = ORDINALS.indexOf(word);
  if (spelt >= 0) return spelt + 1;
  const number = Number.parseInt(word, 10);
  const last = number % 100 >= 11 && number % 100 <= 13 ? 0 : number % 10;
  const ending = last === 1 ? 'st' : last === 2 ? 'nd' : last === 3 ? 'rd' : 'th';
  return word === `${number}${ending}` ? number : Number.NaN;
}
