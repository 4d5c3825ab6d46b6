/** The worker that meshes the space the tyre sweeps. */
import { serve } from './serve.ts';
import { createSweptRunner, sweptBuffers } from './sweptJob.ts';

serve(createSweptRunner, sweptBuffers);
