/** The few signs on buttons, drawn on a square of 24 with one pen. */
import { html, type TemplateResult } from 'lit-html';

const PATHS = {
  sun: 'M12 7.5a4.5 4.5 0 1 0 0 9 4.5 4.5 0 1 0 0-9M12 2.5v2M12 19.5v2M2.5 12h2M19.5 12h2M5.3 5.3l1.4 1.4M17.3 17.3l1.4 1.4M18.7 5.3l-1.4 1.4M6.7 17.3l-1.4 1.4',
  moon: 'M19.5 14.2A8 8 0 0 1 9.8 4.5a8 8 0 1 0 9.7 9.7Z',
  undo: 'M8.5 5 4 9.5 8.5 14M4.5 9.5h9a5.5 5.5 0 0 1 0 11H10',
  redo: 'M15.5 5 20 9.5 15.5 14M19.5 9.5h-9a5.5 5.5 0 0 0 0 11H14',
  more: 'M4 7h9M19 7h1M4 17h3M13 17h7M16 4.5a2.5 2.5 0 1 0 0 5 2.5 2.5 0 1 0 0-5M10 14.5a2.5 2.5 0 1 0 0 5 2.5 2.5 0 1 0 0-5',
  closer: 'M12 5v14M5 12h14',
  farther: 'M5 12h14',
  whole: 'M4 9V4h5M20 9V4h-5M4 15v5h5M20 15v5h-5',
  up: 'M6 14.5 12 8.5l6 6',
  down: 'M6 9.5l6 6 6-6',
  left: 'M14.5 6l-6 6 6 6',
  right: 'M9.5 6l6 6-6 6',
  ways: 'M12 3.5v17M3.5 12h17M9.5 6 12 3.5 14.5 6M9.5 18l2.5 2.5 2.5-2.5M6 9.5 3.5 12 6 14.5M18 9.5l2.5 2.5-2.5 2.5',
  apart: 'M3 6.5h7.5v11H3ZM13.5 6.5H21v11h-7.5Z',
  together: 'M4 5h13v11H4ZM8 16v3.5h12.5v-11H17',
  yarn: 'M4.5 12c2-5 5.5-5 7.5 0s5.5 5 7.5 0M4.5 12c2 5 5.5 5 7.5 0s5.5-5 7.5 0',
  diagram: 'M4.5 7.5h15v12h-15ZM12 4.5v6',
  play: 'M7.5 5v14l11-7Z',
  stop: 'M6.5 6.5h11v11h-11Z',
  close: 'M6 6l12 12M18 6 6 18',
} as const;

export type IconName = keyof typeof PATHS;

export const icon = (name: IconName): TemplateResult =>
  html`<svg class="icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false"><path d=${PATHS[name]}/></svg>`;
