/** Who may import whom: a row for every room. The files that put the rooms together stand beside them in `src/`. */
import type { Import } from './sources.ts';

type Rule = {
  /** Files the rule is about: the start of their path. */
  of: string;
  /** Their imports must fit one of these (other files of their own folder always do). */
  only?: RegExp[];
  /** Their imports must fit none of these. */
  never?: RegExp[];
  why: string;
};

const core = /^core\/index\.ts$/;
/** Files that stand at the root of `core/`: the vocabulary, and whole numbers. */
const vocabulary = /^core\/[a-z-]+\.ts$/;
const inCore = (...rooms: string[]): RegExp => new RegExp(`^core/(${rooms.join('|')})/`);
const rooms = (...names: string[]): RegExp => new RegExp(`^src/(${names.join('|')})/`);
const drawList = /^src\/table\/draw-list\.ts$/;
const places = ['edge', 'walk', 'wrong', 'cloth', 'take-along'];

export const importTable: Rule[] = [
  { of: 'core/', only: [], why: 'core imports nothing outside core' },
  {
    of: 'core/front/',
    only: [vocabulary, /^core\/join\/ease\.ts$/],
    why: 'reading the front needs the vocabulary, and how stitches are spread',
  },
  {
    of: 'core/planning/',
    only: [vocabulary, inCore('front', 'hand')],
    why: 'planning knows the front, and the hand that checks a printed pattern',
  },
  {
    of: 'core/hand/',
    only: [vocabulary, inCore('planning', 'join')],
    why: 'the hand knows the plan, and spreads as the join does',
  },
  {
    of: 'core/join/',
    only: [vocabulary, inCore('front', 'hand')],
    why: 'the join knows the front and what the hand made',
  },
  {
    of: 'core/walk/',
    only: [vocabulary, inCore('hand', 'join')],
    why: 'the walk knows what the hand made and how it is joined',
  },
  {
    of: 'core/explain/',
    only: [vocabulary, inCore('hand', 'join', 'planning')],
    why: 'explaining tries the hand and the join',
  },
  { of: 'core/cloth/', only: [vocabulary], why: 'cloth is geometry and knows no stitch graph' },
  { of: 'src/', never: [/^core\/(?!index\.ts$)/], why: 'src reaches core by core/index.ts only' },
  { of: 'src/', never: [/^tests\//, /^node:/], why: 'src imports no tests and nothing of Node' },
  { of: 'src/table/', only: [rooms('theme'), /^(?!src|core)/], why: 'the table knows colours, and no core' },
  { of: 'src/theme/', only: [/^(?!src|core)/], why: 'the theme knows nobody' },
  {
    of: 'src/drawing/',
    only: [core, rooms('words', 'state'), drawList],
    why: 'the bridge knows core, words, state and the draw list only',
  },
  { of: 'src/words/', only: [core, rooms('state')], why: 'words know core and state only' },
  {
    of: 'src/input/',
    only: [core, rooms('state'), /^(?!src|core)/],
    why: 'the input room knows core, the state it reads into, and its library',
  },
  {
    of: 'src/state/',
    only: [core, rooms('making', 'input'), /^(?!src|core)/],
    why: 'the state knows nobody who shows it',
  },
  {
    of: 'src/making/',
    only: [core, rooms('state', 'words'), /^(?!src|core)/],
    why: 'the making knows core and the state it belongs to',
  },
  {
    of: 'src/keep/',
    only: [core, rooms('state', 'input', 'words', 'offline', 'making'), /^(?!src|core)/],
    why: 'keeping knows the state, how it is read, and what it tells',
  },
  { of: 'src/offline/', only: [], why: 'keeping the pages offline needs nobody' },
  {
    of: 'src/stitch/',
    only: [core, rooms('words', 'state'), /^(?!src|core)/],
    why: 'a stitch knows its words',
  },
  {
    of: 'src/lessons/',
    never: [rooms('table', 'page', 'controls', ...places)],
    why: 'table, page and lessons never import each other',
  },
  {
    of: 'src/controls/',
    only: [core, rooms('state', 'words', 'input'), /^(?!src|core)/],
    why: 'a control belongs to no place',
  },
  {
    of: 'src/photo/',
    only: [core, rooms('state', 'words', 'controls', 'input'), /^(?!src|core)/],
    why: 'counting on a photo is opened by the places, and knows none of them',
  },
  ...places.map((place) => ({
    of: `src/${place}/`,
    never: [rooms('table', 'page', 'lessons', 'keep')],
    why: 'a place of the app knows neither the page around it nor the canvas',
  })),
  {
    of: 'src/panels/',
    never: [rooms('table', 'page', 'lessons')],
    why: 'the list of panels knows neither the page around it nor the canvas',
  },
  {
    of: 'src/page/',
    never: [rooms('table', 'lessons')],
    why: 'table, page and lessons never import each other',
  },
];

/** Imports that break the table, each as one sentence. */
export function breachesOf(imports: Import[]): string[] {
  return imports.flatMap(({ from, target }) =>
    importTable
      .filter((rule) => from.startsWith(rule.of))
      .filter(({ of, only, never }) => {
        const isOwn = target.startsWith(of);
        const fits = (pattern: RegExp) => pattern.test(target);
        return (only && !isOwn && !only.some(fits)) || never?.some(fits);
      })
      .map(({ why }) => `${from} imports ${target}: ${why}`),
  );
}
