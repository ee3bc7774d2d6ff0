/** Bringing the focus, and the eye, to what came of a press. */

/** What was pressed is gone with the next drawing of the page: the focus goes on to what came of it. */
export function focusSoon(id: string): void {
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      const found = document.getElementById(id);
      found?.focus({ preventScroll: true });
      if (found) bringUp(found);
    }),
  );
}

/** To the top of the panel; in one column, below the drawing that stays. Beside the drawing only the panel moves. */
function bringUp(element: HTMLElement): void {
  const panel = element.closest('.panel');
  if (!panel || getComputedStyle(panel).overflowY !== 'auto') {
    element.scrollIntoView({ block: 'start' });
    return;
  }
  const from = panel.getBoundingClientRect().top;
  panel.scrollBy({ top: element.getBoundingClientRect().top - from - ROOM_ABOVE });
}

/** CSS px between the panel's top and what is brought there. */
const ROOM_ABOVE = 16;
