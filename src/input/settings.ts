/** How the app is shown, read back: every setting for itself, the standard where one cannot be read. */
import * as v from 'valibot';
import type { Settings } from '../state/snapshot.ts';

const colour = v.pipe(v.string(), v.regex(/^#[0-9a-f]{6}$/i));

/** Settings as they are kept; what is missing or odd is as in `standard`. */
export const settingsSchema = (standard: Settings) =>
  v.fallback(
    v.object({
      dialect: v.fallback(v.picklist(['uk', 'us']), standard.dialect),
      bothTerms: v.exactOptional(v.fallback(v.boolean(), false)),
      hand: v.fallback(v.picklist(['right', 'left']), standard.hand),
      units: v.fallback(v.picklist(['cm', 'inch']), standard.units),
      theme: v.fallback(v.picklist(['auto', 'light', 'dark']), standard.theme),
      manner: v.fallback(v.picklist(['corner-to-corner', 'stitch-by-stitch']), standard.manner),
      easing: v.fallback(v.picklist(['end', 'spread']), standard.easing),
      arrangement: v.fallback(v.picklist(['together', 'apart', 'diagram']), standard.arrangement),
      yarns: v.fallback(
        v.object({
          front: v.fallback(colour, standard.yarns.front),
          edging: v.fallback(colour, standard.yarns.edging),
          foundation: v.fallback(colour, standard.yarns.foundation),
        }),
        standard.yarns,
      ),
      // Slower than three a second: nothing flashes.
      pace: v.fallback(v.pipe(v.number(), v.integer(), v.minValue(350), v.maxValue(10_000)), standard.pace),
      readAloud: v.fallback(v.boolean(), standard.readAloud),
      stayAwake: v.fallback(v.boolean(), standard.stayAwake),
    }),
    standard,
  );

export const readSettings = (value: unknown, standard: Settings): Settings =>
  v.parse(settingsSchema(standard), value);
