/** What is done before and after; short, once, in place. */
import { html, type TemplateResult } from 'lit-html';
import { AFTER_HEADING, BEFORE, sayAfter } from '../words/cloth/care.ts';
import type { Place } from './place.ts';

export const beforeCare = (): TemplateResult => lines(BEFORE.heading, BEFORE.lines);

export function afterCare({ cloth, inside, snapshot }: Place): TemplateResult {
  const hasSides = snapshot.making.edge.sides.length > 1;
  return lines(AFTER_HEADING, sayAfter(cloth.becomes, inside, hasSides, snapshot.settings.dialect));
}

const lines = (heading: string, said: readonly string[]): TemplateResult => html`<details class="fold">
  <summary>${heading}</summary>
  <ul class="cloth-list">${said.map((line) => html`<li>${line}</li>`)}</ul>
</details>`;
