/** Run before every file: what a test opened is closed, or made ready to be used again, after it. */
import { afterEach } from 'vitest';
import { closeAfterTest } from './pages.ts';

afterEach(({ task }) => closeAfterTest(task.result?.state === 'fail'));
