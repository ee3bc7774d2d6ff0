/** A clip for a lesson: a stretch of the walk is chosen, and becomes a video, or pictures where there can be none. */
import './clip.css';
import { html, nothing, type TemplateResult } from 'lit-html';
import { missingPart } from '../../controls/missing-part.ts';
import type { Snapshot } from '../../state/snapshot.ts';
import { sayWhere } from '../../words/walk/where.ts';
import type { Place } from '../place.ts';
import { fileNameOf, saveBlob } from '../save.ts';
import type { Clip, DrawClip, Wanted } from './frames.ts';

/** Longer than any lesson; beyond it a device may run out of memory. */
export const mostSteps = 900;
const paces = [0.5, 1, 2, 4] as const;

type Stretch = { from: number; to: number; says: string };

/** Sides and corners of the walk, in order, with the steps that they are. */
export function stretchesOf({ making }: Snapshot): Stretch[] {
  const { steps } = making;
  return steps.stretches.map(({ from, side, corner }, i) => ({
    from,
    to: (steps.stretches[i + 1]?.from ?? steps.length) - 1,
    says: sayWhere(steps.at(from), making)
      .split(' · ')
      .slice(0, side >= 0 || corner >= 0 ? 2 : 1)
      .join(' · '),
  }));
}

type State = {
  /** Indices of stretches; null: the one that the walk stands in. */
  from: number | null;
  to: number | null;
  seconds: number;
  isMissing: boolean;
  running: { stopping: AbortController; done: number; all: number } | null;
  said: string;
};

export function openClip(
  onChange: () => void,
  fetchDrawing: () => Promise<DrawClip>,
): (place: Place) => TemplateResult {
  let state: State = { from: null, to: null, seconds: 1, isMissing: false, running: null, said: '' };
  const change = (part: Partial<State>): void => {
    state = { ...state, ...part };
    onChange();
  };
  const make = async (place: Place, { from, to }: { from: number; to: number }): Promise<void> => {
    const { snapshot, say, speaker } = place;
    const stopping = new AbortController();
    const all = to - from + 1;
    const { seconds } = state;
    change({ running: { stopping, done: 0, all }, said: '' });
    const onStep = (done: number): void => change({ running: { stopping, done, all } });
    let said: string = say.clipStopped;
    try {
      const makers = await fetchMakers(fetchDrawing);
      if (makers === null) return change({ isMissing: true, running: null });
      const frames = makers.draw(snapshot);
      const clip = await makers.made({ frames, from, to, seconds, onStep, stop: stopping.signal });
      if (clip) {
        const file = fileNameOf(snapshot.project.name, clip.ending);
        saveBlob(clip.data, file);
        said =
          clip.ending === 'zip'
            ? say.clipSavedStills({ file, pictures: all }, speaker)
            : say.clipSaved({ file, seconds: Math.round(all * seconds) }, speaker);
      }
    } catch {
      said = say.clipFailed;
    }
    change({ running: null, said });
  };
  return (place) => clipPart(place, state, { change, make });
}

type Makers = { draw: DrawClip; made(wanted: Wanted): Promise<Clip | null> };

/** Null where a part of it could not be fetched. */
async function fetchMakers(fetchDrawing: () => Promise<DrawClip>): Promise<Makers | null> {
  try {
    const [draw, { filmOf }, { stillsOf }] = await Promise.all([
      fetchDrawing(),
      import('./film.ts'),
      import('./stills.ts'),
    ]);
    /** Video where the browser makes one. */
    const made = async (wanted: Wanted): Promise<Clip | null> => {
      const film = await filmOf(wanted);
      return film || wanted.stop.aborted ? film : stillsOf(wanted);
    };
    return { draw, made };
  } catch {
    return null;
  }
}

type Acts = {
  change(part: Partial<State>): void;
  make(place: Place, steps: { from: number; to: number }): Promise<void>;
};

function clipPart(place: Place, state: State, { change, make }: Acts): TemplateResult {
  const { snapshot, say, speaker } = place;
  const stretches = stretchesOf(snapshot);
  const last = stretches.length - 1;
  const here = stretches.findLastIndex(({ from }) => from <= snapshot.place);
  const first = Math.min(state.from ?? Math.max(0, here), last);
  const end = Math.max(first, Math.min(state.to ?? first, last));
  const steps = { from: stretches[first]?.from ?? 0, to: stretches[end]?.to ?? 0 };
  const all = steps.to - steps.from + 1;
  const select = (label: string, chosen: number, take: (index: number) => void): TemplateResult =>
    html`<label class="take-field"><span>${label}</span>
      <select ?disabled=${state.running !== null} @change=${(event: Event) => take((event.target as HTMLSelectElement).selectedIndex)}>
        ${stretches.map(({ says }, i) => html`<option .selected=${i === chosen}>${says}</option>`)}
      </select></label>`;
  return html`<div class="take-part clip">
    <p>${say.clipAbout}</p>
    <div class="clip-choices">
      ${select(say.clipFrom, first, (from) => change({ from }))}
      ${select(say.clipTo, end, (to) => change(to < first ? { from: to, to } : { from: first, to }))}
      <label class="take-field"><span>${say.clipPace}</span>
        <select ?disabled=${state.running !== null} @change=${(event: Event) => change({ seconds: paces[(event.target as HTMLSelectElement).selectedIndex] ?? 1 })}>
          ${paces.map((one) => html`<option .selected=${one === state.seconds}>${say.clipSeconds({ seconds: one }, speaker)}</option>`)}
        </select></label>
    </div>
    <p>${all > mostSteps ? say.clipTooLong({ steps: all, most: mostSteps }, speaker) : say.clipLength({ steps: all, seconds: Math.round(all * state.seconds) }, speaker)}</p>
    ${state.isMissing ? missingPart() : state.running ? progress(place, state.running) : html`<button type="button" class="button" ?hidden=${all > mostSteps} @click=${() => void make(place, steps)}>${say.clipMake}</button>`}
    <p role="status" class="muted">${state.said}</p>
  </div>`;
}

const progress = (
  { say, speaker }: Place,
  { stopping, done, all }: NonNullable<State['running']>,
): TemplateResult =>
  html`<div class="clip-running">
    <progress aria-label=${say.clipProgress} max=${all} value=${done}></progress>
    <span>${done === 0 ? nothing : say.clipDone({ done, all }, speaker)}</span>
    <button type="button" class="button" @click=${() => stopping.abort()}>${say.clipStop}</button>
  </div>`;
