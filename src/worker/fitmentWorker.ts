/** The worker that works out the gaps of wheels and tyres that might be fitted. */
import { createFitmentRunner } from './fitmentJob.ts';
import { serve } from './serve.ts';

serve(createFitmentRunner);
