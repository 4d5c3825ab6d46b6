/** The surfaces of a model's meshes in the page itself, for the gap of the present pose; what makes them is loaded when it is needed. */
import type { MeshSurface, MeshSurfaces, Model } from '../../solver/index.ts';
import { requestFrame } from './frame.ts';
import { meshes, meshObstacles, readyMeshes } from './meshes.ts';

type Maker = {
  readonly createMeshSurface: typeof import('../mesh/surface.ts')['createMeshSurface'];
  readonly placingOf: typeof import('../mesh/placing.ts')['placingOf'];
};

let maker: Maker | null = null;
let isLoading = false;

async function load(): Promise<void> {
  const [{ createMeshSurface }, { placingOf }] = await Promise.all([
    import('../mesh/surface.ts'),
    import('../mesh/placing.ts'),
  ]);
  maker = { createMeshSurface, placingOf };
  requestFrame();
}

const NONE: MeshSurfaces = new Map();

/** The surfaces of the meshes that are ready; none until what makes them is loaded, which asks for a frame. */
export function surfacesOf(model: Model): MeshSurfaces {
  const ready = readyMeshes(model, meshes.getState());
  if (ready.size === 0) return NONE;
  if (maker === null) {
    if (!isLoading) void load();
    isLoading = true;
    return NONE;
  }
  const made = new Map<string, MeshSurface>();
  for (const obstacle of meshObstacles(model)) {
    const tree = ready.get(obstacle.name);
    if (tree === undefined) continue;
    made.set(obstacle.name, maker.createMeshSurface(tree, maker.placingOf(obstacle)));
  }
  return made;
}

/** Changes when other surfaces would be made of the same model. */
export function surfacesVersion(): object | null {
  return maker === null ? null : meshes.getState().files;
}
