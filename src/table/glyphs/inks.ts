/**
 * The colours a glyph is painted in, worked out once from theme and yarns for each tone.
 */
import { luminance, mix, readHex, towardsContrast, writeHex } from '../../theme/colour.ts';
import { MARK_CONTRAST, markInk, TEXT_CONTRAST, type Theme, textInk, type Yarns } from '../../theme/theme.ts';
import { Tone, type ToneCode } from '../draw-list.ts';

/** What a path of a glyph is filled or drawn with. */
export type Role =
  | 'body' // the yarn itself
  | 'near' // the loop towards the maker: a little darker
  | 'far' // the loop away from the maker: a little lighter
  | 'fold' // where yarn dives under yarn
  | 'glow' // where the lamp catches it
  | 'line' // outline, 3:1 on paper
  | 'pale' // inside of a stitch still to come
  | 'ghost' // outline of a stitch still to come, 3:1 on paper
  | 'ink'
  | 'gap'
  | 'paper';

export type Ink = Record<Role, string> & {
  /** Words in this tone, 4.5:1 on every paper. */
  text: string;
};

/** One ink for each tone, by its code, and the papers beneath. */
export type Inks = { tones: Ink[]; paper: string; raised: string; ink: string; muted: string; line: string };

const TONE_COUNT = Object.keys(Tone).length;

/** The same hue under more or less light; a little white joins in where a channel is full. */
function lit(yarn: string, light: number): string {
  const shone = writeHex(readHex(yarn).map((channel) => channel * light + (light > 1 ? 8 : 0)) as never);
  return light > 1 ? mix(shone, '#fffaf0', 0.06) : shone;
}

function yarnInk(yarn: string, theme: Theme, ratio: number): Ink {
  // Deep yarns lose their folds in black, pale ones their lights in white: shift both by what is left.
  const light = luminance(yarn);
  const contrast = { papers: [theme.paper, theme.raised], ratio };
  const body = yarn;
  return {
    body,
    near: lit(yarn, 0.9 - 0.06 * light),
    far: lit(yarn, 1.2),
    fold: lit(yarn, 0.5),
    glow: mix(yarn, '#fffaf0', 0.48),
    line: towardsContrast(markInk(yarn, theme), theme.ink, contrast),
    pale: mix(theme.raised, yarn, theme.name === 'light' ? 0.12 : 0.16),
    ghost: towardsContrast(mix(yarn, theme.paper, 0.25), theme.ink, contrast),
    ink: theme.ink,
    gap: theme.gap,
    paper: mix(theme.paper, theme.raised, 0.6),
    text: textInk(yarn, theme),
  };
}

function plainInk(colour: string, text: string, theme: Theme, ratio: number): Ink {
  return {
    body: colour,
    near: colour,
    far: colour,
    fold: colour,
    glow: colour,
    line: colour,
    pale: theme.raised,
    ghost: towardsContrast(theme.edge, theme.ink, { papers: [theme.paper, theme.raised], ratio }),
    ink: theme.ink,
    gap: theme.gap,
    paper: mix(theme.paper, theme.raised, 0.6),
    text,
  };
}

/** What a view lies on: the whole on the table itself, the close-up on raised paper. */
export const paperOf = ({ id }: { id: 'whole' | 'close' }, inks: Inks): string =>
  id === 'close' ? inks.raised : inks.paper;

/**
 * All inks of a theme with the person's yarns.
 * @param strong for someone who asks for more contrast: outlines stand out as text does
 */
export function mixInks(theme: Theme, yarns: Yarns, strong = false): Inks {
  const ratio = (strong ? TEXT_CONTRAST : MARK_CONTRAST) + 0.05;
  const tones = new Array<Ink>(TONE_COUNT);
  const put = (tone: ToneCode, ink: Ink) => {
    tones[tone] = ink;
  };
  put(Tone.front, yarnInk(yarns.front, theme, ratio));
  put(Tone.edging, yarnInk(yarns.edging, theme, ratio));
  put(Tone.foundation, yarnInk(yarns.foundation, theme, ratio));
  put(Tone.ink, plainInk(theme.ink, theme.ink, theme, ratio));
  put(Tone.muted, plainInk(theme.muted, theme.muted, theme, ratio));
  put(Tone.gap, plainInk(theme.gap, theme.gapText, theme, ratio));
  put(Tone.paper, plainInk(theme.raised, theme.raised, theme, ratio));
  put(Tone.marker, plainInk(theme.marker, theme.marker, theme, ratio));
  return {
    tones,
    paper: theme.paper,
    raised: theme.raised,
    ink: theme.ink,
    muted: theme.muted,
    line: theme.line,
  };
}
