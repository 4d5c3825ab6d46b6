/** Other tabs of the same bench: they share one kept work, and the last to write it wins. That is said in words. */
import type { Notices } from './notices.ts';

const SHARED =
  'The bench is open in another tab too. Both keep their work in the same place: what is changed last is what will be found next time.';

/** What is needed of a BroadcastChannel. */
export interface TabChannel {
  postMessage(message: unknown): void;
  onmessage: ((event: MessageEvent) => void) | null;
}

/** Greets other tabs and says so when there are any; answers what tells them that work was kept here. */
export function watchTabs(channel: TabChannel | null, notices: Notices): () => void {
  if (channel === null) return () => undefined;
  channel.onmessage = ({ data }) => {
    if (data === 'opened') channel.postMessage('here');
    notices.say({ key: 'tabs', kind: 'status', text: SHARED });
  };
  channel.postMessage('opened');
  return () => channel.postMessage('kept');
}
