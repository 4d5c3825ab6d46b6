/** Works out how well the measures are known, behind the page. */
import { type Background, startBackground } from './background.ts';
import { lately } from './late.ts';
import type { SpreadAnswer, SpreadRequest } from './spreadJob.ts';

/** Starts the service; `answer` is called in the page with every answer. */
export function startSpreadService(
  answer: (answer: SpreadAnswer) => void,
): Background<SpreadRequest> {
  return startBackground<SpreadRequest, SpreadAnswer>(
    {
      spawn: () => new Worker(new URL('./spreadWorker.ts', import.meta.url), { type: 'module' }),
      create: lately(() => import('./spreadJob.ts').then((job) => job.createSpreadRunner)),
      ownerOf: (request) => request.kind,
    },
    answer,
  );
}
