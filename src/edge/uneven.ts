/** A front that came out a little uneven: asked about before the back is planned, both ways beside each other. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { evenOut } from '../../core/index.ts';
import type { Part } from '../controls/fetched-part.ts';
import { countedNumbers } from '../controls/fields.ts';
import { fieldNames } from '../state/fields.ts';
import type { Snapshot } from '../state/snapshot.ts';
import { sayEvened, sayEvening, sayKept, sayUneven } from '../words/uneven.ts';

/** Stitches that one more round of double crochet adds to a side: one on each side of every corner. */
const added = 2;

export function openUneven(onChange: () => void): Part {
  /** Sides that the person said they keep as they are. */
  let kept = '';
  return (snapshot, send) => {
    const { sides } = snapshot.making.edge;
    const evening = snapshot.isStale ? [] : evenOut(sides);
    if (evening.length === 0 || kept === sides.join()) return html`${nothing}`;
    const even = (): void => {
      const texts = { ...snapshot.project.texts, ...evened(snapshot) };
      send({ type: 'CHOOSE', project: { ...snapshot.project, texts } });
    };
    const keep = (): void => {
      kept = sides.join();
      onChange();
    };
    return ask(snapshot, { keep, even });
  };
}

/** The texts of the sides after that round, counted as the person counts. */
function evened(snapshot: Snapshot): Record<string, string> {
  const off = new Map(evenOut(snapshot.making.edge.sides).map(({ side, by }) => [side, by]));
  return Object.fromEntries(
    countedNumbers(snapshot).map((count, side) => [
      fieldNames.side(side),
      `${count + (off.get(side) ?? 0) + added}`,
    ]),
  );
}

function ask(snapshot: Snapshot, { keep, even }: { keep(): void; even(): void }): TemplateResult {
  const { making, settings } = snapshot;
  const evening = evenOut(making.edge.sides);
  return html`<section class="uneven" role="group" aria-label="An uneven front">
    <p><b>${sayUneven(evening)}</b></p>
    <div class="uneven-ways">
      <div>
        <p>${sayKept}</p>
        <button type="button" class="button" @click=${keep}>Keep it</button>
      </div>
      <div>
        <p>${sayEvening(evening, settings.dialect)}</p>
        <p class="muted">${sayEvened(making.edge.sides, evening, added)}</p>
        <button type="button" class="button" @click=${even}>It is evened out</button>
      </div>
    </div>
  </section>`;
}
