/** What the bench has to say in words beside its work: refusals of files, trouble with what is kept, other tabs. */
import { createStore } from 'zustand/vanilla';

export interface Notice {
  /** A newer notice of the same key replaces the older. */
  readonly key: string;
  /** An alert interrupts; a status waits its turn. */
  readonly kind: 'alert' | 'status';
  readonly text: string;
  /** Something a person can do about it. */
  readonly action?: { readonly label: string; readonly run: () => void };
}

export type Notices = ReturnType<typeof createNotices>;

export function createNotices() {
  const store = createStore<{ readonly list: readonly Notice[] }>(() => ({ list: [] }));
  const { getState, setState } = store;

  function without(key: string): readonly Notice[] {
    return getState().list.filter((notice) => notice.key !== key);
  }

  /** Shows a notice after those already there. */
  function say(notice: Notice): void {
    setState({ list: [...without(notice.key), notice] });
  }

  function dismiss(key: string): void {
    if (getState().list.some((notice) => notice.key === key)) setState({ list: without(key) });
  }

  return { ...store, say, dismiss };
}
