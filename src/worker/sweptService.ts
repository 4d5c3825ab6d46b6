/** Meshes the space the tyre sweeps behind the page. */
import { type Background, startBackground } from './background.ts';
import { lately } from './late.ts';
import type { SweptAnswer, SweptRequest } from './sweptJob.ts';

/** Starts the service; `answer` is called in the page with progress and surfaces. */
export function startSweptService(answer: (answer: SweptAnswer) => void): Background<SweptRequest> {
  return startBackground<SweptRequest, SweptAnswer>(
    {
      spawn: () => new Worker(new URL('./sweptWorker.ts', import.meta.url), { type: 'module' }),
      create: lately(() => import('./sweptJob.ts').then((job) => job.createSweptRunner)),
      ownerOf: ({ owner }) => owner,
    },
    answer,
  );
}
