/**
 * The literal reader: follows the sentences of a walk with a fixed glossary of the trade, works a piece of its own
 * and says what it has made. It knows no more than a crocheter who does exactly as told: a sentence that it does
 * not know, or that cannot be done where the work stands, stops it.
 */
import { GLOSSARY, type Hand, type Terms } from './glossary.ts';
import { type Hands, must, newHands, Stuck } from './hands.ts';
import type { FrontPiece, Made } from './piece.ts';
import type { Rule } from './rules.ts';
import { JOIN_RULES } from './rules-join.ts';
import { ROUND_RULES } from './rules-round.ts';
import { type Laid, takeUp } from './taken-up.ts';
import { checkCount, checkPromise, checkWhere, noPromises } from './whereabouts.ts';

export { Stuck } from './hands.ts';
export type { FrontPiece, Made } from './piece.ts';
export type { Laid } from './taken-up.ts';

/** What is to be read at one step. */
export type Page = {
  act: string;
  check?: string;
  caution?: string;
  ask?: string;
  where?: string;
  count?: string;
};

/** `laid`: what is made already, where the pages do not begin at the beginning. */
export type Reading = { terms: Terms; hand: Hand; front: FrontPiece; laid?: Laid };

export const sentencesOf = (text: string): string[] =>
  text.split(/(?<=[.?!])\s+/).filter((sentence) => sentence !== '');

/** Works through the pages and answers what was made. Throws `Stuck` where it cannot go on. */
export function readWalk(pages: readonly Page[], { terms, hand, front, laid }: Reading): Made {
  const words = GLOSSARY[terms];
  const hands = newHands(words, hand, front);
  const promises = noPromises();
  if (laid) takeUp(hands, laid);
  pages.forEach((page, i) => {
    try {
      const before = {
        stage: hands.stage,
        passed: hands.passed,
        leg: hands.leg,
        corner: hands.corner,
        loops: hands.loops,
      };
      for (const sentence of [page.act, page.check, page.ask, page.caution].flatMap((text) =>
        sentencesOf(text ?? ''),
      ))
        understand(sentence, terms)(hands);
      const isAtEnd = before.corner === null && (hands.corner !== null || before.loops > hands.loops);
      if (isAtEnd && hands.stage !== 'join') checkPromise(hands, promises, before.passed, before.leg);
      if (page.where !== undefined) checkWhere(hands, page.where, promises);
      if (page.count) checkCount(hands, page.count);
    } catch (problem) {
      if (!(problem instanceof Stuck)) throw problem;
      throw new Stuck(`page ${i + 1}, "${page.act}": ${problem.message}`);
    }
  });
  return madeBy(hands, promises.rounds);
}

const RULES = [...ROUND_RULES, ...JOIN_RULES];
const KNOWN: Record<Terms, Map<string, (hands: Hands) => void>> = { uk: new Map(), us: new Map() };

/** What the hands do at a sentence. It means the same wherever it is read, so it is looked up once. */
function understand(sentence: string, terms: Terms): (hands: Hands) => void {
  const known = KNOWN[terms].get(sentence);
  if (known) return known;
  const meant = meaningOf(
    sentence,
    RULES.map((rule) => rule(GLOSSARY[terms])),
  );
  KNOWN[terms].set(sentence, meant);
  return meant;
}

function meaningOf(sentence: string, rules: readonly Rule[]): (hands: Hands) => void {
  for (const { sentence: known, act } of rules) {
    const match = sentence.match(known);
    if (match) return (hands) => act(hands, match.slice(1));
  }
  throw new Stuck(`"${sentence}" says nothing that a hand can do`);
}

function madeBy(hands: Hands, rounds: number | null): Made {
  must(hands.stage === 'finished', 'the piece is not finished');
  must(hands.foundation !== null, 'there is no foundation');
  must(rounds === null || rounds === hands.edgings.length, 'not all edging rounds are made');
  const pairs = hands.joined + (hands.lastHole ? 1 : 0);
  return {
    foundation: hands.foundation,
    edgings: hands.edgings,
    pairs,
    leftOver: {
      front: hands.frontPlaces.length - hands.skipped.front - pairs,
      back: hands.back.length - hands.skipped.back - pairs,
    },
  };
}
