/** The search in a thread of its own. A message is a question; each answer is one turn of it. */
import type { Question, Turn } from './question.ts';
import { turnsOf } from './turns.ts';

addEventListener('message', ({ data }: MessageEvent<Question>) => {
  for (const turn of turnsOf(data)) postMessage(turn satisfies Turn);
});
