/** Writes rendered edges as pictures to look at, with the counts beside them as `npm run photos` reads them: `node tests/setup/run.mjs tests/photo/see.ts FOLDER`. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { type CountedPhoto, countsName } from './counts-file.ts';
import { everyDifficulty } from './difficulty.ts';
import { pngOf } from './png.ts';
import { renderEdge } from './render.ts';

const [folder = 'pictures'] = process.argv.slice(2);
mkdirSync(folder, { recursive: true });
const counted: CountedPhoto[] = [];
for (const difficulty of everyDifficulty)
  for (const seed of [1, 2]) {
    const picture = renderEdge(difficulty, seed);
    const photo = `edge-${difficulty}-${seed}.png`;
    const file = `${folder}/${photo}`;
    const places = picture.vees.map(({ x, y }): [number, number] => [Math.round(x), Math.round(y)]);
    const line = places.filter((_, i) => i % 10 === 0 || i === places.length - 1);
    counted.push({ photo, count: places.length, line, marks: places.slice(0, 3) });
    writeFileSync(file, pngOf(picture));
    console.log(`${file}: ${picture.vees.length} stitches, ${picture.width} × ${picture.height}`);
  }
writeFileSync(`${folder}/${countsName}`, `${JSON.stringify(counted, null, 1)}\n`);
