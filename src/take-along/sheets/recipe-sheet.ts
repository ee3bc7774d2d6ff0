/** The recipe on one page, under the drawing of both rounds. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { clothFields } from '../../state/cloth-fields.ts';
import type { Snapshot } from '../../state/snapshot.ts';
import type { SheetMessages } from '../../words/pattern/sheet-messages.ts';
import {
  type SaidFrontStrip,
  type SaidLeg,
  type SaidRecipe,
  sayFrontStrip,
  sayRecipe,
} from '../../words/recipe.ts';
import { sayVerdict } from '../../words/verdict.ts';
import type { Section, Sheet } from './paging.ts';
import type { Drawn } from './pictures.ts';

type Part = { heading: string; legs: readonly SaidLeg[]; lines: readonly string[]; acts: readonly string[] };

type Size = 'large' | 'small' | 'tiny';

/** mm of the drawing, where the words need less or more room. */
const heights: Record<Size, number> = { large: 118, small: 92, tiny: 72 };

export type Recipe = {
  snapshot: Snapshot;
  title: string;
  say: SheetMessages;
  drawing: Drawn | null;
  scan: TemplateResult;
};

export function recipeSheet({ snapshot, title, say, drawing, scan }: Recipe): Sheet {
  const { making, settings } = snapshot;
  const isOfCloth = snapshot.project.texts[clothFields.front] === 'cloth';
  const front = isOfCloth ? frontParts(sayFrontStrip(making, settings)) : [];
  const parts = partsOf(sayRecipe(making, settings), front, say);
  const { head, body } = sayVerdict(making, settings);
  const verdict = html`<p class="sheet-verdict"><b>${head}</b> ${body}</p>`;
  const picture = (size: Size): TemplateResult =>
    html`<div class="sheet-picture ${size}">${drawing?.onPage(heights[size])}</div>`;
  const columns = halved(parts);
  const onOne = (size: Size): Section[] => [
    {
      blocks: [
        { key: `picture${size}`, body: picture(size) },
        {
          key: `recipe${size}`,
          body: html`${verdict}<div class="sheet-columns ${size}">${columns.map((column, i) => html`<div>${column.map(part)}${i === 1 ? scan : nothing}</div>`)}</div>`,
        },
      ],
    },
  ];
  const flowing: Section = {
    blocks: [
      { key: 'picture', body: picture('large') },
      { key: 'verdict', body: verdict },
      ...parts.map((one, i) => ({ key: `${i}`, body: part(one) })),
      { key: 'scan', body: scan },
    ],
  };
  return { title, tries: [onOne('large'), onOne('small'), onOne('tiny'), [flowing]] };
}

function partsOf(said: SaidRecipe, front: readonly Part[], say: SheetMessages): Part[] {
  return [
    {
      heading: say.foundation,
      legs: said.legs,
      lines: [said.corner, said.parts, said.closing, ...said.asked].filter((one) => one !== ''),
      acts: [said.start, ...said.begin, said.twist],
    },
    ...said.edgings.map(({ title, legs, lines, asked }) => ({
      heading: title,
      legs,
      lines: asked,
      acts: lines,
    })),
    ...front,
    { heading: say.join, legs: [], lines: said.joinAsked, acts: said.join },
  ];
}

/** What differs from the back's strip. */
const frontParts = ({ heading, how, legs, edgings }: SaidFrontStrip): Part[] => [
  { heading, legs, lines: [], acts: how },
  ...edgings.map(({ title, legs: own }) => ({
    heading: `${heading}: ${title}`,
    legs: own,
    lines: [],
    acts: [],
  })),
];

/** Two columns of about the same length, in order: the code to scan takes as much of the second as a part of `scanned` lines. */
function halved(parts: readonly Part[]): [Part[], Part[]] {
  const lines = parts.map(({ legs, lines, acts }) => 2 + legs.length / 3 + lines.length + acts.length * 1.6);
  const sum = (some: readonly number[]): number => some.reduce((all, one) => all + one, 0);
  const apart = (at: number): number => Math.abs(sum(lines.slice(0, at)) - sum(lines.slice(at)) - scanned);
  const at = parts.map((_, i) => i + 1).reduce((best, one) => (apart(one) < apart(best) ? one : best));
  return [parts.slice(0, at), parts.slice(at)];
}
const scanned = 8;

const part = ({ heading, legs, lines, acts }: Part): TemplateResult => html`<section class="sheet-part">
  <h3>${heading}</h3>
  ${legs.length > 0 ? html`<p class="sheet-legs">${legs.map(leg)}</p>` : nothing}
  ${lines.map((line) => html`<p>${line}</p>`)}
  ${acts.map((act) => html`<p class="sheet-item">– ${act}</p>`)}
</section>`;

function leg({ count, unit, corner, times }: SaidLeg): TemplateResult {
  const after = `${unit ? ` ${unit}` : ''}${corner ? `, ${corner.says}` : ''}`;
  return html`<span class="sheet-leg">${times > 1 ? `${times} times ` : ''}<b>${count}</b>${after}</span> `;
}
