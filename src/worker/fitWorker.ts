/** The worker that fits points to readings. */
import { createFitRunner } from './fitJob.ts';
import { serve } from './serve.ts';

serve(createFitRunner);
