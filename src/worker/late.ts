/** Work that the page itself does only where no worker starts: what does it is loaded then, and not before. */
import type { CreateRunner } from './background.ts';

/** A runner that is loaded when it is made; what is asked of it meanwhile waits. */
export function lately<Request, Answer>(
  load: () => Promise<CreateRunner<Request, Answer>>,
): CreateRunner<Request, Answer> {
  return (answer, later, clock) => {
    const runner = load().then((create) => create(answer, later, clock));
    return { ask: (request) => void runner.then((made) => made.ask(request)) };
  };
}
