/** Finds alignment settings, behind the page. */
import type { AlignAnswer, AlignRequest } from './alignJob.ts';
import { type Background, startBackground } from './background.ts';
import { lately } from './late.ts';

/** Starts the service; `answer` is called in the page with every answer. */
export function startAlignService(answer: (answer: AlignAnswer) => void): Background<AlignRequest> {
  return startBackground<AlignRequest, AlignAnswer>(
    {
      spawn: () => new Worker(new URL('./alignWorker.ts', import.meta.url), { type: 'module' }),
      create: lately(() => import('./alignJob.ts').then((job) => job.createAlignRunner)),
      ownerOf: (request) => (request.kind === 'mesh' ? `mesh ${request.key}` : request.kind),
    },
    answer,
  );
}
