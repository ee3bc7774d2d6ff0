/** Not made yet: from the size wanted to the counts that come nearest. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Candidate, SideCandidates } from '../../core/index.ts';
import { segmented } from '../controls/segmented.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import { wantedCounts } from '../state/cloth-wanted.ts';
import type { Units } from '../state/snapshot.ts';
import { sayLength, signed } from '../words/cloth/lengths.ts';
import { many, manyOf } from '../words/numbers.ts';
import { measureField } from './measure-field.ts';
import { choose, type Place } from './place.ts';

export function wantedPart(place: Place): TemplateResult {
  const { cloth, snapshot } = place;
  const found = wantedCounts(cloth.measures, snapshot.making);
  const isRound = cloth.shape === 'round';
  const isFour = snapshot.making.edge.sides.length === 4;
  return html`<details class="fold">
    <summary>Not made yet? From a size to counts</summary>
    <p>How large is the front's last round to be${isRound ? ', across' : ''}?</p>
    <div class="measures">${measureField(place, f.wantedWidth)} ${isFour ? measureField(place, f.wantedHeight) : nothing}</div>
    <p>Work a swatch and count a stretch of it.</p>
    <div class="measures">${measureField(place, f.stretchStitches('front'))} ${measureField(place, f.stretchLength('front'))}</div>
    <p>What does the pattern need?</p>
    <div class="measures">${measureField(place, f.multiple)} ${measureField(place, f.plus)}</div>
    ${segmented(
      'Odd or even',
      cloth.measures.chosen<'any' | 'odd' | 'even'>(f.parity, 'any'),
      [
        { value: 'any', says: 'any count' },
        { value: 'odd', says: 'odd' },
        { value: 'even', says: 'even' },
      ],
      (parity) => choose(place, f.parity, parity),
    )}
    ${found === null ? nothing : found.ok ? candidates(place, found.value) : html`<p class="consequence">No count can be both: choose another multiple, or any count.</p>`}
  </details>`;
}

function candidates(place: Place, sides: readonly SideCandidates[]): TemplateResult {
  const { snapshot } = place;
  const { units, dialect } = snapshot.settings;
  const different = sides.filter((one, i) => sides.findIndex((other) => other.wanted === one.wanted) === i);
  const named = (one: SideCandidates): string => {
    const same = sides.filter(({ wanted }) => wanted === one.wanted).map(({ side }) => side + 1);
    return sides.length === 1
      ? 'all round'
      : same.length === sides.length
        ? 'each side'
        : `sides ${same.join(' and ')}`;
  };
  return html`<dl class="lies">
      ${different.map(
        (one) => html`<div><dt>${named(one)}</dt>
          ${[one.below, one.above]
            .filter((candidate, i, both) => candidate && (i === 0 || candidate.front !== both[0]?.front))
            .map(
              (
                candidate,
              ) => html`<dd class="lie"><b>${many((candidate as Candidate).front, 'stitch', 'stitches')}</b>${candidate === one.nearest || candidate?.front === one.nearest.front ? ', the nearest' : ''}: ${says(candidate as Candidate, units)}
                On the strip ${manyOf((candidate as Candidate).strip, 'foundation-treble', dialect)}.</dd>`,
            )}
        </div>`,
      )}
    </dl>
    <button type="button" class="button" @click=${() => take(place, sides)}>Take the nearest as my counts</button>
    <p class="muted">They replace the counts in Your edge, stitches only. Undo brings yours back.</p>`;
}

const says = ({ length, off }: Candidate, units: Units): string =>
  Math.abs(off) < 0.05
    ? `${sayLength(length, units)}.`
    : `${sayLength(length, units)}, ${signed(off / (units === 'cm' ? 10 : 25.4), 2)} ${units === 'cm' ? 'cm' : 'in'}.`;

/** All sides at once, so that one undo brings them back. */
function take({ send, snapshot }: Place, sides: readonly SideCandidates[]): void {
  const { project, place, answered } = snapshot;
  const counts = Object.fromEntries(sides.map(({ side, nearest }) => [`side.${side}`, `${nearest.front}`]));
  const texts = { ...project.texts, ...counts };
  send({ type: 'OPEN', project: { ...project, counted: 'stitches-only', texts }, place, answered });
}
