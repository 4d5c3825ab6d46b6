/** Finds what stops the wheel, behind the page. */
import { type Background, startBackground } from './background.ts';
import { lately } from './late.ts';
import type { StopsAnswer, StopsRequest } from './stopsJob.ts';

/** Starts the service; `answer` is called in the page for every question that is answered. */
export function startStopsService(answer: (answer: StopsAnswer) => void): Background<StopsRequest> {
  return startBackground<StopsRequest, StopsAnswer>(
    {
      spawn: () => new Worker(new URL('./stopsWorker.ts', import.meta.url), { type: 'module' }),
      create: lately(() => import('./stopsJob.ts').then((job) => job.createStopsRunner)),
      ownerOf: (request) => (request.kind === 'mesh' ? `mesh ${request.key}` : request.kind),
    },
    answer,
  );
}
