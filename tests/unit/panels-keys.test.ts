import { describe, expect, test } from 'vitest';
import { keyParts, keysDialog } from '../../src/page/dialogs/keys-dialog.ts';
import { KEYS, keyName, rowFor } from '../../src/page/keys.ts';
import type { AppEvent, Snapshot } from '../../src/state/snapshot.ts';
import { flatten } from './panels-flatten.ts';

const press = (key: string, held: Partial<KeyboardEvent> = {}) =>
  keyName({ key, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, ...held });

describe('the keys', () => {
  test('no key stands for two things', () => {
    const all = KEYS.flatMap(({ keys }) => keys);
    expect(new Set(all).size).toBe(all.length);
  });

  test('single letters act only in the walk', () => {
    for (const { keys, scope } of KEYS)
      for (const key of keys) if (!key.startsWith('Control+')) expect(scope).toBe('walk');
  });

  test('every key has a row of help, in the words of the table', () => {
    const help = flatten(keysDialog());
    for (const { says, keys } of KEYS) {
      expect(help).toContain(says);
      for (const key of keys) for (const part of keyParts(key)) expect(help).toContain(`<kbd>${part}</kbd>`);
    }
  });

  test.each([
    [press('z', { ctrlKey: true }), 'anywhere', 'UNDO'],
    [press('z', { metaKey: true }), 'walk', 'UNDO'],
    [press('Z', { ctrlKey: true, shiftKey: true }), 'anywhere', 'REDO'],
    [press('ArrowRight'), 'walk', 'NEXT'],
    [press('M', { shiftKey: true }), 'walk', 'BACK'],
    [press('p'), 'walk', 'PLAY'],
  ] as const)('%s in %s sends %s', (name, scope, type) => {
    const sent: AppEvent[] = [];
    rowFor(name, scope)?.act((event) => sent.push(event), { playing: false } as Snapshot);
    expect(sent.map((event) => event.type)).toEqual([type]);
  });

  test.each([
    [press('m'), 'anywhere'],
    [press('ArrowRight'), 'anywhere'],
    [press('ArrowLeft', { altKey: true }), 'walk'],
    [press('x'), 'walk'],
  ] as const)('%s in %s does nothing', (name, scope) => {
    expect(rowFor(name, scope)).toBeUndefined();
  });
});
