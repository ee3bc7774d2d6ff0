/** What waits to be told, most pressing first. Nothing here is lost by being told later. */
import type { Notice } from '../../words/notices.ts';

export type Notices = {
  list(): readonly Notice[];
  /** Called after every change. Gives back how to stop. */
  subscribe(listener: () => void): () => void;
  add(notice: Notice): void;
  dismiss(key: Notice['key']): void;
};

/** Work that could be lost comes first. */
const ORDER: readonly Notice['key'][] = [
  'kept-elsewhere',
  'not-kept',
  'panels-lost',
  'panels',
  'one-panel',
  'set-aside',
  'sent-panel',
  'sent-kept',
  'link-broken',
  'part-missing',
  'mishap-unfit',
  'choice-settled',
  'newer-version',
];

export function createNotices(): Notices {
  const listeners = new Set<() => void>();
  let notices: readonly Notice[] = [];
  const change = (next: readonly Notice[]): void => {
    notices = next;
    for (const listener of [...listeners]) listener();
  };
  const others = (key: Notice['key']): readonly Notice[] => notices.filter((notice) => notice.key !== key);
  return {
    list: () => notices,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    add: (notice) => change(inOrder([...others(notice.key), notice])),
    dismiss: (key) => {
      if (notices.some((notice) => notice.key === key)) change(others(key));
    },
  };
}

export const inOrder = (notices: readonly Notice[]): Notice[] =>
  notices.toSorted((one, other) => ORDER.indexOf(one.key) - ORDER.indexOf(other.key));
