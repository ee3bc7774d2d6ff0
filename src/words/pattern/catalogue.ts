/** The part of the catalogue that is fetched with "Take along". */
import { lines } from '../english/lines.ts';
import { pattern } from '../english/pattern.ts';
import { sheets } from '../english/sheets.ts';
import { takeAlong } from '../english/take-along.ts';
import type { Language, Speaker } from '../speaker.ts';
import type { TakeAlongCatalogue } from './messages.ts';

const catalogues: Record<Language, TakeAlongCatalogue> = { en: { pattern, takeAlong, sheets, lines } };

export const takeAlongIn = ({ language }: Speaker): TakeAlongCatalogue => catalogues[language];
