/**
 * What a beginner must be told where the words alone decide what the hand does, for every choice of start and closings,
 * in both terms. The facts are pinned, not the wording. What the trade says: `acts-*.ts` names it beside each sentence.
 */
import { describe, expect, test } from 'vitest';
import { type Choices, type EdgeInput, planBack, readEdge, type Step, steps } from '../../../core/index.ts';
import { sayRecipe } from '../../../src/words/recipe.ts';
import { type Said, sayHeldBack, sayNext, sayStep } from '../../../src/words/walk/step.ts';
import type { Told } from '../../../src/words/walk/telling.ts';
import type { Speech } from '../../../src/words/words.ts';

const two = { made: 'chain', size: 2 } as const;
const three = { made: 'chain', size: 3 } as const;

function make(input: Partial<EdgeInput>, choices: Choices): Told {
  const edge = readEdge({ sides: [13, 12, 14, 12], corner: two, counted: 'stitches-only', ...input });
  if (!edge.ok) throw new Error(JSON.stringify(edge.problems));
  const plan = planBack(edge.value, choices);
  if (!plan.ok) throw new Error(JSON.stringify(plan.problems));
  return { plan: plan.value, steps: steps(plan.value) };
}

const EITHER = [0, 1] as const;
const TERMS: Speech[] = (['uk', 'us'] as const).map((dialect) => ({ dialect, hand: 'right', units: 'cm' }));
/** Of the trade, and nowhere taken from the app: Craft Yarn Council terms. */
const TREBLE = { uk: 'treble', us: 'double crochet' };

const CASES = EITHER.flatMap((counts) =>
  EITHER.flatMap((foundation) =>
    EITHER.flatMap((edging) =>
      TERMS.map((speech) => ({
        counts,
        foundation,
        edging,
        speech,
        terms: speech.dialect,
        told: make(
          { corner: three },
          {
            foundationStart: { counts },
            foundationClosing: { adds: foundation },
            edgingClosing: { adds: edging },
          },
        ),
      })),
    ),
  ),
);

const all = ({ steps: list }: Told): Step[] => Array.from({ length: list.length }, (_, i) => list.at(i));
const both = ({ act, check = '' }: Said): string => `${act} ${check}`;

describe.each(CASES)(
  'chains that count as $counts, closings that add $foundation and $edging, $terms terms',
  ({ counts, foundation, edging, speech, told }) => {
    const walk = all(told);
    const say = (step: Step): Said => sayStep(step, told, speech);
    const first = (fits: (step: Step) => boolean): Step => {
      const step = walk.find(fits);
      if (step === undefined) throw new Error('no such step');
      return step;
    };
    const saidAt = (kind: Step['kind']): string => both(say(first((step) => step.kind === kind)));
    const treble = TREBLE[speech.dialect];

    test('the starting chains: what the first will hold, and what the others count as', () => {
      const said = saidAt('start-chains');
      const made = Number(/^Chain (\d+)\./.exec(said)?.[1]);
      expect(said).toMatch(/first will hold/);
      expect(said).toMatch(
        counts === 0
          ? new RegExp(`other ${made - 1} count as none`)
          : new RegExp(`other ${made - 1} count as 1`),
      );
      // The first treble goes in that very chain.
      const into = both(say(first(({ target }) => target.loop === 'first-chain')));
      expect(into).toMatch(new RegExp(`in the ${made}th chain from the hook`));
      expect(into).toMatch(/the first chain you made/);
    });

    test('every other treble: in the base chain of the last one, at its foot, never the post', () => {
      const later = walk.filter((step) => step.kind === 'foundation-treble').slice(1);
      expect(later.length).toBeGreaterThan(30);
      for (const step of later) {
        const said = both(say(step));
        const isPastCorner = walk[step.index - 1]?.kind === 'corner-chain';
        if (isPastCorner) {
          expect(said).toMatch(/last base chain, not the post/);
          expect(said).toMatch(new RegExp(`base of the last ${treble}\\b`));
        } else expect(said).toMatch(/chain at the last one's foot/);
        if (!step.marker && !isPastCorner)
          expect(said).toMatch(new RegExp(`base chain of the last ${treble}\\b`));
      }
    });

    test('between the last treble and the question: cut, draw through the loop, tape, all to one side', () => {
      const asked = walk.findIndex(({ kind }) => kind === 'check-twist');
      const last = walk.findLastIndex(({ kind }) => kind === 'foundation-treble');
      const between = walk
        .slice(last + 1, asked)
        .map((step) => both(say(step)))
        .join(' ');
      expect(between).toMatch(/Cut the yarn a hand's length from the hook; draw it through/);
      expect(between).toMatch(/Tape both ends .*(?:trebles|double crochets) to one side/);
    });

    test('a twisted ring is an answer, and how to untwist it is said', () => {
      const { ask, answers } = say(first(({ kind }) => kind === 'check-twist'));
      expect(ask).toMatch(/\?$/);
      expect(answers?.no).toMatch(/twisted/);
      expect(answers?.how).toMatch(/[Tt]urn that end/);
      expect(answers?.how).toMatch(/look again/);
      expect(sayHeldBack()).toMatch(/slider/);
    });

    test('the tops are closed under one stitch and down into the last V; whether that makes a stitch', () => {
      const said = saidAt('close-tops');
      const [own, under] =
        counts === 1 ? ['top starting chain', `first ${treble}`] : ['first stitch', 'second stitch'];
      expect(said).toContain(`under both loops of the ${foundation === 1 ? own : under}.`);
      expect(said).toMatch(/^Thread the cut end/);
      expect(said).toMatch(/down into the middle of the last V/);
      const side = told.plan.foundation.sides[0];
      expect(said).toMatch(foundation === 1 ? new RegExp(`makes the ${side}(?:st|nd|rd|th) stitch`) : /none/);
    });

    test('the edging: which yarn, in which stitch, and whether that stitch is worked into', () => {
      expect(saidAt('right-side')).toMatch(/colour of the front's last round, right side/);
      const attach = saidAt('attach');
      const side = told.plan.foundation.sides[0] ?? 0;
      // The start marker hangs in the first stitch worked: all the last part, closing too, lies before it.
      expect(attach).toContain(
        `stitch ${side - told.plan.foundation.lead + (counts === 1 ? 0 : 1)} of side 1`,
      );
      expect(attach).toMatch(/under your start marker/);
      expect(saidAt('attach-chain')).toMatch(edging === 1 ? /next place.*covers this/ : /this same place/);
      const begun = both(say(first(({ kind }) => kind === 'double-crochet')));
      expect(begun).toMatch(edging === 1 ? /Leave the attach place free/ : /in the attach place/);
      // "It" would be the place that is to stay free.
      expect(begun).toMatch(/marker in this stitch/);
      expect(saidAt('close-round')).toContain(
        `under both loops of the ${edging === 1 ? 'first' : 'second'} stitch.`,
      );
    });

    test('the strip on the cloth: which face, which edge where; pins out before it is turned', () => {
      const lay = saidAt('lay-strip');
      expect(lay).toMatch(/face down on the cloth's right side/);
      expect(lay).toMatch(/Base chains on the raw edge, edging towards the middle/);
      const kinds = walk.map(({ kind }) => kind);
      expect(kinds.slice(kinds.indexOf('sew-out'), kinds.indexOf('wrong-sides'))).toEqual([
        'sew-out',
        'sew-back',
        'sew-fast',
        'pins-out',
        'turn-strip',
      ]);
      expect(saidAt('sew-back')).toMatch(/back the other way.*gaps/);
      expect(saidAt('sew-fast')).toMatch(new RegExp(`end through the ${treble}s, and make it fast.*strain`));
      expect(saidAt('sew-out')).toMatch(/strip and cloth/);
      // They are counted when all are in, and again when all are out.
      expect(say(first(({ kind }) => kind === 'cloth-pins')).caution).toMatch(/Count the pins and write/);
      expect(saidAt('pins-out')).toMatch(/count them.*number you wrote down/);
    });

    test('the join: which corner is counted from, the chain met, the loop, the closing, a hole found', () => {
      expect(saidAt('join-marker')).toMatch(/chain is 1: count from corner 4 into front side 1.*On the back/);
      const corner = walk.filter((step) => step.kind === 'slip-stitch' && step.corner === 0);
      expect(
        corner.map((step) => / the (\w+) chain you meet on each piece/.exec(say(step).act)?.[1]),
      ).toEqual(['first', 'second', 'third']);
      expect(saidAt('long-loop')).toMatch(/about a hand long/);
      expect(saidAt('look-for-holes')).toMatch(
        speech.dialect === 'uk' ? /hole, unravel to it/ : /hole, rip back to it/,
      );
      expect(saidAt('join-close')).toMatch(
        /^Thread the end: under the second slip stitch, .*into the last\./,
      );
    });

    test('the button speaks of a stitch only before one', () => {
      const stitches = new Set<Step['kind']>([
        'count-stitch',
        'count-corner',
        'foundation-treble',
        'corner-chain',
        'double-crochet',
        'slip-stitch',
        'last-hole',
      ]);
      for (const step of walk.slice(0, -1)) {
        const next = told.steps.at(step.index + 1);
        expect(sayNext(step, told), next.kind).toBe(stitches.has(next.kind) ? 'Next stitch' : 'Next');
      }
    });

    test('what is in the rest of side 1 says how far it is to the closing', () => {
      const parts = walk.filter(
        ({ kind, side, node, of }) =>
          side === 0 && node > of && (kind === 'foundation-treble' || kind === 'double-crochet'),
      );
      expect(parts.length).toBeGreaterThan(6);
      for (const step of parts.filter(({ of, place }) => place < of - 1))
        expect(say(step).where).toMatch(/its rest.* \d+ to the closing$/);
    });

    test('each caution stands once a stage', () => {
      const seen = walk.flatMap((step) => {
        const { caution } = say(step);
        return caution === undefined ? [] : [`${step.stage}: ${caution}`];
      });
      expect(new Set(seen).size).toBe(seen.length);
    });

    test('a marker to be put in is said where it hangs', () => {
      const hung = walk.filter(({ marker, stage }) => marker && (stage === 'front' || stage === 'edging'));
      expect(hung.length).toBeGreaterThan(5);
      for (const step of hung.filter(({ place }) => place > 0))
        expect(both(say(step))).toMatch(/marker in this/);
    });

    test('the recipe says it too: chains, markers, twist, parts, corner stitches held, pad, corner, why 2 chains', () => {
      const recipe = sayRecipe(told, speech);
      expect(recipe.begin.join(' ')).toMatch(/Chain \d+\. The first will hold.*marker.*every 10/);
      expect(recipe.twist).toMatch(/tape both ends down.*not twisted/);
      expect(recipe.parts).toMatch(/are one side, side 1/);
      expect(recipe.why).toMatch(/corners have 3 ch.*2 ch are enough/);
      expect(recipe.edgings[0]?.lines.join(' ')).toMatch(
        /Each number above takes in 1 (?:dc|sc) in the corner before it and 1 (?:dc|sc) in the corner after it/,
      );
      expect(recipe.join.join(' ')).toMatch(
        /in from corner 4: its nearest chain is 1.*last side open.*pin it/,
      );
    });
  },
);
