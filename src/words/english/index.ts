/** English: every sentence, by what it is about. */
import type { Catalogue } from '../messages.ts';
import { problems } from './problems.ts';

export const english: Catalogue = { problems };
