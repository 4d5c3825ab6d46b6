/** Meshes sent to a worker once, under their keys, and placed anew for every model that names them. */
import type { MeshSurface, MeshSurfaces, Model } from '../../solver/index.ts';
import type { MeshTree } from '../mesh/data.ts';
import { placingOf } from '../mesh/placing.ts';
import { createMeshSurface } from '../mesh/surface.ts';

/** Sends a mesh ahead of the requests that name its key. */
export interface MeshSending {
  readonly kind: 'mesh';
  readonly key: string;
  readonly tree: MeshTree;
}

/** Keys of the meshes that are ready, by the obstacles' names. */
export type MeshKeys = ReadonlyMap<string, string>;

export interface MeshShelf {
  put(sending: MeshSending): void;
  /** The surfaces of the model's meshes that were sent. */
  surfaces(model: Model, keys: MeshKeys): MeshSurfaces;
}

export function createMeshShelf(): MeshShelf {
  const trees = new Map<string, MeshTree>();
  return {
    put({ key, tree }) {
      trees.set(key, tree);
    },
    surfaces(model, keys) {
      const made = new Map<string, MeshSurface>();
      for (const obstacle of model.obstacles ?? []) {
        if (obstacle.shape !== 'mesh') continue;
        const tree = trees.get(keys.get(obstacle.name) ?? '');
        if (tree === undefined) continue;
        made.set(obstacle.name, createMeshSurface(tree, placingOf(obstacle)));
      }
      return made;
    },
  };
}
