/** Puts the colours on the page: the theme chosen, or the device's own. */
import type { Snapshot } from './state/snapshot.ts';
import type { Store } from './state/store.ts';
import { applyTheme, THEMES, type ThemeName } from './theme/theme.ts';

export const darkWanted = matchMedia('(prefers-color-scheme: dark)');

/** The theme that a choice means just now. */
export const themeName = (choice: Snapshot['settings']['theme']): ThemeName =>
  choice === 'auto' ? (darkWanted.matches ? 'dark' : 'light') : choice;

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
    applyTheme(document.documentElement, THEMES[name], yarns);
  };
  wear();
  store.subscribe(wear);
  darkWanted.addEventListener('change', wear);
}
