/** Which notice the strip shows: one at a time, most pressing first. */
import type { TemplateResult } from 'lit-html';
import { mishapOf } from '../../state/derive.ts';
import { fieldNames } from '../../state/fields.ts';
import type { Send, Snapshot } from '../../state/snapshot.ts';
import { choiceSettled, mishapUnfit, type Notice } from '../../words/notices.ts';
import { fieldName, sayInApp } from '../../words/problems-view.ts';
import { inOrder, type Notices } from './notices.ts';
import { noticeRow } from './row.ts';

/** The strip as a part of the page. */
export function noticesStrip(snapshot: Snapshot, send: Send, notices: Notices): TemplateResult {
  const [notice] = inOrder([...notices.list(), ...unfit(snapshot, send), ...settled(snapshot, send)]);
  return noticeRow(notice, notices.dismiss);
}

/** Choices that fell back with the last change. Told until the next. */
function settled({ settled: all, project, making }: Snapshot, send: Send): Notice[] {
  const [first] = all;
  if (!first) return [];
  const { start, joinStart } = making.plan.choices;
  const fallen = all.map(({ field }) => ({
    name: fieldName(field, project.sideCount),
    side: (field === fieldNames.startSide ? start : joinStart).side + 1,
  }));
  return [choiceSettled(first.side, fallen, () => send({ type: 'UNDO' }))];
}

/** An act put in before the panel was changed has no place on it any more. */
function unfit(snapshot: Snapshot, send: Send): Notice[] {
  const [problem] = snapshot.unfit;
  if (!problem) return [];
  const index = mishapOf(problem);
  const list = problem.at.startsWith('adjustments') ? 'adjustments' : 'mishaps';
  const left = snapshot.project[list].filter((_, other) => index !== null && other !== index);
  return [
    mishapUnfit(sayInApp(problem, snapshot), () => send({ type: 'CHANGE', project: { [list]: left } })),
  ];
}
