/** Apart from the other notices: they are fetched later, and this is told where that fails. */
import type { Notice } from './notices.ts';

/** Without this part the page goes on, but cannot do all it should. */
export const partMissing = (openAgain: () => void): Notice => ({
  key: 'part-missing',
  says: 'A part of the page could not be fetched.',
  answers: [{ says: 'Open the page again', act: openAgain }, { says: 'Later' }],
});
