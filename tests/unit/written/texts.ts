/**
 * Rounds of written patterns in many styles, all our own, written before the reader. `counts`: what a careful person
 * takes each line's count for (`side` or `all`); null where the line leaves it open and nothing may be taken.
 */
type Count = { side: number } | { all: number } | null;
export type WrittenText = { text: string; counts: Count[] };

const all = (...numbers: number[]): Count[] => numbers.map((number) => ({ all: number }));
const side = (...numbers: number[]): Count[] => numbers.map((number) => ({ side: number }));

export const open: WrittenText[] = [
  { text: 'Round 1: 12 tr in ring. (12 tr)\nRound 2: 2 tr in each st. (24 tr)', counts: all(12, 24) },
  {
    text: 'Rnd 1: work 40 sc around = 40 sc\nRnd 2: sc around, 3 sc in corners = 48 sc',
    counts: all(40, 48),
  },
  { text: 'R1: [..] (60 sts)\nR2: [..] (68 sts)\nR3: [..] (76 sts)', counts: all(60, 68, 76) },
  { text: '1st round: 20 dc on each side.\n2nd round: 22 dc on each side.', counts: side(20, 22) },
  { text: 'Round 4 – total 84 stitches\nRound 5 – total 92 stitches', counts: all(84, 92) },
  { text: 'Rd 1 (RS): ch 2, dc to corner, (dc, ch 2, dc) in corner. 15 dc per side.', counts: side(15) },
  { text: 'Round 1: 3 dc, 2 ch, 3 dc in each corner. 64 sts in all.', counts: all(64) },
  { text: 'ROUND 2: AS ROUND 1. [72 STS]', counts: all(72) },
  { text: 'Round 7: 58 stitches a side', counts: side(58) },
  { text: 'Round 1: 80\nRound 2: 88\nRound 3: 96', counts: all(80, 88, 96) },
  { text: 'Rnd 3. Sc in each st around. <56 sc>', counts: all(56) },
  { text: 'Round 2: Repeat round 1.', counts: [null] },
  { text: 'Rounds 3-5: dc around. (96 dc)', counts: [null] },
  { text: 'Round 1: 24 tr, 4 corners. (24 tr, 4 ch-2 sps)', counts: all(24) },
  { text: 'Round 2: (30) (34) dc', counts: [null] },
  { text: 'Round 1: 62 (70: 78) dc', counts: [null] },
  { text: 'Round 5: 18 dc between corners', counts: side(18) },
  { text: 'Round 6 – 20 dc between corner spaces; 80 dc in total', counts: [null] },
  { text: 'Round 1: 1,200 dc', counts: [null] },
  { text: 'Work an edging of double crochet.\nRound 1: 44 dc.', counts: all(44) },
  { text: 'Round 1: dc in every st to end, ss to join. 100 dc. Fasten off.', counts: all(100) },
  { text: 'Rnd 1: ch 3, 2 dc in ring, *ch 2, 3 dc* 3 times, ch 2, join. 12 dc', counts: all(12) },
  { text: 'Round one: 16 sts\nRound two: 24 sts', counts: [null, null] },
  { text: 'Round 9: 10 groups of 3 dc', counts: [null] },
  { text: 'Round 2: 26 sts between each corner, 104 sts', counts: [null] },
  { text: 'Round 3: ch 1, dc in each st. You now have 52 dc.', counts: all(52) },
  { text: 'Round 3: 50-52 dc', counts: [null] },
  { text: 'Round 8: 2 dc in first st, dc to end - 73 dc', counts: all(73) },
  { text: 'Round 1: corner to corner 14 dc, each side', counts: side(14) },
  { text: 'Rnd 2: 88 sc (22 per side)', counts: [null] },
];

/** Kept aside until the reader was done. */
export const aside: WrittenText[] = [
  {
    text: 'Round 1: ch 1, dc around, 3 dc in each corner (92 dc)\nRound 2: as round 1 (100 dc)',
    counts: all(92, 100),
  },
  { text: 'R 1 :: 48 st.\nR 2 :: 56 st.', counts: all(48, 56) },
  { text: 'Third round: 30 trebles on every side', counts: [null] },
  { text: 'Round 4: sc evenly around: 120 sc in all', counts: all(120) },
  { text: 'Rnd 5: dc in next 6 sts, 2 dc in next, repeat around', counts: [null] },
  { text: 'Round 6: 36 dc each side, 2 ch at corners', counts: side(36) },
  { text: 'Round 2 - (dc, 2 ch, dc) in corners, 19 dc along each side', counts: side(19) },
  { text: 'Rnd 1: 25 hdc. Turn. 27 hdc.', counts: [null] },
  { text: 'Round 3: total: 64; corners: 4', counts: all(64) },
  { text: 'Round 1: approx. 60 dc', counts: [null] },
];

/** Lines that lead astray: what looks like a count is a part of the work, or one side of several. */
export const astray: WrittenText[] = [
  { text: 'Round 1: 40 dc, 4 times. (160 dc)', counts: all(160) },
  { text: 'Round 2: (1 dc, 2 ch, 1 dc) in each corner, 10 dc on each of 4 sides.', counts: [null] },
  { text: 'Round 5: [12 dc, 2 ch] 4 times.', counts: [null] },
  { text: 'Round 6: (12 dc) 4 times.', counts: [null] },
  { text: 'Round 7: Repeat (3 dc) to end.', counts: [null] },
  { text: 'Round 8: dc in next 5 sts (corner), dc to end.', counts: [null] },
  { text: 'Round 10: 18 dc on the first side, 20 dc on each side after', counts: [null] },
  { text: 'Round 12: 96 sts incl. corners', counts: [null] },
  { text: 'Round 18: 24 dc (not counting the 4 corners)', counts: [null] },
  { text: 'Round 19: Ch 1. 30 dc. (do not count ch 1)', counts: all(30) },
  { text: 'Round 20: tr around; 12 tr on short side, 20 on long side', counts: [null] },
  { text: 'Round 23: Increase 8. 64 dc in total now 72', counts: [null] },
  { text: 'Round 26: (2 dc) in each ch-2 corner', counts: [null] },
  { text: 'Round 27: dc around, (3 dc) in corners', counts: [null] },
  { text: 'Round 28: 2 dc in all corners', counts: [null] },
  { text: 'Round 34: [see page 3]', counts: [null] },
  { text: 'Round 36: 60 (62) dc', counts: [null] },
  { text: 'Round 39: 14 dc on a side, 12 dc on the next side', counts: [null] },
  { text: 'Round 40: ch 3 (counts as 1 dc), dc around (56)', counts: all(56) },
];
