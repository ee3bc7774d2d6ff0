/** Who may import whom. A folder that is not named here may import anything but `core/` behind its `index.ts`. */
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
const words = /^src\/words\//;
const state = /^src\/state\//;
const drawList = /^src\/table\/draw-list\.ts$/;
const table = /^src\/table\//;
const panels = /^src\/panels\//;
const lessons = /^src\/lessons\//;

export const importTable: Rule[] = [
  { of: 'core/', only: [], why: 'core imports nothing outside core' },
  { of: 'src/', never: [/^core\/(?!index\.ts$)/], why: 'src reaches core by core/index.ts only' },
  { of: 'src/', never: [/^tests\//, /^node:/], why: 'src imports no tests and nothing of Node' },
  { of: 'src/table/', never: [/^core\//], why: 'the table knows no core' },
  { of: 'src/table/', never: [panels, lessons], why: 'table, panels and lessons never import each other' },
  { of: 'src/panels/', never: [table, lessons], why: 'table, panels and lessons never import each other' },
  { of: 'src/lessons/', never: [table, panels], why: 'table, panels and lessons never import each other' },
  {
    of: 'src/drawing/',
    only: [core, words, state, drawList],
    why: 'the bridge knows core, words, state and the draw list only',
  },
  { of: 'src/words/', only: [core, state], why: 'words know core and state only' },
  {
    of: 'src/state/',
    never: [table, panels, lessons, /^src\/drawing\//, words],
    why: 'the state knows nobody who shows it',
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
