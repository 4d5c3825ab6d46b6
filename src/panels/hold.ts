/** "Hold as yesterday": one switch for its button and its key. */
import { documentStore } from '../state/bench.ts';

export function toggleHold(): void {
  if (documentStore.getState().held === null) documentStore.hold();
  else documentStore.release();
}
