/**
 * The scenes that `npm run pictures` photographs. Add an entry for every state a person should look at.
 * A picture is named `<scene>-<device>-<theme>.png`.
 */
import type { Page } from 'playwright-core';
import type { AppEvent } from '../../src/state/snapshot.ts';
import type { Device, OpenOptions } from './app.ts';
import { clothScenes } from './scenes-cloth.ts';
import { panelScenes } from './scenes-panels.ts';
import { photoScenes } from './scenes-photo.ts';
import { takeAlongScenes } from './scenes-take-along.ts';
import { walkScenes } from './scenes-walk.ts';

export type PictureScene = {
  /** Part of the file's name: lower case and hyphens. */
  name: string;
  /** How the page is opened, beyond device and theme: storage, hash, query, reduced motion … */
  open?: Omit<OpenOptions, 'viewport' | 'dark'>;
  /** Sent in this order once the app stands. */
  events?: AppEvent[];
  /** What a person does after that: press, type, scroll, open a dialog. */
  steps?: (page: Page) => Promise<unknown>;
  /** Default: all three. */
  devices?: Device[];
  /** Default: light and dark. */
  themes?: ('light' | 'dark')[];
  /** The whole length of the page instead of one screen. */
  whole?: boolean;
  /** As it is printed. */
  print?: boolean;
};

const typed = (texts: Record<string, string>): AppEvent[] =>
  Object.entries(texts).map(([field, text]) => ({ type: 'TYPE', field, text }));

const sides = (counts: number[]): AppEvent[] => [
  { type: 'CHANGE', project: { sideCount: counts.length } },
  ...typed(Object.fromEntries(counts.map((count, i) => [`side.${i}`, `${count}`]))),
];

/** Walks to a place past both questions. */
const walkTo = (place: number): AppEvent[] => [
  { type: 'SHOW', tab: 'walk' },
  { type: 'JUMP', to: 1_000_000 },
  { type: 'ANSWER', asks: 'twist' },
  { type: 'JUMP', to: 1_000_000 },
  { type: 'ANSWER', asks: 'pad' },
  { type: 'JUMP', to: place },
];

/** Ten panels of our own, each with something to be seen at a glance. */
const panels: PictureScene[] = [
  { name: 'meeting-rectangle', events: sides([64, 40, 64, 40]) },
  { name: 'one-short', events: typed({ 'worked.edging.0.2': '61' }) },
  { name: 'one-long', events: typed({ 'worked.edging.0.1': '39' }) },
  {
    name: 'corner-two-late',
    events: [
      { type: 'SETTLE', settings: { manner: 'stitch-by-stitch' } },
      {
        type: 'CHANGE',
        project: { mishaps: [{ kind: 'corner-moved', corner: 1, count: 2, then: 'from-total' }] },
      },
    ],
  },
  {
    name: 'start-off-by-one',
    events: [{ type: 'CHANGE', project: { mishaps: [{ kind: 'closing-forgotten' }] } }],
  },
  {
    name: 'unequal-in-the-wrong-order',
    events: [
      ...sides([52, 44, 38, 30]),
      { type: 'CHANGE', project: { mishaps: [{ kind: 'order-not-mirrored' }] } },
    ],
  },
  { name: 'hexagon', events: sides([28, 28, 28, 28, 28, 28]) },
  { name: 'round', events: [{ type: 'CHANGE', project: { sideCount: 0 } }, ...typed({ 'side.0': '132' })] },
  { name: 'blanket', events: sides([600, 600, 600, 600]) },
  {
    name: 'wide-three-long',
    events: [...sides([600, 600, 600, 600]), ...typed({ 'worked.edging.0.2': '601' })],
  },
  {
    name: 'join-two-late',
    events: [
      {
        type: 'CHANGE',
        project: { mishaps: [{ kind: 'join-offset', round: 'join', count: 2 }] },
      },
    ],
  },
  {
    name: 'left-handed-dark',
    events: [{ type: 'SETTLE', settings: { hand: 'left', theme: 'dark' } }, ...walkTo(560)],
    themes: ['dark'],
  },
];

export const scenes: PictureScene[] = [
  { name: 'first-visit' },
  { name: 'first-visit-whole', whole: true, devices: ['phone'] },
  ...panels,
  {
    name: 'diagram',
    events: [{ type: 'SETTLE', settings: { arrangement: 'diagram' } }, ...sides([52, 44, 38, 30])],
  },
  {
    name: 'apart',
    events: [{ type: 'SETTLE', settings: { arrangement: 'apart' } }, ...sides([52, 44, 38, 30])],
  },
  { name: 'walking-the-foundation', events: walkTo(300) },
  { name: 'walking-the-edging', events: walkTo(560) },
  { name: 'walking-the-join', events: walkTo(700) },
  {
    name: 'question',
    events: [
      { type: 'SHOW', tab: 'walk' },
      { type: 'JUMP', to: 1_000_000 },
    ],
  },
  {
    name: 'problems',
    events: [...typed({ 'side.0': '', 'side.1': '12.5', 'side.2': 'many' }), { type: 'CHECK' }],
  },
  {
    name: 'wrong',
    events: [...typed({ 'worked.edging.0.2': '61' }), { type: 'SHOW', tab: 'wrong' }],
    whole: true,
  },
  ...clothScenes,
  ...walkScenes,
  ...panelScenes,
  ...photoScenes,
  ...takeAlongScenes,
];
