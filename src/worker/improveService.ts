/** Searches for better points, behind the page, in as many workers as it pays to start. */
import { type Background, startBackground } from './background.ts';
import type { ImproveAnswer, ImproveRequest } from './improveJob.ts';
import { lately } from './late.ts';

/** Workers at most: a dozen starts are soon shared out. */
const MOST_WORKERS = 4;

/** How many workers share the starts: one core is left to the page. */
export function improveWorkers(cores: number | undefined): number {
  return Math.min(MOST_WORKERS, Math.max(1, (cores ?? 2) - 1));
}

/** Starts one of them; `answer` is called in the page with every answer, and with how far it is. */
export function startImproveService(
  answer: (answer: ImproveAnswer) => void,
): Background<ImproveRequest> {
  return startBackground<ImproveRequest, ImproveAnswer>(
    {
      spawn: () => new Worker(new URL('./improveWorker.ts', import.meta.url), { type: 'module' }),
      create: lately(() => import('./improveJob.ts').then((job) => job.createImproveRunner)),
      ownerOf: (request) => (request.kind === 'mesh' ? `mesh ${request.key}` : 'improve'),
    },
    answer,
  );
}
