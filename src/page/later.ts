/**
 * The parts that the first look at the page does not need. Fetched right after it, all at once, so that the
 * first number can be typed sooner.
 */
import { html, type TemplateResult } from 'lit-html';
import { fetchedPart, type Part } from '../controls/fetched-part.ts';
import { fromSize } from '../edge/from-size.ts';
import { frontPhoto } from '../edge/front-photo.ts';
import { moreChoices } from '../edge/more-choices.ts';
import { recipePanel } from '../edge/recipe.ts';
import { openUneven } from '../edge/uneven.ts';
import { workedPanel } from '../edge/worked.ts';
import { paceOf } from '../making/pace.ts';
import { panelRow } from '../panels/panel-row.ts';
import type { Send, Snapshot, Tab } from '../state/snapshot.ts';
import { openAids } from '../walk/aids.ts';
import { stepPicture } from '../walk/hero.ts';
import { lessonsOffer } from '../walk/lessons-offer.ts';
import { mishapsFold } from '../walk/mishaps/fold.ts';
import { walkPanel } from '../walk/panel.ts';
import { stepBar } from '../walk/step-bar.ts';
import { keysDialog } from './dialogs/keys-dialog.ts';
import { settingsDialog } from './dialogs/settings-dialog.ts';
import { openFindingsBar } from './drawing/findings-bar.ts';
import type { TableControls } from './drawing/table-controls.ts';
import { twinGrid } from './drawing/twin-grid.ts';
import { viewButtons } from './drawing/view-buttons.ts';
import type { Notices } from './notices/notices.ts';
import { noticesStrip } from './notices/strip.ts';
import { places } from './places.ts';
import { sayChange } from './say-change.ts';
import { screenSummary } from './screen-summary.ts';
import { verdictChip } from './verdict-chip.ts';

export { listenToKeys } from './keys.ts';

export type Later = {
  panelRow: typeof panelRow;
  recipePanel: Part;
  moreChoices: Part;
  panels: Record<Exclude<Tab, 'edge'>, Part>;
  notices: (snapshot: Snapshot, send: Send, notices: Notices) => TemplateResult;
  settingsDialog: (snapshot: Snapshot, send: Send, controls: () => TableControls | null) => TemplateResult;
  twinGrid: Part;
  viewButtons: typeof viewButtons;
  stepBar: Part;
  findingsBar: Part;
  verdictChip: (snapshot: Snapshot) => TemplateResult;
  screenSummary: (snapshot: Snapshot) => string;
  sayChange: typeof sayChange;
  /** The picture of the step, or the stitch move by move. */
  stepPicture: (snapshot: Snapshot) => TemplateResult;
  workedPanel: Part;
  /** Below the front's counts: the photo, and what an uneven front asks. */
  below: Part;
  keysDialog: () => TemplateResult;
  /** To be told every snapshot. */
  follow(now: Snapshot): void;
  stop(): void;
};

/** `onChange` asks for a new rendering where the snapshot is the same. */
export function openLater(first: Snapshot, onChange: () => void, openLessons: () => void): Later {
  const aids = openAids(first, onChange);
  const pace = (): number | null => paceOf(aids.taps());
  const place = (tab: Tab, fetchPart: () => Promise<Part>): Part =>
    fetchedPart(fetchPart, onChange, places[tab].says);
  const mishaps = mishapsFold(onChange);
  const uneven = openUneven(onChange);
  let startsFromSize = false;
  const startFromSize = (send: Send): void => {
    startsFromSize = true;
    send({ type: 'SHOW', tab: 'cloth' });
  };
  /** Whether the place is to open there; once. */
  const takeStart = (): boolean => {
    const starts = startsFromSize;
    startsFromSize = false;
    return starts;
  };
  return {
    panelRow,
    recipePanel,
    moreChoices,
    panels: {
      cloth: place('cloth', async () =>
        (await import('../cloth/panel.ts')).openCloth(onChange, pace, takeStart),
      ),
      walk: (snapshot, send) =>
        html`${walkPanel(snapshot, send, aids)} ${lessonsOffer(openLessons)} ${mishaps(snapshot, send)}`,
      wrong: place('wrong', async () => (await import('../wrong/panel.ts')).openWrong(onChange)),
      'take-along': place('take-along', async () =>
        (await import('../take-along/panel.ts')).openTakeAlong(
          onChange,
          async () => (await import('../draw-for-print.ts')).drawForPrint,
          async () => (await import('../draw-clip.ts')).drawClip,
        ),
      ),
    },
    notices: noticesStrip,
    settingsDialog,
    twinGrid,
    viewButtons,
    workedPanel,
    below: (snapshot, send) =>
      html`${frontPhoto(snapshot, send)} ${uneven(snapshot, send)} ${fromSize(() => startFromSize(send))}`,
    keysDialog,
    stepBar,
    findingsBar: openFindingsBar(),
    verdictChip,
    screenSummary,
    sayChange,
    stepPicture: (snapshot) => stepPicture(snapshot, aids),
    follow: aids.follow,
    stop: aids.stop,
  };
}
