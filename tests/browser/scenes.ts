/**
 * The scenes that `npm run pictures` photographs. Add an entry for every state a person should look at.
 * A picture is named `<scene>-<device>-<theme>.png`.
 */
import type { Page } from 'playwright-core';
import type { AppEvent } from '../../src/state/snapshot.ts';
import type { Device, OpenOptions } from './app.ts';

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

export const scenes: PictureScene[] = [
  { name: 'first-visit' },
  { name: 'first-visit-whole', whole: true, devices: ['phone'] },
];
