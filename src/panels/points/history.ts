/** Undo and redo from inside the drawer's fields, where the page's own keys leave the browser's typing alone. */
import { documentStore } from '../../state/bench.ts';

/** Fields in which nothing is being typed: a text with an open draft keeps Ctrl+Z for itself. */
const RESTING = '.points input:not([data-draft]), .points select';

function onKey(event: KeyboardEvent): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  if (!(event.target instanceof Element) || !event.target.matches(RESTING)) return;
  const key = event.key.toLowerCase();
  if (key === 'y' || (key === 'z' && event.shiftKey)) documentStore.redo();
  else if (key === 'z') documentStore.undo();
  else return;
  event.preventDefault();
}

/** Listens until the returned function is called. */
export function listenToHistoryKeys(): () => void {
  // In the capture phase: by the time others hear it, it is dealt with.
  addEventListener('keydown', onKey, { capture: true });
  return () => removeEventListener('keydown', onKey, { capture: true });
}
