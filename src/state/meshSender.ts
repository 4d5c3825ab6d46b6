/** Sends the meshes that are ready to a worker, each once, ahead of the work that names them. */
import type { Model } from '../../solver/index.ts';
import type { MeshKeys, MeshSending } from '../worker/meshShelf.ts';
import { type MeshStore, meshKey, meshObstacles, readyMeshes } from './meshes.ts';

export interface MeshSender {
  /** The keys of the model's meshes that are ready. */
  keys(model: Model): MeshKeys;
  /** Sends what was not sent before. */
  send(model: Model, ask: (sending: MeshSending) => void): void;
}

export function createMeshSender(meshStore: MeshStore): MeshSender {
  const sent = new Set<string>();
  return {
    keys(model) {
      const ready = readyMeshes(model, meshStore.getState());
      const isReady = meshObstacles(model).filter(({ name }) => ready.has(name));
      return new Map(isReady.map((mesh) => [mesh.name, meshKey(mesh)]));
    },
    send(model, ask) {
      const ready = readyMeshes(model, meshStore.getState());
      for (const obstacle of meshObstacles(model)) {
        const mesh = ready.get(obstacle.name);
        const key = meshKey(obstacle);
        if (mesh === undefined || sent.has(key)) continue;
        sent.add(key);
        ask({ kind: 'mesh', key, tree: { positions: mesh.positions, tree: mesh.tree } });
      }
    },
  };
}

/** True when both name the same meshes. */
export function sameKeys(one: MeshKeys, other: MeshKeys): boolean {
  return one.size === other.size && [...one].every(([name, key]) => other.get(name) === key);
}
