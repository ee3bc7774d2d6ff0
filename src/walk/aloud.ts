/**
 * Reading aloud: off until asked for, one short sentence a step, the newest step always wins.
 *
 * Browsers differ: a pause can lose the sentence, so each step is cancelled and begun anew; after a cancel
 * some need a moment; a voice may never begin, so a watch of 5 s sets things free again.
 */
import type { Step } from '../../core/index.ts';
import type { Dialect } from '../state/snapshot.ts';
import { sayStep } from '../words/walk/step.ts';
import type { Told } from '../words/walk/telling.ts';
import type { Speech } from '../words/words.ts';

export type Voice = { name: string; lang: string; localService: boolean };

export type Utterance = { text: string; voice: Voice | null; lang: string; started(): void; ended(): void };

export type AloudDevice = {
  voices(): readonly Voice[];
  speak(utterance: Utterance): void;
  cancel(): void;
  /** Calls when the list of voices is another; gives back how to stop. */
  onVoices(listener: () => void): () => void;
  after(ms: number, run: () => void): () => void;
};

export type AloudState = {
  on: boolean;
  /** `missing`: no voice on this device; `silent`: the voice did not begin. */
  trouble: 'none' | 'missing' | 'silent';
};

export type Aloud = {
  state(): AloudState;
  /** Call it straight from the press: the first sentence must be spoken within it. Empty, none is spoken yet. */
  turn(on: boolean, text: string): void;
  say(text: string): void;
  stop(): void;
};

const AFTER_CANCEL_MS = 125;
const WATCH_MS = 5000;

const LANG: Record<Dialect, string> = { uk: 'en-GB', us: 'en-US' };

/** Voices made for fun, by the names they have in print on several systems. */
const NOVELTY =
  /albert|bad news|bahh|bells|boing|bubbles|cellos|good news|jester|organ|superstar|trinoids|whisper|wobble|zarvox/i;

/** The voice for the terms: the same country, else any English; one on the device before one from afar. */
export function voiceFor(voices: readonly Voice[], dialect: Dialect): Voice | null {
  const lang = LANG[dialect];
  const tag = (voice: Voice): string => voice.lang.replace('_', '-');
  const rank = (voice: Voice): number => (tag(voice) === lang ? 2 : 0) + (voice.localService ? 1 : 0);
  const usable = voices.filter(
    (voice) => tag(voice).toLowerCase().startsWith('en') && !NOVELTY.test(voice.name),
  );
  return usable.reduce<Voice | null>(
    (best, voice) => (best === null || rank(voice) > rank(best) ? voice : best),
    null,
  );
}

/** `dialect` is asked for each time, as it can change. */
export function createAloud(
  onChange: () => void,
  dialect: () => Dialect,
  device: AloudDevice = browserAloud(),
): Aloud {
  let state: AloudState = { on: false, trouble: 'none' };
  let speaking: Utterance | null = null;
  let callOff: (() => void)[] = [];

  const become = (next: Partial<AloudState>): void => {
    const changed = { ...state, ...next };
    if (changed.on === state.on && changed.trouble === state.trouble) return;
    state = changed;
    onChange();
  };
  const hush = (): boolean => {
    for (const off of callOff) off();
    callOff = [];
    const was = speaking !== null;
    speaking = null;
    if (was) device.cancel();
    return was;
  };
  const begin = (text: string): void => {
    if (device.voices().length === 0) {
      become({ trouble: 'missing' });
      return;
    }
    const quiet = device.after(WATCH_MS, () => {
      if (speaking !== utterance) return;
      hush();
      become({ trouble: 'silent' });
    });
    const utterance: Utterance = {
      text,
      voice: voiceFor(device.voices(), dialect()),
      lang: LANG[dialect()],
      started: () => {
        quiet();
        if (speaking === utterance) become({ trouble: 'none' });
      },
      ended: () => {
        quiet();
        if (speaking === utterance) speaking = null;
      },
    };
    callOff.push(quiet);
    speaking = utterance;
    device.speak(utterance);
  };
  const say = (text: string): void => {
    if (!state.on || text === '') return;
    if (hush()) callOff.push(device.after(AFTER_CANCEL_MS, () => begin(text)));
    else begin(text);
  };
  const stopWatching = device.onVoices(() => {
    if (state.trouble === 'missing' && device.voices().length > 0) become({ trouble: 'none' });
  });
  return {
    state: () => state,
    turn: (on, text) => {
      hush();
      become({ on, trouble: 'none' });
      if (on && text !== '') begin(text);
    },
    say,
    stop: () => {
      hush();
      stopWatching();
    },
  };
}

/** What the switch says beside it. */
export function sayAloudState({ on, trouble }: AloudState): string {
  if (trouble === 'missing') return 'This device has no voice to read with.';
  if (trouble === 'silent') return 'The voice did not begin. Press again to try once more.';
  return on ? 'Each step is read to you.' : 'Nothing is read aloud.';
}

/**
 * What is read for a step. While the same stitch is worked along the same side, only its number; the whole
 * sentence where something is new.
 */
export function textAloud(step: Step, before: Step | null, making: Told, speech: Speech): string {
  const said = sayStep(step, making, speech);
  const same =
    before !== null &&
    before.kind === step.kind &&
    before.stage === step.stage &&
    before.side === step.side &&
    before.corner === step.corner &&
    sayStep(before, making, speech).act === said.act;
  if (same && said.count !== '') return step.marker ? `${said.count}. Marker here.` : said.count;
  return [said.act, said.ask].filter((text) => text !== undefined).join(' ');
}

/** The browser's own voice. */
function browserAloud(): AloudDevice {
  const synth = 'speechSynthesis' in globalThis ? globalThis.speechSynthesis : null;
  return {
    voices: () => synth?.getVoices() ?? [],
    speak: ({ text, voice, lang, started, ended }) => {
      const utterance = new SpeechSynthesisUtterance(text);
      utterance.lang = lang;
      utterance.voice = synth?.getVoices().find(({ name }) => name === voice?.name) ?? null;
      utterance.onstart = started;
      utterance.onend = ended;
      utterance.onerror = ended;
      synth?.speak(utterance);
    },
    cancel: () => synth?.cancel(),
    onVoices: (listener) => {
      synth?.addEventListener?.('voiceschanged', listener);
      return () => synth?.removeEventListener?.('voiceschanged', listener);
    },
    after: (ms, run) => {
      const id = setTimeout(run, ms);
      return () => clearTimeout(id);
    },
  };
}
