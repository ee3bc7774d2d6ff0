/**
 * One spoken message for each thing that happened. Waits until the state rests, empties a live element,
 * and fills the next of four, so that no voice cuts itself off or leaves a repeated sentence out.
 */
const REST_MS = 200;
const GAP_MS = 200;
const LIVE_ELEMENTS = 4;

export type Announcer = { say(message: string): void; stop(): void };

export function announcer(host: HTMLElement): Announcer {
  const elements = Array.from({ length: LIVE_ELEMENTS }, () => {
    const element = document.createElement('p');
    element.setAttribute('role', 'status');
    element.setAttribute('aria-live', 'polite');
    element.className = 'unseen';
    host.append(element);
    return element;
  });
  let turn = 0;
  let waiting: ReturnType<typeof setTimeout> | undefined;

  const speak = (message: string): void => {
    for (const element of elements) element.textContent = '';
    turn = (turn + 1) % LIVE_ELEMENTS;
    const element = elements[turn] as HTMLElement;
    waiting = setTimeout(() => {
      element.textContent = message;
    }, GAP_MS);
  };
  return {
    say: (message) => {
      clearTimeout(waiting);
      waiting = setTimeout(() => speak(message), REST_MS);
    },
    stop: () => {
      clearTimeout(waiting);
      for (const element of elements) element.remove();
    },
  };
}
