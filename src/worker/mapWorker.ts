/** The worker that fills travel–lock maps. */
import { buffersOf, createMapRunner } from './mapJob.ts';
import { serve } from './serve.ts';

serve(createMapRunner, ({ map }) => buffersOf(map));
