/**
 * What is to be worked otherwise than the recipe has it, told as the instruction it is. The counts are the step's own:
 * what the hand makes from here on.
 */
import type { Act, ActKind, Step } from '../../../core/index.ts';
import { many, ordinalWord } from '../numbers.ts';
import { armOf } from './arms.ts';
import { neighbour, type Sentences, type Telling } from './telling.ts';

/** `count`: of all acts of one kind that the step carries out, together. */
type Asked = (told: Told) => Sentences;
type Told = { telling: Telling; act: Act; count: number; base: Sentences };

const ASKED: Partial<Record<ActKind, Asked>> = {
  'stitch-missed': ({ telling, count, base }) => {
    const { step, t } = telling;
    if (step.stage === 'foundation') return { ...base, check: countTo(step) };
    const miss = `${capital(t('miss'))} the next ${count === 1 ? 'stitch' : `${count} stitches`}`;
    if (step.kind !== 'double-crochet') return { ...base, act: `${miss}. ${base.act}` };
    if (armOf(telling) !== null)
      return { ...base, act: `${miss}, then 1 ${t('double-crochet')} into the corner.` };
    return { act: `${miss}, then 1 ${t('double-crochet')}, back loop only.`, check: countTo(step) };
  },
  'stitch-doubled': ({ telling: { step, t }, count }) => ({
    act: `Work ${count + 1} in this ${placeWord(step)}. The first: 1 ${t(stitchOf(step))}.`,
    check: countTo(step),
  }),
  'corner-chains': ({ telling: { step }, count, base }) => {
    const made = step.kind === 'corner-stitch' ? many(count, 'stitch', 'stitches') : many(count, 'chain');
    return { ...base, check: `This corner gets ${made}.` };
  },
  'corner-moved': ({ telling: { step, t }, base }) =>
    step.stage === 'edging' && step.kind === 'double-crochet'
      ? {
          act: `The corner comes here: 1 ${t('double-crochet')} in the next stitch.`,
          check: 'The corner goes into this same stitch.',
        }
      : { ...base, check: 'The corner comes here.' },
  'two-with-one': ({ act: { of = 'back' } }) => ({
    act: `Take 2 of the ${of} with 1 of the ${of === 'back' ? 'front' : 'back'}.`,
    check: '1 slip stitch goes through the inner loops of all 3.',
  }),
};

/** The sentences of a step that carries out adjustments, or that goes on with one; null where it does neither. */
export function sayAdjusted(telling: Telling, base: Sentences): Sentences | null {
  const [act, ...others] = askedAt(telling.step, telling.making);
  if (!act) return sayNextOfSeveral(telling);
  const alike = [act, ...others].filter(({ kind }) => kind === act.kind);
  const count = alike.reduce((all, one) => all + (one.count ?? 1), 0);
  return ASKED[act.kind]?.({ telling, act, count, base }) ?? base;
}

const askedAt = ({ adjustments = [] }: Step, { acts = [] }: Telling['making']): Act[] =>
  adjustments.flatMap((index) => acts[index] ?? []);

/** The second and later of several stitches asked for in one place. */
function sayNextOfSeveral(telling: Telling): Sentences | null {
  const { step, making, t } = telling;
  if (step.kind !== 'double-crochet' && step.kind !== 'foundation-treble') return null;
  for (let back = 1; ; back++) {
    const before = neighbour(telling, -back);
    if (before?.kind !== step.kind || before.target.node !== step.target.node) return null;
    const [act] = askedAt(before, making);
    if (act?.kind === 'stitch-doubled')
      return {
        act: `The ${ordinalWord(back + 1)} of ${(act.count ?? 1) + 1} in the same ${placeWord(step)}: 1 ${t(stitchOf(step))}.`,
      };
    if (act) return null;
  }
}

const stitchOf = ({ stage }: Step): 'foundation-treble' | 'double-crochet' =>
  stage === 'foundation' ? 'foundation-treble' : 'double-crochet';

const placeWord = ({ stage }: Step): string => (stage === 'foundation' ? 'base chain' : 'stitch');

/** What the side comes to; of a side that is worked in two parts, this part. */
const countTo = ({ side, of }: Step): string =>
  side === 0 ? `This part comes to ${of}.` : `This side comes to ${of}.`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
