/** Fits points to readings, behind the page. */
import { type Background, startBackground } from './background.ts';
import type { FitAnswer, FitRequest } from './fitJob.ts';
import { lately } from './late.ts';

/** Starts the service; `answer` is called in the page with every answer, and with how far it is. */
export function startFitService(answer: (answer: FitAnswer) => void): Background<FitRequest> {
  return startBackground<FitRequest, FitAnswer>(
    {
      spawn: () => new Worker(new URL('./fitWorker.ts', import.meta.url), { type: 'module' }),
      create: lately(() => import('./fitJob.ts').then((job) => job.createFitRunner)),
      ownerOf: () => 'fit',
    },
    answer,
  );
}
