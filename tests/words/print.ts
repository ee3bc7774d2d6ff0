/**
 * `npm run words [part of a stage's name]`: prints every sentence the walk, the lessons, the recipe and the causes
 * can say, by stage; US terms stand beside UK terms where they differ.
 */
import { everySentence } from './sentences.ts';

const part = (process.argv[2] ?? '').toLowerCase();
let shown = '';
for (const { stage, uk, us } of everySentence()) {
  if (!stage.toLowerCase().includes(part)) continue;
  if (stage !== shown) console.log(`\n${stage}\n${'-'.repeat(stage.length)}`);
  shown = stage;
  console.log(us === uk ? uk : `${uk.padEnd(76)} | ${us}`);
}
