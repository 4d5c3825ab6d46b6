/** Fills travel–lock maps behind the page. */
import { type Background, type Runner, startBackground } from './background.ts';
import { buffersOf } from './mapBuffers.ts';
import type { MapAnswer, MapRequest } from './mapJob.ts';
import type { MeshSending } from './meshShelf.ts';

export type MapService = Background<MapRequest | MeshSending>;

/** Where no worker starts the page does the work, and only then loads what does it. */
function createLate(
  answer: (answer: MapAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
): Runner<MapRequest | MeshSending> {
  const loaded = import('./mapJob.ts').then(({ createMapRunner }) =>
    createMapRunner(answer, later, clock),
  );
  return { ask: (request) => void loaded.then((runner) => runner.ask(request)) };
}

/** Starts the service; `answer` is called in the page for every map that is filled. */
export function startMapService(answer: (answer: MapAnswer) => void): MapService {
  return startBackground<MapRequest | MeshSending, MapAnswer>(
    {
      spawn: () => new Worker(new URL('./mapWorker.ts', import.meta.url), { type: 'module' }),
      create: createLate,
      ownerOf: (request) => (request.kind === 'mesh' ? `mesh ${request.key}` : request.owner),
      handed: (request) => (request.kind === 'mesh' ? [] : request.spare.flatMap(buffersOf)),
      bare: (request) => (request.kind === 'mesh' ? request : { ...request, spare: [] }),
    },
    answer,
  );
}
