/** The worker that fills travel–lock maps. Requests in, answers out, their buffers handed over. */
import { buffersOf, createMapRunner, type MapAnswer, type MapRequest } from './mapJob.ts';

/** What this file uses of a worker's scope; the page's types know none. */
interface Scope {
  onmessage: ((event: { readonly data: MapRequest }) => void) | null;
  postMessage(message: MapAnswer | 'ready', transfer: Transferable[]): void;
}

const scope = globalThis as unknown as Scope;

// A message to oneself comes after requests that already wait: a turn of work ends in time to hear of a newer one.
const { port1, port2 } = new MessageChannel();
let next: (() => void) | null = null;
port1.onmessage = () => next?.();

const runner = createMapRunner(
  (answer) => scope.postMessage(answer, buffersOf(answer.map)),
  (run) => {
    next = run;
    port2.postMessage(null);
  },
  () => performance.now(),
);

scope.onmessage = ({ data }) => runner.ask(data);
scope.postMessage('ready', []);
