/** The worker that reads mesh files and makes them ready. */
import { buffersOfAnswer, createMeshRunner } from './meshJob.ts';
import { serve } from './serve.ts';

serve(createMeshRunner, buffersOfAnswer);
