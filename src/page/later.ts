/**
 * The parts that the first look at the page does not need. Fetched right after it, all at once, so that the
 * first number can be typed sooner.
 */
import type { TemplateResult } from 'lit-html';
import { clothTab } from '../cloth/tab.ts';
import { moreChoices } from '../edge/more-choices.ts';
import { recipePanel } from '../edge/recipe.ts';
import { workedPanel } from '../edge/worked.ts';
import { paceOf } from '../making/pace.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { takeAlongTab } from '../take-along/tab.ts';
import { openAids } from '../walk/aids.ts';
import { stepPicture } from '../walk/hero.ts';
import { mishapsFold } from '../walk/mishaps/fold.ts';
import { walkPanel } from '../walk/panel.ts';
import { stepBar } from '../walk/step-bar.ts';
import { wrongTab } from '../wrong/tab.ts';
import { keysDialog } from './dialogs/keys-dialog.ts';
import { settingsDialog } from './dialogs/settings-dialog.ts';
import { findingsBar } from './drawing/findings-bar.ts';
import type { TableControls } from './drawing/table-controls.ts';
import { twinGrid } from './drawing/twin-grid.ts';
import type { Notices } from './notices/notices.ts';
import { noticesStrip } from './notices/strip.ts';
import { sayChange } from './say-change.ts';
import { screenSummary } from './screen-summary.ts';
import { verdictChip } from './verdict-chip.ts';

export { listenToKeys } from './keys.ts';

type Panel = (snapshot: Snapshot, send: Send) => TemplateResult;

export type Later = {
  recipePanel: Panel;
  moreChoices: Panel;
  cloth: Panel;
  mishaps: Panel;
  notices: (snapshot: Snapshot, send: Send, notices: Notices) => TemplateResult;
  settingsDialog: (snapshot: Snapshot, send: Send, controls: () => TableControls | null) => TemplateResult;
  takeAlong: Panel;
  twinGrid: Panel;
  walkPanel: Panel;
  stepBar: Panel;
  findingsBar: Panel;
  verdictChip: (snapshot: Snapshot) => TemplateResult;
  screenSummary: (snapshot: Snapshot) => string;
  sayChange: typeof sayChange;
  /** The picture of the step, or the stitch move by move. */
  stepPicture: (snapshot: Snapshot) => TemplateResult;
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
    cloth: clothTab(onChange, () => paceOf(aids.taps())),
    mishaps: mishapsFold(onChange),
    notices: noticesStrip,
    settingsDialog,
    takeAlong: takeAlongTab(onChange),
    twinGrid,
    workedPanel,
    wrong: wrongTab(onChange),
    keysDialog,
    walkPanel: (snapshot, send) => walkPanel(snapshot, send, aids),
    stepBar,
    findingsBar,
    verdictChip,
    screenSummary,
    sayChange,
    stepPicture: (snapshot) => stepPicture(snapshot, aids),
    follow: aids.follow,
    stop: aids.stop,
  };
}
