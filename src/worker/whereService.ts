/** Works out where a point may go, behind the page. */
import { type Background, startBackground } from './background.ts';
import { lately } from './late.ts';
import type { WhereAnswer, WhereRequest } from './whereJob.ts';

/** Starts the service; `answer` is called in the page with every answer. */
export function startWhereService(answer: (answer: WhereAnswer) => void): Background<WhereRequest> {
  return startBackground<WhereRequest, WhereAnswer>(
    {
      spawn: () => new Worker(new URL('./whereWorker.ts', import.meta.url), { type: 'module' }),
      create: lately(() => import('./whereJob.ts').then((job) => job.createWhereRunner)),
      ownerOf: (request) => (request.kind === 'probe' ? 'probe' : 'where'),
    },
    answer,
  );
}
