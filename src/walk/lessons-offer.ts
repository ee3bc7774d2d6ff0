/** The way into the lessons. */
import { html, type TemplateResult } from 'lit-html';

export const lessonsOffer = (open: () => void): TemplateResult =>
  html`<div class="lessons-offer">
    <h3>New to this?</h3>
    <p>Practise a part on a small piece. Your work stays where it is.</p>
    <button type="button" class="button" @click=${open}>Open the lessons</button>
  </div>`;
