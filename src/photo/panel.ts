/** The page of counting on a photo: the photo above, the strip below, and what to do next. */
import { html, nothing, type TemplateResult } from 'lit-html';
import { icon as headIcon } from '../controls/icons.ts';
import { icon } from '../controls/more-icons.ts';
import {
  photoWords as say,
  sayCounts,
  sayFileProblem,
  sayGap,
  sayHeading,
  sayKeptFor,
  sayLookOver,
  sayMore,
  sayOtherNumber,
  sayPlace,
  sayPoint,
  sayProgress,
  sayPutIn,
  sayTheseAreRight,
  sayTooLarge,
  sayWithCorners,
} from '../words/photo.ts';
import { alongOf, lineOf, lookedAlong, openStretch, setCount } from './counting.ts';
import { mostMegabytes } from './file.ts';
import { gapOn, inField, isOwn, numberFor } from './number.ts';
import type { PhotoCanvas } from './photo-canvas.ts';
import { evenlyOn } from './propose.ts';
import type { Session } from './session.ts';
import { markAtPlace, type StripCanvas } from './strip-canvas.ts';
import { heldLeft, type View, zoomOf } from './view.ts';

export type Hands = {
  session: Session;
  photo: PhotoCanvas;
  strip: StripCanvas;
  close(): void;
  /** Puts the number into the field. */
  putIn(text: string): void;
};

export function photoPanel(hands: Hands): TemplateResult {
  const view = hands.session.view();
  return html`<div class="sheet-head">
      <h2 id="photo-heading">${sayHeading(view.name)}</h2>
      <button type="button" class="icon-button" aria-label=${say.close} @click=${hands.close}>${icon('close')}</button>
    </div>
    ${problem(view)}
    ${view.photo ? counting(hands, view) : taking(hands, view)}
    <p class="photo-said" role="status">${view.said}</p>`;
}

function problem({ problem: found }: View): TemplateResult | typeof nothing {
  if (!found) return nothing;
  const says = found === 'too-large' ? sayTooLarge(mostMegabytes) : sayFileProblem(found);
  return html`<p class="photo-problem" role="alert">${says}</p>`;
}

/** A button that opens the device's camera or its files. */
function fileButton(
  { session }: Hands,
  { says, isCamera, strong }: { says: string; isCamera?: boolean; strong?: boolean },
): TemplateResult {
  const chosen = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    input.value = '';
    if (file) session.take(file);
  };
  return html`<label class="button photo-file ${strong ? 'action' : ''}">${says}
    <input type="file" accept="image/*" capture=${isCamera ? 'environment' : nothing} @change=${chosen} /></label>`;
}

function taking(hands: Hands, { isReading }: View): TemplateResult {
  if (isReading) return html`<p class="muted" role="status">${say.reading}</p>`;
  return html`<div class="photo-taking">
    <p>${say.hint} ${say.advice}</p>
    ${fileButton(hands, { says: say.take, isCamera: true, strong: true })}
    ${fileButton(hands, { says: say.pick })}
    <p>${say.drop}</p>
    <p class="muted">${say.stays}</p>
  </div>`;
}

function counting(hands: Hands, view: View): TemplateResult {
  const { session, photo } = hands;
  const on = (act: (event: PointerEvent) => void) => (event: Event) => act(event as PointerEvent);
  return html`${gap(view)}
    <canvas class="photo-canvas" tabindex="0" role="application" aria-label=${say.photo} aria-describedby="photo-keys photo-point"
      @pointerdown=${on((event) => photo.down(event, session.view()))}
      @pointermove=${on((event) => photo.move(event, session.view()))}
      @pointerup=${on((event) => photo.up(event, session.view(), session))}
      @pointercancel=${photo.cancel}
      @keydown=${(event: KeyboardEvent) => photo.key(event, session.view(), session)}></canvas>
    <p class="unseen" id="photo-point" role="status">${view.inHand === null ? '' : sayPoint(view.inHand, view.counting.now.through.length)}</p>
    ${bendOut(hands, view)}
    ${
      lineOf(view.counting.now)
        ? stripPart(hands, view)
        : html`<p class="photo-next">${view.counting.now.through.length === 0 ? say.firstEnd : say.lastEnd}</p>
      <div class="photo-tools">${undoing(hands, view)}</div>`
    }
    ${more(hands, view)}`;
}

/** What is known of a gap along this side, once its number came from this photo. */
function gap(view: View): TemplateResult | typeof nothing {
  const surplus = gapOn(view);
  if (surplus !== 0) return html`<p class="photo-gap">${sayGap(surplus)}</p>`;
  const { counted } = view;
  const isOther = counted !== null && isOwn(view) && counted !== inField(view);
  return isOther ? html`<p class="photo-next">${sayOtherNumber(counted, inField(view))}</p>` : nothing;
}

function undoing({ session }: Hands, view: View): TemplateResult {
  const { past, future } = view.counting;
  return html`<button type="button" class="icon-button" aria-label=${say.undo} aria-disabled=${past.length === 0 ? 'true' : nothing} @click=${() => session.act({ type: 'UNDO' })}>${headIcon('undo')}</button>
    <button type="button" class="icon-button" aria-label=${say.redo} aria-disabled=${future.length === 0 ? 'true' : nothing} @click=${() => session.act({ type: 'REDO' })}>${headIcon('redo')}</button>`;
}

/** Takes the bend in hand away. */
function bendOut({ session }: Hands, { counting: { now }, inHand }: View): TemplateResult | typeof nothing {
  if (inHand === null || inHand === 0 || inHand >= now.through.length - 1) return nothing;
  const press = (): void => session.act({ type: 'REMOVE_POINT', point: inHand });
  return html`<button type="button" class="button" @click=${press}>${say.remove}</button>`;
}

function stripPart(hands: Hands, view: View): TemplateResult {
  const { session, strip } = hands;
  const length = lineOf(view.counting.now)?.length ?? 1;
  const on = (act: (event: PointerEvent) => void) => (event: Event) => act(event as PointerEvent);
  const shown = (event: Event): number => stripWidth(event) / zoomOf(view);
  const stepBy = (parts: number) => (event: Event) => {
    const width = stripWidth(event);
    session.change({ left: heldLeft(view, heldLeft(view, view.left, width) + parts * shown(event), width) });
  };
  const closerBy = (times: number) => (event: Event) => {
    const middle = view.left + shown(event) / 2;
    const zoom = Math.min(8, Math.max(0.1, zoomOf(view) * times));
    session.change({ zoom, left: middle - stripWidth(event) / zoom / 2 });
  };
  const button = (
    name: 'left' | 'right' | 'closer' | 'farther',
    says: string,
    press: (event: Event) => void,
  ) =>
    html`<button type="button" class="icon-button" aria-label=${says} @click=${press}>${icon(name)}</button>`;
  const percent = Math.round((100 * Math.min(length, Math.max(0, view.place))) / Math.max(1, length));
  return html`<div class="photo-strip">
      <canvas class="strip-canvas" tabindex="0" role="application" aria-label=${say.strip} aria-describedby="strip-keys"
        @pointerdown=${on((event) => strip.down(event, session.view()))}
        @pointermove=${on((event) => strip.move(event, session.view(), session))}
        @pointerup=${on((event) => strip.up(event, session.view(), session))}
        @pointercancel=${strip.cancel}
        @keydown=${(event: KeyboardEvent) => strip.key(event, session.view(), session)}></canvas>
      <div class="photo-tools">
        ${undoing(hands, view)}
        ${button('left', say.left, stepBy(-0.8))} ${button('right', say.right, stepBy(0.8))}
        ${button('farther', say.farther, closerBy(0.7))} ${button('closer', say.closer, closerBy(1.4))}
      </div>
    </div>
    <p class="unseen" role="status">${sayPlace(markAtPlace(view), percent)}</p>
    ${next(hands, view)}`;
}

/** Width of the strip beside a button of it. */
const stripWidth = (event: Event): number =>
  (event.target as Element).closest('.photo-strip')?.querySelector('canvas')?.clientWidth ?? 320;

/** What to do now, and the one button for it. */
function next(hands: Hands, view: View): TemplateResult {
  const { session } = hands;
  const { now } = view.counting;
  const set = setCount(now);
  const stretch = openStretch(now);
  const proposed = now.marks.length - set;
  const counts = html`<p class="photo-counts"><b>${sayCounts(set, proposed)}</b></p>`;
  if (view.progress !== null)
    return html`${counts}<div class="photo-next">
      <label>${sayProgress(view.progress)} <progress max="1" .value=${view.progress}></progress></label>
      <button type="button" class="button" @click=${session.stop}>${say.stop}</button>
    </div>`;
  if (stretch)
    return html`${counts}<div class="photo-next">
      <p>${sayLookOver(proposed - stretch.open)}</p>
      <button type="button" class="button action" @click=${session.lookOver}>${sayTheseAreRight(stretch.size)}</button>
      <button type="button" class="button" @click=${() => session.act({ type: 'DROP_PROPOSED' })}>${say.dropProposed}</button>
    </div>`;
  const line = lineOf(now);
  const ask = { marks: alongOf(now), lookedTo: lookedAlong(now) };
  const hasMore = set >= 3 && line !== null && evenlyOn({ line, ...ask }).length > 0;
  return html`${counts}<div class="photo-next">
    <p>${set === 0 ? say.bend : say.tapStrip} ${set > 0 && set < 3 ? sayMore(set) : ''}</p>
    ${hasMore ? html`<button type="button" class="button action" @click=${session.propose}>${say.propose}</button>` : nothing}
    ${set > 0 ? putIn(hands, view, { set, strong: !hasMore }) : nothing}
  </div>`;
}

function putIn(hands: Hands, view: View, { set, strong }: { set: number; strong: boolean }): TemplateResult {
  const { stitches, corners } = numberFor(view.field, set, view.snapshot);
  const number = stitches + corners;
  return html`<p class="muted">${corners > 0 ? sayWithCorners(stitches, corners) : say.chains}</p>
    <button type="button" class="button ${strong ? 'action' : ''}" @click=${() => hands.putIn(`${number}`)}>${sayPutIn(number, view.name)}</button>`;
}

function more(hands: Hands, view: View): TemplateResult {
  return html`${isOwn(view) ? nothing : html`<p>${sayKeptFor(view.panel)}</p>`}
    <div class="photo-more">
      ${fileButton(hands, { says: say.other })}
      <button type="button" class="button" @click=${hands.session.forget}>${say.forget}</button>
    </div>
    <details class="fold"><summary>${say.keys}</summary>
      <h3>${say.keysPhoto}</h3><p id="photo-keys">${say.photoKeys}</p>
      <h3>${say.keysStrip}</h3><p id="strip-keys">${say.stripKeys}</p>
    </details>`;
}
