/** The worker that proves least gaps. */
import { createProofRunner } from './proofJob.ts';
import { serve } from './serve.ts';

serve(createProofRunner);
