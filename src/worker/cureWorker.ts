/** The worker that solves for the smallest cures. */

import { type CureAnswer, type CureRequest, createCureRunner } from './cureJob.ts';
import { createMeshShelf } from './meshShelf.ts';
import { serve } from './serve.ts';

serve<CureRequest, CureAnswer>((answer, later, clock) =>
  createCureRunner(answer, later, clock, createMeshShelf()),
);
