/** Draws corners at random, behind the page. */
import { type Background, startBackground } from './background.ts';
import { lately } from './late.ts';
import type { MonteCarloAnswer, MonteCarloRequest } from './monteCarloJob.ts';

/** Starts the service; `answer` is called in the page with every answer, and with how far it is. */
export function startMonteCarloService(
  answer: (answer: MonteCarloAnswer) => void,
): Background<MonteCarloRequest> {
  return startBackground<MonteCarloRequest, MonteCarloAnswer>(
    {
      spawn: () =>
        new Worker(new URL('./monteCarloWorker.ts', import.meta.url), { type: 'module' }),
      create: lately(() => import('./monteCarloJob.ts').then((job) => job.createMonteCarloRunner)),
      ownerOf: () => 'draw',
    },
    answer,
  );
}
