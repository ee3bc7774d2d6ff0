/** Counting a side of the front on a photo, offered under the counts. */
import type { TemplateResult } from 'lit-html';
import { photoOffer } from '../photo/offer.ts';
import { fieldNames } from '../state/fields.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import { fieldName } from '../words/problems-view.ts';

export function frontPhoto(snapshot: Snapshot, send: Send): TemplateResult {
  const { sideCount } = snapshot.project;
  const fields = Array.from({ length: Math.max(1, sideCount) }, (_, side) => fieldNames.side(side));
  return photoOffer(
    fields.map((field) => ({ field, name: fieldName(field, sideCount) })),
    snapshot,
    send,
  );
}
