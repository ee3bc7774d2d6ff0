/**
 * The one table of colours. Dark is a theme of its own: warm ink on slate, yarns under a lamp.
 * `tests/unit/theme.test.ts` holds every pair to its contrast; change a value and it tells.
 */
import { towardsContrast } from './colour.ts';

export type ThemeName = 'light' | 'dark';

/** The person's yarns, or the theme's own: hex `#rrggbb`. */
export type Yarns = { front: string; edging: string; foundation: string };

export type Theme = {
  name: ThemeName;
  /** The table top. */
  paper: string;
  /** Cards, bars and the close-up. */
  raised: string;
  /** Inside of fields. */
  well: string;
  /** Text and strong marks. */
  ink: string;
  /** Text of second rank. */
  muted: string;
  /** Hairlines that only decorate; no meaning hangs on them. */
  line: string;
  /** Borders of controls: 3:1 on all three papers. */
  edge: string;
  /** Mark for a place without a partner, and text about it. */
  gap: string;
  gapText: string;
  /** Background of a message about a gap. */
  gapPaper: string;
  accent: string;
  onAccent: string;
  /** The one big button, and the chosen tab. */
  strong: string;
  onStrong: string;
  focus: string;
  /** Stitch marker flags. */
  marker: string;
  /** The bar that joins a pair. */
  seam: string;
  yarns: Yarns;
};

export const LIGHT: Theme = {
  name: 'light',
  paper: '#f4efe6',
  raised: '#fbf8f2',
  well: '#ffffff',
  ink: '#22303a',
  muted: '#56636c',
  line: '#ddd4c4',
  edge: '#7a858c',
  gap: '#d15a00',
  gapText: '#b34e00',
  gapPaper: '#fdf1e6',
  accent: '#1c6670',
  onAccent: '#ffffff',
  strong: '#22303a',
  onStrong: '#fbf8f2',
  focus: '#0b5cad',
  marker: '#7d3b76',
  seam: '#22303a',
  yarns: { front: '#23717a', edging: '#c1673a', foundation: '#b89a6a' },
};

export const DARK: Theme = {
  name: 'dark',
  paper: '#1c2226',
  raised: '#252c31',
  well: '#161b1e',
  ink: '#efe7d9',
  muted: '#b3bbbd',
  line: '#3a444a',
  edge: '#849096',
  gap: '#ff8a33',
  gapText: '#ffa562',
  gapPaper: '#3a2a1d',
  accent: '#6fc3c6',
  onAccent: '#10262a',
  strong: '#efe7d9',
  onStrong: '#1c2226',
  focus: '#8fc7ff',
  marker: '#d79ad0',
  seam: '#efe7d9',
  yarns: { front: '#3f999f', edging: '#e48d60', foundation: '#cbb080' },
};

export const THEMES: Record<ThemeName, Theme> = { light: LIGHT, dark: DARK };

/** Least contrast of a mark, and of text, against what lies beneath (WCAG 2.2, 1.4.11 and 1.4.3). */
export const MARK_CONTRAST = 3;
export const TEXT_CONTRAST = 4.5;

/**
 * Outline for a stitch of any yarn: the yarn drawn towards ink until it stands at least 3:1 on paper and on
 * raised paper. Begins a little on the way, so that the outline shows against the yarn as well.
 */
export function markInk(yarn: string, theme: Theme): string {
  const contrast = { papers: [theme.paper, theme.raised], ratio: MARK_CONTRAST + 0.05 };
  return towardsContrast(yarn, theme.ink, contrast, 0.28);
}

/** Text in a yarn's colour: at least 4.5:1 on every paper of the theme. */
export function textInk(yarn: string, theme: Theme): string {
  const papers = [theme.paper, theme.raised, theme.well];
  return towardsContrast(yarn, theme.ink, { papers, ratio: TEXT_CONTRAST + 0.05 });
}

/** Name of the custom property of each plain colour, and of the three yarns. */
const PROPERTIES = {
  paper: '--paper',
  raised: '--raised',
  well: '--well',
  ink: '--ink',
  muted: '--muted',
  line: '--line',
  edge: '--edge',
  gap: '--gap',
  gapText: '--gap-text',
  gapPaper: '--gap-paper',
  accent: '--accent',
  onAccent: '--on-accent',
  strong: '--strong',
  onStrong: '--on-strong',
  focus: '--focus',
  marker: '--marker',
  seam: '--seam',
} as const satisfies Partial<Record<keyof Theme, `--${string}`>>;

/**
 * The theme as custom properties: `--paper`, `--gap-text` … and for each yarn its colour (`--yarn-front`),
 * its outline (`--yarn-front-line`, 3:1) and its text colour (`--yarn-front-text`, 4.5:1).
 */
export function customProperties(theme: Theme, yarns: Yarns = theme.yarns): [name: string, value: string][] {
  const plain = Object.entries(PROPERTIES).map(([key, name]): [string, string] => [
    name,
    theme[key as keyof typeof PROPERTIES],
  ]);
  const yarn = Object.entries(yarns).flatMap(([key, hex]): [string, string][] => [
    [`--yarn-${key}`, hex],
    [`--yarn-${key}-line`, markInk(hex, theme)],
    [`--yarn-${key}-text`, textInk(hex, theme)],
  ]);
  return [...plain, ...yarn];
}

/** Sets every custom property and the colour scheme on `root`, through CSSOM: inline styles are forbidden. */
export function applyTheme(root: HTMLElement, theme: Theme, yarns: Yarns = theme.yarns): void {
  for (const [name, value] of customProperties(theme, yarns)) root.style.setProperty(name, value);
  root.style.setProperty('color-scheme', theme.name);
  root.dataset.theme = theme.name;
}
