/** One stitch as a lesson on paper: its pictures in order, each with its sentence. */
import { html, nothing } from 'lit-html';
import type { Settings } from '../../state/snapshot.ts';
import { drawing, stillScene } from '../../stitch/drawing.ts';
import { plain, type StitchKind } from '../../stitch/index.ts';
import { movesOf } from '../../stitch/moves.ts';
import { sayLoops, sayMove, stitchName, termOf } from '../../stitch/say.ts';
import type { SheetMessages } from '../../words/pattern/sheet-messages.ts';
import type { Speaker } from '../../words/speaker.ts';
import { falseFriend } from '../../words/terms.ts';
import type { Block, Sheet } from './paging.ts';

/** Pictures beside each other: large where there are few. */
const besides = (count: number): 2 | 3 => (count <= 6 ? 2 : 3);

export type StitchLesson = { stitch: StitchKind; settings: Settings; say: SheetMessages; speaker: Speaker };

/** The stitches of a back, in the order in which they come. */
export const taught: readonly StitchKind[] = [
  'chain',
  'foundation-start',
  'foundation-treble',
  'needle-closing',
  'double-crochet',
  'running-stitch',
  'slip-stitch',
  'fasten-off',
  'treble',
];

export function stitchSheet({ stitch, settings, say, speaker }: StitchLesson): Sheet {
  const variant = plain(stitch);
  const term = termOf(stitch);
  const note = term && falseFriend(term);
  const figures = Array.from({ length: movesOf(stitch).length + 1 }, (_, done) => {
    const says = done === 0 ? say.begin : sayMove(variant, done - 1, settings);
    const loops = sayLoops(variant, done);
    return html`<figure class="sheet-still">
      ${drawing(stillScene(variant, done, settings.hand))}
      <figcaption><b>${say.move({ move: done + 1 }, speaker)}.</b> ${says} ${loops ? html`<i>${loops}.</i>` : nothing}</figcaption>
    </figure>`;
  });
  const blocks: Block[] = [];
  const beside = besides(figures.length);
  for (let at = 0; at < figures.length; at += beside)
    blocks.push({
      key: `${at}`,
      body: html`<div class="sheet-stills ${beside === 3 ? 'three' : ''}">${figures.slice(at, at + beside)}</div>`,
    });
  if (note) blocks.push({ key: 'note', body: html`<p>${note}</p>` });
  return { title: stitchName(stitch, settings), tries: [[{ blocks }]] };
}
