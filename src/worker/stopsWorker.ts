/** The worker that finds what stops the wheel. */
import { createMeshShelf } from './meshShelf.ts';
import { serve } from './serve.ts';
import { createStopsRunner, type StopsAnswer, type StopsRequest } from './stopsJob.ts';

serve<StopsRequest, StopsAnswer>((answer, later, clock) =>
  createStopsRunner(answer, later, clock, createMeshShelf()),
);
