/** Finds the smallest cures, behind the page. */
import { type Background, startBackground } from './background.ts';
import type { CureAnswer, CureRequest } from './cureJob.ts';
import { lately } from './late.ts';

/** Starts the service; `answer` is called in the page with every answer, and with how far it is. */
export function startCureService(answer: (answer: CureAnswer) => void): Background<CureRequest> {
  return startBackground<CureRequest, CureAnswer>(
    {
      spawn: () => new Worker(new URL('./cureWorker.ts', import.meta.url), { type: 'module' }),
      create: lately(() => import('./cureJob.ts').then((job) => job.createCureRunner)),
      ownerOf: (request) => (request.kind === 'mesh' ? `mesh ${request.key}` : 'cure'),
    },
    answer,
  );
}
