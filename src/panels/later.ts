/**
 * The parts that the first look at the page does not need. Fetched right after it, all at once, so that the
 * first number can be typed sooner.
 */
import type { TemplateResult } from 'lit-html';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { openAids } from './aids.ts';
import { keysDialog } from './keys-dialog.ts';
import { mishapsFold } from './mishaps/fold.ts';
import { moreChoices } from './more-choices.ts';
import type { Notices } from './notices/notices.ts';
import { noticesStrip } from './notices/strip.ts';
import { recipePanel } from './recipe-panel.ts';
import { settingsDialog } from './settings-dialog.ts';
import type { TableControls } from './table-controls.ts';
import { twinGrid } from './twin-grid.ts';
import { walkPanel } from './walk-panel.ts';
import { workedPanel } from './worked-panel.ts';
import { wrongTab } from './wrong/tab.ts';

export { listenToKeys } from './keys.ts';

type Panel = (snapshot: Snapshot, send: Send) => TemplateResult;

export type Later = {
  recipePanel: (snapshot: Snapshot) => TemplateResult;
  moreChoices: Panel;
  mishaps: Panel;
  notices: (snapshot: Snapshot, send: Send, notices: Notices) => TemplateResult;
  settingsDialog: (snapshot: Snapshot, send: Send, controls: () => TableControls | null) => TemplateResult;
  twinGrid: Panel;
  walkPanel: Panel;
  workedPanel: Panel;
  wrong: Panel;
  keysDialog: () => TemplateResult;
  /** To be told every snapshot. */
  follow(now: Snapshot): void;
  stop(): void;
};

/** `onChange` asks for a new rendering where the snapshot is the same. */
export function openLater(first: Snapshot, onChange: () => void): Later {
  const aids = openAids(first, onChange);
  return {
    recipePanel,
    moreChoices,
    mishaps: mishapsFold(onChange),
    notices: noticesStrip,
    settingsDialog,
    twinGrid,
    workedPanel,
    wrong: wrongTab(onChange),
    keysDialog,
    walkPanel: (snapshot, send) => walkPanel(snapshot, send, aids),
    follow: aids.follow,
    stop: aids.stop,
  };
}
