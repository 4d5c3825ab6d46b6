/** Works out the gaps of wheels and tyres that might be fitted, behind the page. */
import { type Background, startBackground } from './background.ts';
import { createFitmentRunner, type FitmentAnswer, type FitmentRequest } from './fitmentJob.ts';

/** Starts the service; `answer` is called in the page with every column's gaps as they come. */
export function startFitmentService(
  answer: (answer: FitmentAnswer) => void,
): Background<FitmentRequest> {
  return startBackground<FitmentRequest, FitmentAnswer>(
    {
      spawn: () => new Worker(new URL('./fitmentWorker.ts', import.meta.url), { type: 'module' }),
      create: createFitmentRunner,
      ownerOf: (request) =>
        request.kind === 'mesh' ? `mesh ${request.key}` : `column ${request.column}`,
    },
    answer,
  );
}
