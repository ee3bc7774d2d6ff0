/** The rule by which a pad or form is chosen, one segment each. */
import { html, type TemplateResult } from 'lit-html';
import type { PadRule } from '../../core/index.ts';
import { segmented } from '../controls/segmented.ts';
import { clothFields as f } from '../state/cloth-fields.ts';
import { padRuleOf } from '../state/cloth-stock.ts';
import { PAD_RULE_HEADING, PAD_RULE_NAMES, sayPadRule } from '../words/cloth/stock.ts';
import { choose, type Place } from './place.ts';

export function padRuleChoice(place: Place): TemplateResult {
  const rule = padRuleOf(place.cloth);
  return html`${segmented<PadRule>(
    PAD_RULE_HEADING,
    rule,
    (['usual', 'full', 'same'] as const).map((value) => ({ value, says: PAD_RULE_NAMES[value] })),
    (value) => choose(place, f.padRule, value),
  )}
  <p class="muted">${sayPadRule(rule, place.snapshot.settings.units)}</p>`;
}
