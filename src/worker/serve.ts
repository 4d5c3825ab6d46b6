/** A worker's side of work behind the page: requests in, answers out, their buffers handed over. */
import type { CreateRunner } from './background.ts';

/** What this file uses of a worker's scope; the page's types know none. */
interface Scope<Request, Answer> {
  onmessage: ((event: { readonly data: Request }) => void) | null;
  postMessage(message: Answer | 'ready', transfer: Transferable[]): void;
}

/** Does the work of `create` in this worker, and says that it is ready. */
export function serve<Request, Answer>(
  create: CreateRunner<Request, Answer>,
  handed: (answer: Answer) => Transferable[] = () => [],
): void {
  const scope = globalThis as unknown as Scope<Request, Answer>;
  // A message to oneself comes after requests that already wait: a turn of work ends in time to hear of a newer one.
  const { port1, port2 } = new MessageChannel();
  let next: (() => void) | null = null;
  port1.onmessage = () => next?.();
  const runner = create(
    (answer) => scope.postMessage(answer, handed(answer)),
    (run) => {
      next = run;
      port2.postMessage(null);
    },
    () => performance.now(),
  );
  scope.onmessage = ({ data }) => runner.ask(data);
  scope.postMessage('ready', []);
}
