/** Meshes the space the tyre sweeps behind the page. */
import { type Background, startBackground } from './background.ts';
import { createSweptRunner, type SweptAnswer, type SweptRequest } from './sweptJob.ts';

/** Starts the service; `answer` is called in the page with progress and surfaces. */
export function startSweptService(answer: (answer: SweptAnswer) => void): Background<SweptRequest> {
  return startBackground<SweptRequest, SweptAnswer>(
    {
      spawn: () => new Worker(new URL('./sweptWorker.ts', import.meta.url), { type: 'module' }),
      create: createSweptRunner,
      ownerOf: ({ owner }) => owner,
    },
    answer,
  );
}
