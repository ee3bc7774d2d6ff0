/** Puts the colours on the page: the theme chosen, or the device's own. */

import { standardSettings } from './state/project.ts';
import type { Snapshot } from './state/snapshot.ts';
import type { Store } from './state/store.ts';
import { applyTheme, THEMES, type ThemeName, type Yarns } from './theme/theme.ts';

export const darkWanted = matchMedia('(prefers-color-scheme: dark)');

/** The theme that a choice means just now. */
export const themeName = (choice: Snapshot['settings']['theme']): ThemeName =>
  choice === 'auto' ? (darkWanted.matches ? 'dark' : 'light') : choice;

/** The yarns as worn: where none was chosen, the theme's own. */
export function wornYarns(name: ThemeName, yarns: Yarns): Yarns {
  const worn = (of: keyof Yarns): string =>
    yarns[of] === standardSettings.yarns[of] ? THEMES[name].yarns[of] : yarns[of];
  return { front: worn('front'), edging: worn('edging'), foundation: worn('foundation') };
}

/** Puts the theme on the page, now and whenever the choice or the device's own changes. */
export function wearTheme(store: Store): void {
  let worn = '';
  const wear = (): void => {
    const { theme, yarns } = store.snapshot().settings;
    const name = themeName(theme);
    const wanted = JSON.stringify([name, yarns]);
    if (wanted === worn) return;
    worn = wanted;
    document.documentElement.dataset.theme = name;
    applyTheme(document.documentElement, THEMES[name], wornYarns(name, yarns));
  };
  wear();
  store.subscribe(wear);
  darkWanted.addEventListener('change', wear);
}
