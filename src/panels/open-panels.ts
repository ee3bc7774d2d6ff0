/** All panels, on a sheet of their own over the work. Fetched when it is first opened. */
import './panels.css';
import { html, nothing, render, type TemplateResult } from 'lit-html';
import { icon } from '../controls/more-icons.ts';
import { lasting } from '../input/write-kept.ts';
import { today } from '../keep/day.ts';
import type { Keeping } from '../keep/keep-types.ts';
import type { Shelved } from '../keep/shelf.ts';
import type { Store } from '../state/store.ts';
import { fileNameOf, saveFile } from '../take-along/save.ts';
import { panelsSay as say, sayCopied, sayTaken } from '../words/panels.ts';
import { openFile, saveAll, saveOne } from './files.ts';
import { copyOf, type Listed, listPanels, newPanel, rename } from './listed.ts';
import { deletedItem, panelItem, unreadItem } from './panel-item.ts';

type Sheet = { open(file?: File): Promise<void> };
let sheet: Sheet | null = null;

/** @param file opened as well: what came of it is told on the sheet */
export function openPanels(store: Store, keeping: Keeping, file?: File): Promise<void> {
  sheet ??= makeSheet(store, keeping);
  return sheet.open(file);
}

function makeSheet(store: Store, keeping: Keeping): Sheet {
  const dialog = document.createElement('dialog');
  dialog.className = 'sheet sheet-panels';
  dialog.setAttribute('aria-labelledby', 'panels-heading');
  document.body.append(dialog);
  let all: Listed[] = [];
  let gone: Shelved[] = [];
  let said = '';

  const draw = (): void => {
    const now = lasting(store.snapshot());
    const shown = all.map((one) => (one.isInHand ? { ...one, work: now } : one));
    render(view(shown), dialog);
  };
  const refresh = async (): Promise<void> => {
    all = await listPanels(store, keeping);
    draw();
  };
  /** What was pressed is gone, or stands for another panel now: the keyboard goes on from what takes it back. */
  const refocus = (selector: string): void =>
    (dialog.querySelector<HTMLElement>(selector) ?? dialog.querySelector('button'))?.focus();
  /** Does it, says what came of it, and shows the list anew. */
  const after = (act: () => Promise<string> | string, focus?: string) => async (): Promise<void> => {
    try {
      said = await act();
    } catch {
      said = say.noRoom;
    }
    await refresh().catch(draw);
    if (focus) refocus(focus);
  };

  const take = (one: Listed) =>
    after(async () => {
      const { work, record } = one;
      if (!work || !record || !(await keeping.shelving?.take(work, record))) return say.notTaken;
      dialog.close();
      return sayTaken(work.project.name);
    });
  const begin = after(async () => {
    const work = newPanel(all, say.fresh);
    if (!(await keeping.shelving?.take(work, null))) return say.notTaken;
    dialog.close();
    return sayTaken(work.project.name);
  });
  const remove = (one: Listed) =>
    after(async () => {
      const { shelf, shelving } = keeping;
      if (!shelf || !shelving) return say.noRoom;
      if (one.isInHand) {
        const next = all.find(({ isInHand, work }) => !isInHand && work);
        const isTaken =
          next?.work && next.record
            ? await shelving.take(next.work, next.record)
            : await shelving.take(newPanel([], say.fresh), null);
        if (!isTaken) return say.notTaken;
      }
      const record = one.id === null ? null : await shelf.get(one.id);
      if (record && !(await shelf.remove(record.id))) return say.noRoom;
      if (record) gone = [record, ...gone];
      return '';
    }, '.is-gone button');
  const bringBack = (record: Shelved) =>
    after(async () => {
      if ((await keeping.shelf?.put(record, null)) !== 'put') return say.noRoom;
      gone = gone.filter((one) => one !== record);
      return '';
    }, '.shelf-acts button');
  const acts = (one: Listed) => ({
    open: take(one),
    rename: (name: string) =>
      after(async () => ((await rename(one, name, store, keeping)) ? '' : say.noRoom))(),
    copy: after(async () => {
      const name = await copyOf(one, all, keeping);
      return name === null ? say.noRoom : sayCopied(name);
    }),
    save: after(() =>
      one.work ? saveOne({ ...one.work, ...(one.isInHand && lasting(store.snapshot())) }, today()) : '',
    ),
    saveText: () =>
      saveFile(one.record?.text ?? '', 'application/json', fileNameOf('ringtrue set aside', 'json')),
    remove: remove(one),
  });
  const saveEvery = after(() => {
    const works = all.flatMap(({ work, isInHand }) =>
      work ? [isInHand ? lasting(store.snapshot()) : work] : [],
    );
    return saveAll(works, all.length - works.length, today());
  });
  const pick = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const [file] = input.files ?? [];
    input.value = '';
    if (file) void after(() => openFile(file, store, keeping))();
  };

  const view = (shown: readonly Listed[]): TemplateResult => {
    const { shelf, shelving } = keeping;
    const isWhole = shelving !== null;
    const { hand } = store.snapshot().settings;
    return html`<div class="sheet-head">
        <h2 id="panels-heading">${say.heading}</h2>
        <button type="button" class="icon-button" aria-label=${say.close} @click=${() => dialog.close()}>${icon('close')}</button>
      </div>
      ${isWhole ? nothing : html`<p>${shelf ? say.lookedAt : say.onlyOne}</p>`}
      <div class="sheet-acts">
        ${isWhole ? html`<button type="button" class="button" @click=${begin}>${say.fresh}</button>` : nothing}
        ${
          isWhole || !shelf
            ? html`<button type="button" class="button" @click=${() => dialog.querySelector<HTMLInputElement>('#panels-file')?.click()}>${say.openFile}</button>
              <input type="file" id="panels-file" hidden accept=".json,.txt,application/json,text/plain" aria-label=${say.openFile} @change=${pick} />`
            : nothing
        }
        <button type="button" class="button" @click=${saveEvery}>${isWhole ? say.saveAll : say.saveThis}</button>
      </div>
      <p role="status" class="shelf-said">${said}</p>
      <ul class="shelf" role="list">
        ${gone.map((record) => deletedItem(keeping.device.read(record.text)?.project.name ?? '', bringBack(record)))}
        ${shown.map((one) =>
          one.work
            ? panelItem({ ...one, work: one.work }, { acts: acts(one), hand, isWhole })
            : unreadItem(acts(one)),
        )}
      </ul>`;
  };

  store.subscribe(() => dialog.open && draw());
  dialog.addEventListener('close', () => {
    gone = [];
    said = '';
  });
  return {
    open: async (file) => {
      if (file) said = await openFile(file, store, keeping);
      await refresh();
      if (!dialog.open) dialog.showModal();
    },
  };
}
