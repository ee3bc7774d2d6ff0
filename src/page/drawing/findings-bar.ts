/**
 * Below the drawing while counts are typed or a cause is looked for: what does not meet, one line each in the
 * join's order, and which of them the drawing shows. Where all meets: what to do next.
 */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Finding } from '../../../core/index.ts';
import type { Part } from '../../controls/fetched-part.ts';
import { RECIPE_ID } from '../../controls/ids.ts';
import { type Mending, mendsFor } from '../../state/mends.ts';
import type { Send, Snapshot } from '../../state/snapshot.ts';
import { sayMend, sayMendsHead, sayStale } from '../../words/mends.ts';
import { sayInApp } from '../../words/problems-view.ts';
import { sayFinding, saySeverity } from '../../words/verdict.ts';
import { mishapTitle, sayMishapPlace, sayMoreHappened } from '../../words/wrong/mishaps.ts';

export function openFindingsBar(): Part {
  let searched: (Pick<Snapshot, 'project' | 'making'> & { mends: Mending[] }) | null = null;
  /** Searched for once for a making. */
  const mendsOf = (snapshot: Snapshot): Mending[] => {
    const { project, making } = snapshot;
    if (searched?.project !== project || searched.making !== making)
      searched = { project, making, mends: mendsFor(snapshot) };
    return searched.mends;
  };
  return (snapshot, send) => {
    const { isStale, making, tab } = snapshot;
    const allMeets = making.pairing.findings.length === 0 && !isStale;
    const mends = tab === 'edge' && !allMeets ? mendsOf(snapshot) : [];
    return html`<section class="findings ${allMeets ? 'all-meets' : ''}" aria-label="What does not meet">
      ${whatHappened(snapshot)}
      ${allMeets ? whatNext(snapshot, send) : isStale ? whyNone(snapshot, mends) : whatIsWrong(snapshot, send)}
      ${waysToMend(mends, isStale, send)}
    </section>`;
  };
}

/** So many are told one by one; the rest are counted. */
const MOST_TOLD = 3;

/** What is known to have been done otherwise: put in, or taken for the cause. What only makes the counts typed is not known. */
function whatHappened({ project, making, settings }: Snapshot): TemplateResult | typeof nothing {
  const happened = project.mishaps.filter((one) => making.acts.includes(one));
  if (happened.length === 0) return nothing;
  const told = happened.slice(0, MOST_TOLD);
  return html`<div class="happened">
    ${told.map(
      (one) =>
        html`<p>In this drawing: <b>${mishapTitle(one, making.plan, settings)}</b> <span>${sayMishapPlace(one, making.plan, settings)}</span></p>`,
    )}
    ${happened.length > told.length ? html`<p>${sayMoreHappened(happened.length - told.length)}</p>` : nothing}
  </div>`;
}

/** A number that is still being typed is not told; what bars a back from numbers that are read, is. */
function whyNone(snapshot: Snapshot, mends: readonly Mending[]): TemplateResult {
  const [problem] = snapshot.problems;
  const why = mends.length > 0 && problem ? `${sayInApp(problem, snapshot)}. ` : '';
  return html`<p class="next-says">${why}${sayStale}</p>`;
}

/** Choices that would do, each one press away; undo takes it back. */
function waysToMend(
  mends: readonly Mending[],
  isStale: boolean,
  send: Send,
): TemplateResult | typeof nothing {
  if (mends.length === 0) return nothing;
  return html`<div class="mends">
    <p>${sayMendsHead(mends.length, isStale)}</p>
    ${mends.map((mend) => html`<button type="button" class="button" @click=${() => send({ type: 'CHOOSE', project: mend.project })}>${sayMend(mend)}</button>`)}
  </div>`;
}

function whatIsWrong(snapshot: Snapshot, send: Send): TemplateResult {
  const { making, finding: held } = snapshot;
  const { findings } = making.pairing;
  const sides = making.edge.sides.length;
  const look = (finding: number) => send({ type: 'LOOK_AT', finding });
  const step = (by: number) => look((held + by + findings.length) % findings.length);
  return html`<ol class="findings-list">
      ${findings.map((finding, index) => line(finding, { sides, isHeld: index === held, look: () => look(index) }))}
    </ol>
    ${
      findings.length < 2
        ? nothing
        : html`<div class="findings-moves">
          <button type="button" class="button" aria-label="Show the one before" @click=${() => step(-1)}>‹</button>
          <p><b>${held + 1}</b> of ${findings.length}</p>
          <button type="button" class="button" aria-label="Show the next one" @click=${() => step(1)}>›</button>
        </div>`
    }`;
}

type Line = { sides: number; isHeld: boolean; look: () => void };

function line(finding: Finding, { sides, isHeld, look }: Line): TemplateResult {
  const { says, more } = sayFinding(finding, sides);
  const bad = finding.severity && !finding.follows ? saySeverity(finding.severity) : '';
  return html`<li class="finding ${isHeld ? 'held' : ''} ${finding.follows ? 'follows' : ''}">
    <button type="button" class="finding-line" aria-current=${isHeld ? 'true' : nothing} @click=${look}>
      <span class="finding-says">${says}</span>
      <span class="finding-more">${more}</span>
      ${bad === '' ? nothing : html`<span class="finding-bad">${bad}</span>`}
    </button>
  </li>`;
}

function whatNext({ tab }: Snapshot, send: Send): TemplateResult {
  const toRecipe = (): void => {
    const heading = document.getElementById(RECIPE_ID);
    heading?.focus({ preventScroll: true });
    heading?.scrollIntoView({ block: 'start' });
  };
  if (tab === 'wrong')
    return html`<p class="next-says">As typed, both rounds meet. Type what you counted on your work.</p>`;
  return html`<p class="next-says">Both rounds meet. Read the recipe for the back, then work it stitch by stitch.</p>
    <div class="next-ways">
      <button type="button" class="button" @click=${toRecipe}>Read the recipe</button>
      <button type="button" class="button strong" @click=${() => send({ type: 'SHOW', tab: 'walk' })}>Walk it <span aria-hidden="true">›</span></button>
    </div>`;
}
