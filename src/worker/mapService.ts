/** Fills travel–lock maps behind the page. */
import { type Background, startBackground } from './background.ts';
import { lately } from './late.ts';
import { buffersOf } from './mapBuffers.ts';
import type { MapAnswer, MapRequest } from './mapJob.ts';
import type { MeshSending } from './meshShelf.ts';

export type MapService = Background<MapRequest | MeshSending>;

/** Starts the service; `answer` is called in the page for every map that is filled. */
export function startMapService(answer: (answer: MapAnswer) => void): MapService {
  return startBackground<MapRequest | MeshSending, MapAnswer>(
    {
      spawn: () => new Worker(new URL('./mapWorker.ts', import.meta.url), { type: 'module' }),
      create: lately(() => import('./mapJob.ts').then((job) => job.createMapRunner)),
      ownerOf: (request) => (request.kind === 'mesh' ? `mesh ${request.key}` : request.owner),
      handed: (request) => (request.kind === 'mesh' ? [] : request.spare.flatMap(buffersOf)),
      bare: (request) => (request.kind === 'mesh' ? request : { ...request, spare: [] }),
    },
    answer,
  );
}
