/** Writes rendered edges as pictures to look at: `node tests/setup/run.mjs tests/photo/see.ts FOLDER`. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { everyDifficulty } from './difficulty.ts';
import { pngOf } from './png.ts';
import { renderEdge } from './render.ts';

const [folder = 'pictures'] = process.argv.slice(2);
mkdirSync(folder, { recursive: true });
for (const difficulty of everyDifficulty)
  for (const seed of [1, 2]) {
    const picture = renderEdge(difficulty, seed);
    const file = `${folder}/edge-${difficulty}-${seed}.png`;
    writeFileSync(file, pngOf(picture));
    console.log(`${file}: ${picture.vees.length} stitches, ${picture.width} × ${picture.height}`);
  }
