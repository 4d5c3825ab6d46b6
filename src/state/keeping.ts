/** Keeps the page's bench: its work, its inputs and its view, from one visit to the next. */
import { documentStore, inputs, notices, view } from './bench.ts';
import { keepDocument } from './keep.ts';
import { keepInputs, keepView } from './preferences.ts';
import { createArchive, createShelf } from './shelf.ts';
import { watchTabs } from './tabs.ts';

/** Null where the browser has none, or refuses it. */
function openChannel(): BroadcastChannel | null {
  try {
    return new BroadcastChannel('armscribe');
  } catch {
    return null;
  }
}

let isRestored: Promise<void> = Promise.resolve();

/** Settles when all of the work of an earlier visit is back, history and all. */
export function workRestored(): Promise<void> {
  return isRestored;
}

/** To be called once, before the first render: what the shelf holds is on the bench when this returns. */
export function startKeeping(): void {
  const shelf = createShelf(() => localStorage);
  const { flush, restored } = keepDocument({
    documentStore,
    notices,
    shelf,
    archive: createArchive(),
    now: Date.now,
    onKept: watchTabs(openChannel(), notices),
    // Needed only where a kept work cannot be read.
    saveText: (text, fileName) =>
      void import('../files/save.ts').then(({ saveText }) => saveText(text, fileName)),
  });
  isRestored = restored;
  keepView(view, shelf);
  const flushInputs = keepInputs(inputs, shelf);
  const flushAll = (): void => {
    flush();
    flushInputs();
  };
  addEventListener('pagehide', flushAll);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') flushAll();
  });
}
