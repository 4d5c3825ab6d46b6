/** Proves least gaps behind the page. */
import { type Background, startBackground } from './background.ts';
import { lately } from './late.ts';
import type { ProofAnswer, ProofRequest } from './proofJob.ts';

/** Starts the service; `answer` is called in the page as pairs are proven. */
export function startProofService(answer: (answer: ProofAnswer) => void): Background<ProofRequest> {
  return startBackground<ProofRequest, ProofAnswer>(
    {
      spawn: () => new Worker(new URL('./proofWorker.ts', import.meta.url), { type: 'module' }),
      create: lately(() => import('./proofJob.ts').then((job) => job.createProofRunner)),
      ownerOf: (request) => (request.kind === 'mesh' ? `mesh ${request.key}` : 'proof'),
    },
    answer,
  );
}
