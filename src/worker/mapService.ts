/** Fills travel–lock maps in a worker, or in the page's idle time where no worker starts. */
import {
  buffersOf,
  createMapRunner,
  type MapAnswer,
  type MapRequest,
  type MapRunner,
} from './mapJob.ts';

/** How long a worker may take to say that it is ready, ms: from a file a module worker fails without a word. */
const PATIENCE = 5000;

function idly(run: () => void): void {
  if (typeof requestIdleCallback === 'function') requestIdleCallback(run, { timeout: 100 });
  else setTimeout(run, 0);
}

/** Starts the service; `answer` is called in the page for every map that is filled. */
export function startMapService(answer: (answer: MapAnswer) => void): MapRunner {
  /** The newest request of each owner, asked again if the worker fails. */
  const newest = new Map<string, MapRequest>();
  let worker: Worker | null = null;
  let local: MapRunner | null = null;

  function fall(): void {
    if (local !== null) return;
    worker?.terminate();
    worker = null;
    local = createMapRunner(answer, idly, () => performance.now());
    for (const request of newest.values()) local.ask({ ...request, spare: [] });
  }

  try {
    worker = new Worker(new URL('./mapWorker.ts', import.meta.url), { type: 'module' });
    const patience = setTimeout(fall, PATIENCE);
    worker.onmessage = ({ data }: MessageEvent<MapAnswer | 'ready'>) => {
      clearTimeout(patience);
      if (data !== 'ready') answer(data);
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
      newest.set(request.owner, { ...request, spare: [] });
      if (worker !== null) worker.postMessage(request, request.spare.flatMap(buffersOf));
      else local?.ask(request);
    },
  };
}
