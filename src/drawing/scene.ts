/**
 * From a snapshot to the scene. What a step does not change is handed on as it is: a part keeps its arrays, and
 * only `made` of a part or two, the frame and the words at the edge of the close-up are new.
 */
import type { Step } from '../../core/index.ts';
import type { Pointed, Settings } from '../state/snapshot.ts';
import {
  type Label,
  type Part,
  type Scene,
  type SceneView,
  type Sign,
  type Spot,
  Tone,
} from '../table/draw-list.ts';
import { buildClose, type CloseBuilt, sameWindow, type Window, windowFor, xOf } from './close/close.ts';
import { closeBounds, closeWords, HALF_WIDTH, movingWords } from './close/close-words.ts';
import { type Focus, focusOf, pointedOn } from './focus.ts';
import { sizeOf } from './parts.ts';
import { EVERYTHING, madeOf, type Progress, progressAt, type Source } from './progress.ts';
import { type Drawn, type Ring, ringFor } from './ring.ts';
import { slotAt } from './slots.ts';
import { buildApart } from './whole/apart.ts';
import { buildDiagram } from './whole/diagram.ts';
import { slotOfFinding } from './whole/finding-signs.ts';
import { buildWhole, type Fixture } from './whole/whole.ts';

/** What the drawing is a function of; a snapshot is one. */
export type SceneInput = {
  making: Drawn;
  /** UK terms where no dialect is given. */
  settings: Pick<Settings, 'hand' | 'arrangement'> & Partial<Pick<Settings, 'dialect'>>;
  step: Step;
  pointed: Pointed | null;
  /** Shows all as made and joined, wherever the walk stands. */
  preview?: boolean;
  /** The close-up is shown beside the whole. Default true. */
  hasClose?: boolean;
  /** Slot that a hand moved the close-up to; where the finding in hand or the work is, if absent. */
  look?: number;
  /** Which of the pairing's findings is in hand; told of in the preview only. */
  finding?: number;
};

type Close = CloseBuilt & { labels: Label[]; signs: Sign[] };

/** What a scene was made from, kept beside it. */
type Memory = {
  drawn: Drawn;
  hand: Settings['hand'];
  arrangement: Settings['arrangement'];
  dialect: Settings['dialect'];
  ring: Ring;
  fixture: Fixture;
  close: Close;
  whole: Part[];
  closeParts: Part[];
};

const builders: Record<Settings['arrangement'], typeof buildWhole> = {
  together: buildWhole,
  apart: buildApart,
  diagram: buildDiagram,
};

const memories = new WeakMap<Scene, Memory>();

/** The scene of a snapshot. With the scene before it, everything unchanged is the same object. */
export function buildScene(input: SceneInput, previous?: Scene): Scene {
  const before = previous && memories.get(previous);
  const { making, settings, step, pointed, hasClose = true } = input;
  const { hand, arrangement, dialect = 'uk' } = settings;
  const ring = ringFor(making);
  const sameRing = before?.ring === ring && before.drawn.plan === making.plan && before.hand === hand;
  const held = input.preview ? making.pairing.findings[input.finding ?? 0] : undefined;
  const lookedAt = held && slotOfFinding(making, ring, held);
  // In the preview nothing is being worked: the close-up shows what is in hand, or where the join begins.
  const focus: Focus = input.preview
    ? { slot: lookedAt ?? ring.slots.shift, working: -1, placed: false }
    : focusOf(ring, step);
  const progress = input.preview ? EVERYTHING : progressAt(step);

  const fixture =
    sameRing && before.arrangement === arrangement && before.dialect === dialect
      ? before.fixture
      : builders[arrangement](making, ring, hand, dialect);
  const look = input.look === undefined ? focus.slot : onRing(ring, input.look);
  const window = windowFor(ring, look, hand, focus.working);
  const close =
    sameRing && sameWindow(before.close.window, window)
      ? before.close
      : { ...buildClose(making, ring, window), ...closeWords(making, ring, window) };

  const whole = withMade(fixture.parts, fixture.sources, progress, before?.whole);
  const closeParts = withMade(close.parts, close.sources, progress, before?.closeParts);
  const moment = { step, focus, look, pointed };
  const scene: Scene = {
    views: [
      wholeView(ring, { fixture, parts: whole, hasClose, findings: shownFindings(input) }, moment),
      closeView(ring, close, closeParts, moment),
    ],
  };
  memories.set(scene, { drawn: making, hand, arrangement, dialect, ring, fixture, close, whole, closeParts });
  return scene;
}

const onRing = (ring: Ring, slot: number): number => {
  const { count } = ring.slots;
  return ((slot % count) + count) % count;
};

/** The slot at an x of the close-up, as it is laid out in this scene; null for a scene of another's making. */
export function slotUnder(scene: Scene, x: number): number | null {
  const window = memories.get(scene)?.close.window;
  return window ? window.origin + x / window.way : null;
}

/** Parts with what is made by now; a part that was there before in the same shape stays the same object or keeps its arrays. */
function withMade(
  parts: readonly Part[],
  sources: ReadonlyMap<string, Source>,
  progress: Progress,
  before: readonly Part[] | undefined,
): Part[] {
  const known = new Map((before ?? []).map((part) => [part.key, part]));
  return parts.map((part) => {
    const source = sources.get(part.key);
    const made = source ? madeOf(source, sizeOf(part), progress) : sizeOf(part);
    const old = known.get(part.key);
    const shape = old && old.revision === part.revision ? old : part;
    return shape.made === made ? shape : { ...shape, made };
  });
}

/** The finding in hand; none is on the walk, where all are shown alike. */
const shownFindings = ({ preview, finding }: SceneInput): number | undefined =>
  preview ? (finding ?? 0) : undefined;

/** What both views show that a step changes. */
type Moment = {
  step: Step;
  focus: Focus;
  /** Slot that the close-up looks at. */
  look: number;
  pointed: Pointed | null;
};

type Whole = { fixture: Fixture; parts: Part[]; hasClose: boolean; findings: number | undefined };

function wholeView(ring: Ring, whole: Whole, { focus, look, pointed }: Moment): SceneView {
  const { fixture, parts, hasClose, findings } = whole;
  // Bands of what is off lie beneath the arrows that tell the way.
  const signs = [...fixture.findings(findings), ...fixture.signs];
  if (hasClose) signs.push(...fixture.window(look, HALF_WIDTH));
  if (focus.placed) signs.push(...fixture.frame(focus.slot, focus.working));
  const at = pointed && pointedOn(ring, pointed);
  if (at)
    signs.push(
      ...fixture.frame(at.slot, at.round).map((sign) => ({ ...sign, key: 'pointed', tone: Tone.muted })),
    );
  return { id: 'whole', bounds: fixture.bounds, parts, labels: fixture.labels, signs };
}

function closeView(ring: Ring, close: Close, parts: Part[], moment: Moment): SceneView {
  const { look, pointed } = moment;
  const { window } = close;
  const gaps = ring.slots.runs.some(({ kind }) => kind.endsWith('alone'));
  const moving = movingWords(ring, close, moment);
  const bounds = closeBounds(window, look, gaps);
  return {
    id: 'close',
    bounds,
    centre: { x: xOf(window, look), y: (bounds.y0 + bounds.y1) / 2 },
    parts,
    labels: [...close.labels, ...moving.labels],
    signs: [...close.signs, ...moving.signs, ...pointedSigns(ring, window, pointed)],
  };
}

function pointedSigns(ring: Ring, window: Window, pointed: Pointed | null): Sign[] {
  const at = pointed && pointedOn(ring, pointed);
  if (!at) return [];
  const y = at.round < 0 ? 0 : window.rows.find(({ round }) => round === at.round)?.y;
  return y === undefined
    ? []
    : [{ kind: 'ring', key: 'pointed', x: xOf(window, at.slot), y, px: 18, tone: Tone.ink }];
}

/** The position a spot of this scene stands for; null where there is none (an unknown part, an index outside). */
export function spotToPosition(scene: Scene, spot: Spot): Pointed | null {
  const memory = memories.get(scene);
  if (!memory) return null;
  const { sources } = spot.view === 'whole' ? memory.fixture : memory.close;
  const part = (spot.view === 'whole' ? memory.whole : memory.closeParts).find(
    ({ key }) => key === spot.part,
  );
  const source = sources.get(spot.part);
  if (!source || !part || !(spot.index >= 0 && spot.index < sizeOf(part))) return null;
  const { ring } = memory;
  switch (source.of) {
    case 'front':
      return { round: 'front', edging: 0, node: source.first + spot.index };
    case 'foundation':
      return { round: 'foundation', edging: 0, node: source.first + spot.index };
    case 'edging':
      return { round: 'edging', edging: source.edging, node: source.first + spot.index };
    case 'seam': {
      let left = spot.index;
      const run = source.slots.find(({ count }) => {
        if (left < count) return true;
        left -= count;
        return false;
      });
      return run ? { round: 'front', edging: 0, node: slotAt(ring.slots, run.slot + left).front } : null;
    }
    case 'gap': {
      const { front, back } = slotAt(ring.slots, source.slots[spot.index]!);
      if (front >= 0) return { round: 'front', edging: 0, node: front };
      return back < 0 ? null : { round: 'edging', edging: ring.rounds.length - 2, node: back };
    }
  }
}

/** Where a position is drawn, on the whole panel or in the close-up; null where it is not drawn just now. */
export function positionToSpot(scene: Scene, pointed: Pointed, view: Spot['view'] = 'whole'): Spot | null {
  const memory = memories.get(scene);
  if (!memory) return null;
  const { sources } = view === 'whole' ? memory.fixture : memory.close;
  for (const part of view === 'whole' ? memory.whole : memory.closeParts) {
    const source = sources.get(part.key);
    if (!source || source.of !== pointed.round) continue;
    if (source.of === 'edging' && source.edging !== pointed.edging) continue;
    const index = pointed.node - source.first;
    if (index >= 0 && index < sizeOf(part)) return { view, part: part.key, index };
  }
  return null;
}
