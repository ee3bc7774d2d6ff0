/** All panels as the list shows them, and what is done to one. */

import type { Kept } from '../input/kept.ts';
import { lasting, writeStart } from '../input/write-kept.ts';
import { newName } from '../keep/around.ts';
import type { Keeping } from '../keep/keep-types.ts';
import type { Shelved } from '../keep/shelf.ts';
import { example } from '../state/project.ts';
import type { Start, Store } from '../state/store.ts';
import { freeName } from '../words/panels.ts';

/** `work` is null where the text cannot be read. */
export type Listed = {
  id: string | null;
  changed: number;
  work: Start | null;
  record: Shelved | null;
  isInHand: boolean;
};

/** The one in hand first, as it is this moment; then the last changed. */
export async function listPanels(store: Store, { shelf, shelving, device }: Keeping): Promise<Listed[]> {
  await shelving?.flush();
  const all = (await shelf?.list()) ?? [];
  const inHand = shelving?.inHand() ?? null;
  const own = all.find(({ id }) => id === inHand) ?? null;
  const others = all.filter((one) => one !== own);
  return [
    { id: inHand, changed: own?.changed ?? 0, work: lasting(store.snapshot()), record: own, isInHand: true },
    ...others.map((record) => ({
      id: record.id,
      changed: record.changed,
      work: device.read(record.text),
      record,
      isInHand: false,
    })),
  ];
}

export const namesOf = (all: readonly Listed[]): string[] =>
  all.flatMap(({ work }) => work?.project.name ?? []);

const asText = (start: Start, id: string, changed: number): string =>
  writeStart(start, { stamp: { tab: newName(), count: 0, at: changed }, panel: id });

/** Gives a panel another name; answers whether the device took it. */
export async function rename(one: Listed, name: string, store: Store, { shelf }: Keeping): Promise<boolean> {
  if (one.isInHand) {
    store.send({ type: 'CHANGE', project: { name } });
    return true;
  }
  if (!one.work || !one.record || !shelf) return false;
  const { stamp: _stamp, panel: _panel, ...start } = one.work as Kept;
  const text = asText({ ...start, project: { ...start.project, name } }, one.record.id, one.changed);
  return (await shelf.put({ ...one.record, text }, one.record.text)) === 'put';
}

/** Puts the same panel beside it, under a free name; answers that, or null where there is no room. */
export async function copyOf(
  one: Listed,
  all: readonly Listed[],
  { shelf }: Keeping,
): Promise<string | null> {
  if (!one.work || !shelf) return null;
  const { stamp: _stamp, panel: _panel, ...start } = one.work as Kept;
  const name = freeName(start.project.name, namesOf(all));
  const id = newName();
  const changed = Date.now();
  const text = asText({ ...start, project: { ...start.project, name } }, id, changed);
  return (await shelf.put({ id, text, changed }, null)) === 'put' ? name : null;
}

/** A new panel begins as the example, under a free name. */
export const newPanel = (
  all: readonly Listed[],
  name: string,
): Pick<Start, 'project' | 'place' | 'answered'> => ({
  project: { ...example, name: freeName(name, namesOf(all)) },
  place: 0,
  answered: [],
});
