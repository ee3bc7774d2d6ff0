/** The part of the catalogue that is fetched with "Take along". */
import { pattern } from '../english/pattern.ts';
import { takeAlong } from '../english/take-along.ts';
import type { Language, Speaker } from '../speaker.ts';
import type { TakeAlongCatalogue } from './messages.ts';

const catalogues: Record<Language, TakeAlongCatalogue> = { en: { pattern, takeAlong } };

export const takeAlongIn = ({ language }: Speaker): TakeAlongCatalogue => catalogues[language];
