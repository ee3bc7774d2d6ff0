/** The signs on buttons that the first look at the page does not show. */
import type { TemplateResult } from 'lit-html';
import { drawIcon } from './icons.ts';

const PATHS = {
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

export const icon = (name: IconName): TemplateResult => drawIcon(PATHS[name]);
