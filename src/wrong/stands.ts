/** Where the work stands: one row, from which cures and their costs follow. */
import { html, type TemplateResult } from 'lit-html';
import type { Plan, Stand } from '../../core/index.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { askStands, sayAsCounted, sayStand } from '../words/wrong/stands.ts';

/** In the order of the making. The join goes round from the side where it begins. */
function standsOf({ edgings, edge, choices }: Plan): Stand[] {
  const k = edge.sides.length;
  const sides = Array.from({ length: k }, (_, n) => (choices.joinStart.side + n) % k);
  return [
    { at: 'foundation' },
    ...edgings.map((_, edging): Stand => ({ at: 'edging', edging })),
    { at: 'sewn' },
    ...(k > 1 ? sides.slice(0, -1).map((side): Stand => ({ at: 'join', side })) : []),
    { at: 'finished' },
  ];
}

export function standsRow({ project, making, place, answered }: Snapshot, send: Send): TemplateResult {
  const all = standsOf(making.plan);
  const keyOf = (stand: Stand): string => JSON.stringify(stand);
  const now = project.stands && keyOf(project.stands);
  const change = (event: Event): void => {
    const chosen = all.find((one) => keyOf(one) === (event.target as HTMLSelectElement).value);
    const { stands: _stands, ...rest } = project;
    send({ type: 'OPEN', project: chosen ? { ...rest, stands: chosen } : rest, place, answered });
  };
  return html`<label class="stands-row"><span>${askStands}</span>
    <select @change=${change}>
      <option value="" .selected=${now === undefined}>${sayAsCounted}</option>
      ${all.map((one) => html`<option value=${keyOf(one)} .selected=${keyOf(one) === now}>${sayStand(one, making.plan)}</option>`)}
    </select></label>`;
}
