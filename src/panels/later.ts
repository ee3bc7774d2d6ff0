/**
 * The parts that the first look at the page does not need. Fetched right after it, all at once, so that the
 * first number can be typed sooner.
 */
import { keysDialog } from './keys-dialog.ts';
import { moreChoices } from './more-choices.ts';
import { settingsDialog } from './settings-dialog.ts';
import { twinGrid } from './twin-grid.ts';
import { walkPanel } from './walk-panel.ts';
import { workedPanel } from './worked-panel.ts';

export const later = { keysDialog, moreChoices, settingsDialog, twinGrid, walkPanel, workedPanel };

export type Later = typeof later;
