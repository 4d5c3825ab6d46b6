/** Fills travel–lock maps behind the page. */
import { startBackground } from './background.ts';
import {
  buffersOf,
  createMapRunner,
  type MapAnswer,
  type MapRequest,
  type MapRunner,
} from './mapJob.ts';

/** Starts the service; `answer` is called in the page for every map that is filled. */
export function startMapService(answer: (answer: MapAnswer) => void): MapRunner {
  return startBackground<MapRequest, MapAnswer>(
    {
      spawn: () => new Worker(new URL('./mapWorker.ts', import.meta.url), { type: 'module' }),
      create: createMapRunner,
      ownerOf: ({ owner }) => owner,
      handed: ({ spare }) => spare.flatMap(buffersOf),
      bare: (request) => ({ ...request, spare: [] }),
    },
    answer,
  );
}
