/**
 * The mesh files at hand: for every mesh obstacle, whether its file is being read, ready, missing or refused. A file
 * never enters the document: an obstacle names it, and its bytes are kept once, beside the work.
 */
import { createStore } from 'zustand/vanilla';
import type { Model } from '../../solver/index.ts';
import { meshUnit } from '../../solver/model/defaults.ts';
import type { MeshObstacle } from '../mesh/placing.ts';
import type { PreparedMesh, ReadMesh } from '../worker/meshJob.ts';

export type MeshStatus =
  | { readonly state: 'reading' }
  | { readonly state: 'ready'; readonly mesh: PreparedMesh }
  | { readonly state: 'missing' }
  /** `words` begin with the file's name: "a.stl: found …". */
  | { readonly state: 'refused'; readonly words: string };

/** A file opened to become an obstacle: its unit and its axes are to be asked for. */
export interface OfferedMesh {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly reading: ReadMesh;
}

export interface MeshesState {
  /** By `meshKey`. */
  readonly files: ReadonlyMap<string, MeshStatus>;
  /** Files waiting to be placed, the first being asked about. */
  readonly offered: readonly OfferedMesh[];
}

export const meshes = createStore<MeshesState>(() => ({ files: new Map(), offered: [] }));

export type MeshStore = typeof meshes;

/** What a mesh's readiness depends on: not where it stands. */
export function meshKey(mesh: MeshObstacle): string {
  return [mesh.file, mesh.content ?? '', meshUnit(mesh) ?? ''].join('\n');
}

/** The mesh obstacles of a model. */
export function meshObstacles(model: Model): readonly MeshObstacle[] {
  return (model.obstacles ?? []).filter((obstacle) => obstacle.shape === 'mesh');
}

/** The prepared meshes of a model's obstacles by the obstacles' names; those that are not ready are left out. */
export function readyMeshes(
  model: Model,
  { files }: MeshesState,
): ReadonlyMap<string, PreparedMesh> {
  return new Map(
    meshObstacles(model).flatMap((mesh) => {
      const status = files.get(meshKey(mesh));
      return status?.state === 'ready' ? [[mesh.name, status.mesh] as const] : [];
    }),
  );
}

/** Names of the mesh obstacles that are neither drawn nor checked, because their files are missing or refused. */
export function uncheckedMeshes(model: Model, { files }: MeshesState): readonly string[] {
  return meshObstacles(model)
    .filter((mesh) => {
      const state = files.get(meshKey(mesh))?.state;
      return state === 'missing' || state === 'refused';
    })
    .map(({ name }) => name);
}
