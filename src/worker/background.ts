/** Work behind the page: in a worker, or in the page's idle time where no worker starts. */

/** How long a worker may take to say that it is ready, ms: from a file a module worker fails without a word. */
const PATIENCE = 5000;

/** Takes requests; what it answers, and when, is its own affair. */
export interface Runner<Request> {
  ask(request: Request): void;
}

/** Makes a runner. `later` runs a function soon, after whatever waits; `clock` counts ms. */
export type CreateRunner<Request, Answer> = (
  answer: (answer: Answer) => void,
  later: (run: () => void) => void,
  clock: () => number,
) => Runner<Request>;

export interface BackgroundParts<Request, Answer> {
  /** Starts the worker. It posts 'ready' first, then answers. */
  readonly spawn: () => Worker;
  /** Does the same work in the page. */
  readonly create: CreateRunner<Request, Answer>;
  /** Whose request it is: the newest of each is asked again if the worker fails. */
  readonly ownerOf: (request: Request) => string;
  /** What is handed over with a request, and the request without it. */
  readonly handed?: (request: Request) => Transferable[];
  readonly bare?: (request: Request) => Request;
}

/** A runner that can be put an end to. */
export interface Background<Request> extends Runner<Request> {
  stop(): void;
}

function idly(run: () => void): void {
  if (typeof requestIdleCallback === 'function') requestIdleCallback(run, { timeout: 100 });
  else setTimeout(run, 0);
}

/** Starts the work; `answer` is called in the page with every answer until it is stopped. */
export function startBackground<Request, Answer>(
  parts: BackgroundParts<Request, Answer>,
  answer: (answer: Answer) => void,
): Background<Request> {
  const { spawn, create, ownerOf, handed = () => [], bare = (request) => request } = parts;
  const newest = new Map<string, Request>();
  let worker: Worker | null = null;
  let local: Runner<Request> | null = null;
  let isStopped = false;
  const told = (given: Answer): void => {
    if (!isStopped) answer(given);
  };

  function fall(): void {
    if (local !== null || isStopped) return;
    worker?.terminate();
    worker = null;
    local = create(told, idly, () => performance.now());
    for (const request of newest.values()) local.ask(bare(request));
  }

  try {
    worker = spawn();
    const patience = setTimeout(fall, PATIENCE);
    worker.onmessage = ({ data }: MessageEvent<Answer | 'ready'>) => {
      clearTimeout(patience);
      if (data !== 'ready') told(data);
    };
    worker.onerror = (event) => {
      event.preventDefault();
      clearTimeout(patience);
      fall();
    };
  } catch {
    fall();
  }

  return {
    ask(request) {
      newest.set(ownerOf(request), bare(request));
      if (worker !== null) worker.postMessage(request, handed(request));
      else local?.ask(request);
    },
    stop() {
      isStopped = true;
      worker?.terminate();
      worker = null;
    },
  };
}
