/** The schemas that all others are made of. */
import * as v from 'valibot';
import { cleanText } from './clean-text.ts';

export const textSchema = v.pipe(v.string(), v.transform(cleanText));

export const wholeSchema = (least: number, most: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(least), v.maxValue(most));

/** Which step of the walk, counted from 0: how many there are is for the making to say. */
export const placeSchema = wholeSchema(0, Number.MAX_SAFE_INTEGER);

/** The questions of the walk that are answered, each once. */
export const answeredSchema = v.pipe(v.array(v.picklist(['twist', 'pad'])), v.maxLength(2));
