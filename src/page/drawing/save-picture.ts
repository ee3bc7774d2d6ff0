/** Saving the drawing of the whole panel as a picture, on this device. */
import { html, nothing, type TemplateResult } from 'lit-html';
import type { Project, Snapshot } from '../../state/snapshot.ts';
import { sayVerdict } from '../../words/verdict.ts';
import type { TableControls } from './table-controls.ts';

/** Picture points across: two pages side by side are still sharp in print. */
export const PICTURE_WIDTH = 2400;

/** Long enough for a browser that asks where to put the file. */
const KEEP_ADDRESS_MS = 60_000;
const LONGEST_NAME = 60;

export function savePictures(snapshot: Snapshot, controls: () => TableControls | null): TemplateResult {
  const { project } = snapshot;
  const table = controls();
  const off = table?.exportSvg && table.exportPng ? nothing : 'true';
  const save = async (event: Event, kind: 'png' | 'svg'): Promise<void> => {
    const told = (event.currentTarget as Element).closest('.pictures')?.querySelector('[role="status"]');
    try {
      const picture = await pictureOf(snapshot, controls(), kind);
      if (picture) download(picture, fileName(project, kind));
      if (told) told.textContent = '';
    } catch {
      if (told) told.textContent = 'This browser could not make the picture. The other kind may do.';
    }
  };
  return html`<div class="choice pictures">
    <h3>The drawing as a picture</h3>
    <div class="picture-buttons">
      <button type="button" class="button" aria-disabled=${off} @click=${(event: Event) => save(event, 'png')}>Save picture (PNG)</button>
      <button type="button" class="button" aria-disabled=${off} @click=${(event: Event) => save(event, 'svg')}>Save picture (SVG)</button>
    </div>
    <p class="muted" role="status"></p>
  </div>`;
}

async function pictureOf(
  { project, making, settings }: Snapshot,
  table: TableControls | null,
  kind: 'png' | 'svg',
): Promise<Blob | null> {
  if (kind === 'png') return (await table?.exportPng?.('whole', PICTURE_WIDTH)) ?? null;
  const { head, body } = sayVerdict(making, settings);
  const text = table?.exportSvg?.('whole', [project.name, head, body].filter(Boolean).join(' · '));
  return text === undefined ? null : new Blob([text], { type: 'image/svg+xml' });
}

function download(picture: Blob, name: string): void {
  const address = URL.createObjectURL(picture);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), KEEP_ADDRESS_MS);
}

/** "Window-seat cushion" → "window-seat-cushion.png": letters and digits of any script, with single hyphens. */
export function fileName({ name }: Pick<Project, 'name'>, ending: string): string {
  const plain = name
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-');
  const cut = [...plain.replace(/^-+/, '')].slice(0, LONGEST_NAME).join('').replace(/-+$/, '');
  // Some systems keep these names for devices.
  const kept = /^(con|prn|aux|nul|com\d|lpt\d)$/.test(cut) ? `${cut}-panel` : cut;
  return `${kept || 'ringtrue'}.${ending}`;
}
