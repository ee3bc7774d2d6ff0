/** Opens counting on a photo for a field, in a sheet over the page. */
import './photo.css';
import { render } from 'lit-html';
import { goToField } from '../controls/go-to.ts';
import type { Field, Send, Snapshot } from '../state/snapshot.ts';
import { fileIn } from './file.ts';
import { photoPanel } from './panel.ts';
import { photoCanvas } from './photo-canvas.ts';
import { openSession, type Session } from './session.ts';
import { stripCanvas } from './strip-canvas.ts';

type Of = { field: Field; name: string; snapshot: Snapshot; send: Send };

export function openPhoto(of: Of): void {
  const sheet = document.createElement('dialog');
  sheet.className = 'sheet sheet-photo';
  sheet.setAttribute('aria-labelledby', 'photo-heading');
  let frame = 0;
  const draw = (): void => {
    frame = 0;
    if (!sheet.isConnected) return;
    const held = sheet.contains(document.activeElement);
    render(photoPanel(hands), sheet);
    drawCanvases(sheet, hands);
    // What was pressed is gone: the keyboard goes on from the sheet.
    if (held && !sheet.contains(document.activeElement)) sheet.focus({ preventScroll: true });
  };
  const drawSoon = (): void => {
    frame ||= requestAnimationFrame(draw);
  };
  const session = openSession(of, drawSoon);
  const hands = {
    session,
    photo: photoCanvas(drawSoon),
    strip: stripCanvas(),
    close: () => sheet.close(),
    putIn: (text: string): void => {
      session.counted(text);
      of.send({ type: 'TYPE', field: of.field, text });
      sheet.close();
      goToField(of.field, of.snapshot, of.send);
    },
  };
  const listening = listen(sheet, session);
  const sizes = new ResizeObserver(drawSoon);
  sizes.observe(sheet);
  sheet.addEventListener('close', () => {
    listening.abort();
    sizes.disconnect();
    cancelAnimationFrame(frame);
    session.end();
    sheet.remove();
  });
  sheet.tabIndex = -1;
  document.body.append(sheet);
  draw();
  sheet.showModal();
}

/** Undo, pasting and dropping, wherever in the sheet. The page behind it hears none of its keys. */
function listen(sheet: HTMLElement, session: Session): AbortController {
  const off = new AbortController();
  const { signal } = off;
  const take = (event: Event, data: DataTransfer | null): void => {
    const file = fileIn(data);
    if (!file) return;
    event.preventDefault();
    session.take(file);
  };
  sheet.addEventListener(
    'keydown',
    (event) => {
      event.stopPropagation();
      if (!event.ctrlKey && !event.metaKey) return;
      const key = event.key.toLowerCase();
      const isRedo = key === 'y' || (key === 'z' && event.shiftKey);
      if (!isRedo && key !== 'z') return;
      event.preventDefault();
      session.act({ type: isRedo ? 'REDO' : 'UNDO' });
    },
    { signal },
  );
  document.addEventListener('paste', (event) => take(event, event.clipboardData), { signal });
  sheet.addEventListener('dragover', (event) => event.preventDefault(), { signal });
  sheet.addEventListener(
    'drop',
    (event) => {
      event.preventDefault();
      take(event, event.dataTransfer);
    },
    { signal },
  );
  return off;
}

function drawCanvases(
  sheet: HTMLElement,
  { session, photo, strip }: { session: Session } & Pick<Parameters<typeof photoPanel>[0], 'photo' | 'strip'>,
): void {
  const view = session.view();
  const photoPaper = sheet.querySelector<HTMLCanvasElement>('.photo-canvas');
  const stripPaper = sheet.querySelector<HTMLCanvasElement>('.strip-canvas');
  if (photoPaper && view.photo) {
    photoPaper.style.setProperty('--ratio', `${view.photo.width} / ${view.photo.height}`);
    photo.draw(photoPaper, view);
  }
  if (!stripPaper) return;
  if (stripPaper.clientWidth !== view.width) session.change({ width: stripPaper.clientWidth });
  const style = getComputedStyle(sheet);
  const colour = (name: string): string => style.getPropertyValue(name).trim();
  strip.draw(stripPaper, view, { flag: colour('--accent'), ground: colour('--well'), ink: colour('--ink') });
}
