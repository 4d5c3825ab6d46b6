/** A worker that searches for better points. */

import { createImproveRunner, type ImproveAnswer, type ImproveRequest } from './improveJob.ts';
import { createMeshShelf } from './meshShelf.ts';
import { serve } from './serve.ts';

serve<ImproveRequest, ImproveAnswer>((answer, later, clock) =>
  createImproveRunner(answer, later, clock, createMeshShelf()),
);
