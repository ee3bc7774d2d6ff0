/** The schemas that all others are made of. */
import * as v from 'valibot';
import { cleanText } from './clean-text.ts';

export const textSchema = v.pipe(v.string(), v.transform(cleanText));

export const wholeSchema = (least: number, most: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(least), v.maxValue(most));
