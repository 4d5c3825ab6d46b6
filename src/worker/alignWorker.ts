/** The worker that finds alignment settings. */
import { type AlignAnswer, type AlignRequest, createAlignRunner } from './alignJob.ts';
import { createMeshShelf } from './meshShelf.ts';
import { serve } from './serve.ts';

serve<AlignRequest, AlignAnswer>((answer, later, clock) =>
  createAlignRunner(answer, later, clock, createMeshShelf()),
);
