/** The worker that works out how well the measures are known. */
import { serve } from './serve.ts';
import { createSpreadRunner, type SpreadAnswer, type SpreadRequest } from './spreadJob.ts';

serve<SpreadRequest, SpreadAnswer>(createSpreadRunner);
