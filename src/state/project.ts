/** What a person starts with. */
import type { Project, Settings } from './snapshot.ts';

/** A worked example of our own, already meeting: the first thing a visitor sees. */
export const example: Project = {
  name: 'Window-seat cushion',
  sideCount: 4,
  counted: 'one-corner',
  cornerMade: 'chain',
  cornersDiffer: false,
  edgingCount: 1,
  choices: {},
  texts: { 'side.0': '64', 'side.1': '40', 'side.2': '64', 'side.3': '40', corner: '2' },
  mishaps: [],
  adjustments: [],
};

export const standardSettings: Settings = {
  dialect: 'uk',
  hand: 'right',
  units: 'cm',
  theme: 'auto',
  manner: 'corner-to-corner',
  easing: 'end',
  arrangement: 'together',
  yarns: { front: '#23717a', edging: '#c1673a', foundation: '#b89a6a' },
  pace: 1200,
  readAloud: false,
  stayAwake: false,
};
