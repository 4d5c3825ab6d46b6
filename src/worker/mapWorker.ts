/** The worker that fills travel–lock maps. */
import { buffersOf } from './mapBuffers.ts';
import { createMapRunner, type MapAnswer, type MapRequest } from './mapJob.ts';
import { createMeshShelf, type MeshSending } from './meshShelf.ts';
import { serve } from './serve.ts';

serve<MapRequest | MeshSending, MapAnswer>(
  (answer, later, clock) => createMapRunner(answer, later, clock, createMeshShelf()),
  ({ map }) => buffersOf(map),
);
