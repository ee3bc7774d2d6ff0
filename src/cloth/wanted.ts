/** Not made yet: from the size wanted, or the pad at hand, to the counts that come nearest. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Candidate, SideCandidates } from '../../core/index.ts';
import { segmented } from '../controls/segmented.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import { canStartFromPad, frontWanted, wantedCounts } from '../state/cloth-wanted.ts';
import { sayPadLarger } from '../words/cloth/stock.ts';
import {
  askPad,
  askSize,
  sayCandidate,
  sayCandidateSize,
  sayFromPad,
  sayFrontForPad,
  sayNoCount,
  sayWanted,
  sideGroup,
  WANTED,
} from '../words/cloth/wanted.ts';
import { measureField } from './measure-field.ts';
import { padRuleChoice } from './pad.ts';
import { choose, type Place } from './place.ts';

export function wantedPart(place: Place): TemplateResult {
  const { cloth, snapshot, inside } = place;
  const { measures } = cloth;
  const found = wantedCounts(cloth, snapshot.making);
  const isRound = cloth.shape === 'round';
  const isFour = snapshot.making.edge.sides.length === 4;
  const canHavePad = canStartFromPad(cloth, snapshot.making);
  const from = canHavePad ? measures.chosen<'size' | 'pad'>(f.wantedFrom, 'size') : 'size';
  return html`<details class="fold">
    <summary>${WANTED.heading}</summary>
    ${
      canHavePad
        ? segmented(
            WANTED.from,
            from,
            [
              { value: 'size', says: WANTED.fromSize },
              { value: 'pad', says: sayFromPad(inside) },
            ],
            (value) => choose(place, f.wantedFrom, value),
          )
        : nothing
    }
    <p>${from === 'pad' ? askPad(inside, isRound) : askSize(snapshot.making.edge.corners.length)}</p>
    <div class="measures">${measureField(place, f.wantedWidth)} ${isFour ? measureField(place, f.wantedHeight) : nothing}</div>
    ${from === 'pad' ? fromPad(place) : nothing}
    <p>${WANTED.swatch}</p>
    <div class="measures">${measureField(place, f.stretchStitches('front'))} ${measureField(place, f.stretchLength('front'))}</div>
    <p>${WANTED.needs}</p>
    <div class="measures">${measureField(place, f.multiple)} ${measureField(place, f.plus)}</div>
    ${segmented(
      WANTED.parity,
      measures.chosen<'any' | 'odd' | 'even'>(f.parity, 'any'),
      (['any', 'odd', 'even'] as const).map((value) => ({ value, says: WANTED[value] })),
      (parity) => choose(place, f.parity, parity),
    )}
    ${found === null ? nothing : found.ok ? candidates(place, found.value) : html`<p class="consequence">${sayNoCount(found.problems)}</p>`}
  </details>`;
}

/** The usual rule the other way round: the pad is larger than the front, or the front smaller than the pad. */
function fromPad(place: Place): TemplateResult {
  const { units } = place.snapshot.settings;
  const wanted = frontWanted(place.cloth, place.snapshot.making);
  return html`${padRuleChoice(place)}
    ${wanted ? html`<p class="consequence">${sayFrontForPad(sayWanted(wanted, units), sayPadLarger(wanted.rule, units), wanted.rule)}</p>` : nothing}`;
}

function candidates(place: Place, sides: readonly SideCandidates[]): TemplateResult {
  const different = sides.filter((one, i) => sides.findIndex((other) => other.wanted === one.wanted) === i);
  const namesOf = (one: SideCandidates): number[] =>
    sides.filter(({ wanted }) => wanted === one.wanted).map(({ side }) => side + 1);
  return html`<dl class="lies">
      ${different.map(
        (one) => html`<div><dt>${sideGroup(namesOf(one), sides.length)}</dt>
          ${[one.below, one.above]
            .filter((each) => each !== null)
            .filter((each, i, both) => i === 0 || each.front !== both[0]?.front)
            .map((each) => candidate(place, each, each.front === one.nearest.front))}
        </div>`,
      )}
    </dl>
    <button type="button" class="button" @click=${() => take(place, sides)}>${WANTED.take}</button>
    <p class="muted">${WANTED.taken}</p>`;
}

function candidate({ snapshot }: Place, one: Candidate, isNearest: boolean): TemplateResult {
  const { units, dialect } = snapshot.settings;
  const { count, rank } = sayCandidate(one, isNearest);
  return html`<dd class="lie"><b>${count}</b>${rank}: ${sayCandidateSize(one, units, dialect)}</dd>`;
}

/** All sides at once, so that one undo brings them back. */
function take({ send, snapshot }: Place, sides: readonly SideCandidates[]): void {
  const { project, place, answered } = snapshot;
  const counts = Object.fromEntries(sides.map(({ side, nearest }) => [`side.${side}`, `${nearest.front}`]));
  const texts = { ...project.texts, ...counts };
  send({ type: 'OPEN', project: { ...project, counted: 'stitches-only', texts }, place, answered });
}
