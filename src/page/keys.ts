/**
 * Every key the page listens to, once: the listener and the help page are both made from this table.
 * Letters and arrows act only while the walk has the focus, so that typing never sets anything off. There is one undo,
 * the app's, wherever the focus is.
 */
import type { Send, Snapshot, Unit } from '../state/snapshot.ts';

export type KeyScope = 'anywhere' | 'walk';

export type KeyRow = {
  /** As in `KeyboardEvent.key`, with `Control+` and `Shift+` before it. */
  keys: string[];
  scope: KeyScope;
  says: string;
  act: (send: Send, snapshot: Snapshot) => void;
};

const next = (by: Unit) => (send: Send) => send({ type: 'NEXT', by });
const back = (by: Unit) => (send: Send) => send({ type: 'BACK', by });

export const KEYS: readonly KeyRow[] = [
  { keys: ['Control+z'], scope: 'anywhere', says: 'Undo', act: (send) => send({ type: 'UNDO' }) },
  {
    keys: ['Control+Shift+Z', 'Control+y'],
    scope: 'anywhere',
    says: 'Redo',
    act: (send) => send({ type: 'REDO' }),
  },
  { keys: ['ArrowRight'], scope: 'walk', says: 'Next stitch', act: next('stitch') },
  { keys: ['ArrowLeft'], scope: 'walk', says: 'One stitch back', act: back('stitch') },
  { keys: ['m'], scope: 'walk', says: 'On to the next marker', act: next('marker') },
  { keys: ['Shift+M'], scope: 'walk', says: 'Back to the last marker', act: back('marker') },
  { keys: ['c'], scope: 'walk', says: 'On to the next corner', act: next('corner') },
  { keys: ['Shift+C'], scope: 'walk', says: 'Back to the last corner', act: back('corner') },
  { keys: ['PageDown', 's'], scope: 'walk', says: 'On to the next side', act: next('side') },
  { keys: ['PageUp', 'Shift+S'], scope: 'walk', says: 'Back to the last side', act: back('side') },
  { keys: ['r'], scope: 'walk', says: 'On to the next round', act: next('round') },
  { keys: ['Shift+R'], scope: 'walk', says: 'Back to the last round', act: back('round') },
  {
    keys: ['p'],
    scope: 'walk',
    says: 'Play or stop',
    act: (send, { playing }) => send({ type: playing ? 'STOP' : 'PLAY' }),
  },
];

/** The name of a pressed key as the table writes it; Command counts as Control. */
export function keyName(
  event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey'>,
): string {
  if (event.altKey) return '';
  const parts = [event.ctrlKey || event.metaKey ? 'Control' : '', event.shiftKey ? 'Shift' : '', event.key];
  return parts.filter(Boolean).join('+');
}

/** The row for a key in a scope, or none. Keys of `anywhere` act in the walk as well. */
export function rowFor(name: string, scope: KeyScope): KeyRow | undefined {
  return KEYS.find((row) => row.keys.includes(name) && (row.scope === 'anywhere' || row.scope === scope));
}

/** In which scope a key press falls. What takes letters and arrows itself is not of the walk. */
function scopeOf(target: Element | null): KeyScope {
  if (target?.closest('input, select, textarea, [contenteditable], [role="grid"], dialog')) return 'anywhere';
  return target?.closest('[data-keys="walk"]') ? 'walk' : 'anywhere';
}

/** The browser's own undo, from its menu say, knows one field only and would take back what was typed long ago. */
const BROWSERS_OWN: Partial<Record<string, 'UNDO' | 'REDO'>> = { historyUndo: 'UNDO', historyRedo: 'REDO' };

/** Listens wherever the focus is, nothing focused included. Gives back how to stop. */
export function listenToKeys(snapshot: () => Snapshot, send: Send): () => void {
  const press = (event: KeyboardEvent): void => {
    const row = rowFor(keyName(event), scopeOf(event.target as Element | null));
    if (!row) return;
    event.preventDefault();
    row.act(send, snapshot());
  };
  const input = (event: InputEvent): void => {
    const type = BROWSERS_OWN[event.inputType];
    if (!type) return;
    event.preventDefault();
    send({ type });
  };
  document.addEventListener('keydown', press);
  document.addEventListener('beforeinput', input);
  return () => {
    document.removeEventListener('keydown', press);
    document.removeEventListener('beforeinput', input);
  };
}
