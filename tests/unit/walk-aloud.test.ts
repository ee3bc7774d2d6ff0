import { describe, expect, test } from 'vitest';
import { planBack, readEdge, type Step, steps } from '../../core/index.ts';
import {
  type AloudDevice,
  createAloud,
  sayAloudState,
  textAloud,
  type Utterance,
  type Voice,
  voiceFor,
} from '../../src/walk/aloud.ts';

const voice = (name: string, lang: string, localService = true): Voice => ({ name, lang, localService });

/** A stand-in for the browser's voice; time runs only when told. */
function device(voices: Voice[] = [voice('Anna', 'en-GB')]) {
  let now = 0;
  let timers: { at: number; run(): void }[] = [];
  let heard = (): void => {};
  const spoken: Utterance[] = [];
  let cancels = 0;
  const self: AloudDevice = {
    voices: () => voices,
    speak: (utterance) => void spoken.push(utterance),
    cancel: () => {
      cancels++;
    },
    onVoices: (listener) => {
      heard = listener;
      return () => {};
    },
    after: (ms, run) => {
      const timer = { at: now + ms, run };
      timers.push(timer);
      return () => {
        timers = timers.filter((one) => one !== timer);
      };
    },
  };
  return {
    self,
    texts: () => spoken.map(({ text }) => text),
    last: () => spoken.at(-1) as Utterance,
    cancels: () => cancels,
    pass: (ms: number) => {
      now += ms;
      const due = timers.filter(({ at }) => at <= now);
      timers = timers.filter(({ at }) => at > now);
      for (const { run } of due) run();
    },
    arrive: (voice: Voice) => {
      voices.push(voice);
      heard();
    },
  };
}

const uk = (): 'uk' => 'uk';

describe('reading aloud', () => {
  test('is off until turned on, and then speaks within the press', () => {
    const browser = device();
    const aloud = createAloud(() => {}, uk, browser.self);
    aloud.say('Chain 4.');
    expect(browser.texts()).toEqual([]);
    aloud.turn(true, 'Chain 4.');
    expect(browser.texts()).toEqual(['Chain 4.']);
  });

  test('the newest step wins: the last is cancelled and the new one begins a moment later', () => {
    const browser = device();
    const aloud = createAloud(() => {}, uk, browser.self);
    aloud.turn(true, '1');
    aloud.say('2');
    aloud.say('3');
    browser.pass(125);
    expect(browser.texts()).toEqual(['1', '3']);
    expect(browser.cancels()).toBe(1);
  });

  test('after a sentence has ended the next one begins at once', () => {
    const browser = device();
    const aloud = createAloud(() => {}, uk, browser.self);
    aloud.turn(true, '1');
    browser.last().started();
    browser.last().ended();
    aloud.say('2');
    expect([browser.texts(), browser.cancels()]).toEqual([['1', '2'], 0]);
  });

  test('a voice that never begins is given up after 5 s and told; the next press tries again', () => {
    const browser = device();
    const aloud = createAloud(() => {}, uk, browser.self);
    aloud.turn(true, '1');
    browser.pass(4999);
    expect(aloud.state().trouble).toBe('none');
    browser.pass(1);
    expect([aloud.state(), browser.cancels()]).toEqual([{ on: true, trouble: 'silent' }, 1]);
    aloud.say('2');
    expect(browser.texts()).toEqual(['1', '2']);
    browser.last().started();
    expect(aloud.state().trouble).toBe('none');
  });

  test('without a voice it says so, and recovers when one arrives', () => {
    const browser = device([]);
    const aloud = createAloud(() => {}, uk, browser.self);
    aloud.turn(true, '1');
    expect([aloud.state().trouble, browser.texts()]).toEqual(['missing', []]);
    expect(sayAloudState(aloud.state())).toBe('This device has no voice to read with.');
    browser.arrive(voice('Anna', 'en-GB'));
    expect(aloud.state().trouble).toBe('none');
    aloud.say('2');
    expect(browser.texts()).toEqual(['2']);
  });

  test('turned off it is quiet at once', () => {
    const browser = device();
    const aloud = createAloud(() => {}, uk, browser.self);
    aloud.turn(true, '1');
    aloud.say('2');
    aloud.turn(false, '');
    browser.pass(10_000);
    expect([browser.texts(), aloud.state()]).toEqual([['1'], { on: false, trouble: 'none' }]);
  });
});

test.each<[string, Voice[], 'uk' | 'us', string | null]>([
  ['the same country first', [voice('A', 'en-US'), voice('B', 'en-GB')], 'uk', 'B'],
  ['and for US terms', [voice('A', 'en-US'), voice('B', 'en-GB')], 'us', 'A'],
  ['one on the device before one from afar', [voice('A', 'en-GB', false), voice('B', 'en_GB')], 'uk', 'B'],
  ['any English before none', [voice('A', 'fr-FR'), voice('B', 'en-AU')], 'uk', 'B'],
  ['no voice made for fun', [voice('Bubbles', 'en-GB'), voice('B', 'en-US')], 'uk', 'B'],
  ['none', [voice('A', 'fr-FR')], 'uk', null],
])('%s', (_, voices, dialect, name) => {
  expect(voiceFor(voices, dialect)?.name ?? null).toBe(name);
});

describe('what is read', () => {
  const edge = readEdge({
    sides: [24, 24, 24, 24],
    corner: { made: 'chain', size: 2 },
    counted: 'stitches-only',
  });
  if (!edge.ok) throw new Error('edge');
  const plan = planBack(edge.value);
  if (!plan.ok) throw new Error('plan');
  const made = steps(plan.value);
  const making = { plan: plan.value, steps: made };
  const speech = { dialect: 'us', hand: 'right', units: 'cm' } as const;
  const all: Step[] = Array.from({ length: made.length }, (_, i) => made.at(i));
  const read = (fits: (step: Step) => boolean): string => {
    const step = all.find(fits) as Step;
    return textAloud(step, all[step.index - 1] ?? null, making, speech);
  };

  test('along a side only the number, with the marker where one goes', () => {
    expect(read((s) => s.stage === 'edging' && s.side === 1 && s.place === 4)).toBe('5');
    expect(read((s) => s.stage === 'edging' && s.side === 1 && s.place === 9)).toBe('10. Marker here.');
  });

  test('where something is new the whole sentence, and a question with it', () => {
    expect(read((s) => s.kind === 'foundation-treble' && s.side === 1)).toBe(
      '1 foundation double crochet in the last base chain, not the post.',
    );
    expect(read((s) => s.kind === 'check-twist')).toMatch(/\?$/);
  });

  test('everything read is short', () => {
    for (const step of all) {
      const text = textAloud(step, all[step.index - 1] ?? null, making, speech);
      expect(text.split(' ').length, text).toBeLessThanOrEqual(26);
      expect(text).not.toBe('');
    }
  });
});
