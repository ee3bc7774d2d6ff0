/** The signs on the buttons of the head, drawn on a square of 24 with one pen. The others come later: `more-icons.ts`. */
import { html, type TemplateResult } from 'lit-html';

const PATHS = {
  sun: 'M12 7.5a4.5 4.5 0 1 0 0 9 4.5 4.5 0 1 0 0-9M12 2.5v2M12 19.5v2M2.5 12h2M19.5 12h2M5.3 5.3l1.4 1.4M17.3 17.3l1.4 1.4M18.7 5.3l-1.4 1.4M6.7 17.3l-1.4 1.4',
  moon: 'M19.5 14.2A8 8 0 0 1 9.8 4.5a8 8 0 1 0 9.7 9.7Z',
  undo: 'M8.5 5 4 9.5 8.5 14M4.5 9.5h9a5.5 5.5 0 0 1 0 11H10',
  redo: 'M15.5 5 20 9.5 15.5 14M19.5 9.5h-9a5.5 5.5 0 0 0 0 11H14',
  more: 'M4 7h9M19 7h1M4 17h3M13 17h7M16 4.5a2.5 2.5 0 1 0 0 5 2.5 2.5 0 1 0 0-5M10 14.5a2.5 2.5 0 1 0 0 5 2.5 2.5 0 1 0 0-5',
} as const;

export const icon = (name: keyof typeof PATHS): TemplateResult => drawIcon(PATHS[name]);

export const drawIcon = (path: string): TemplateResult =>
  html`<svg class="icon" viewBox="0 0 24 24" aria-hidden="true" focusable="false"><path d=${path}/></svg>`;
