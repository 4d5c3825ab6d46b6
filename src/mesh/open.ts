/** A mesh obstacle of a model together with its file: ready to be placed and measured, or refused at a path of the model. */
import type { MeshSurface } from '../../solver/index.ts';
import { meshUnit, unitInMillimetres } from '../../solver/model/defaults.ts';
import type { MeshTree } from './data.ts';
import { fingerprint } from './fingerprint.ts';
import { endingOf } from './names.ts';
import { type MeshObstacle, placingOf } from './placing.ts';
import { readMesh } from './read/read.ts';
import { createMeshSurface } from './surface.ts';
import { buildTree } from './tree.ts';

/** A key of the obstacle, what was found there, and what is wanted. */
export interface MeshRefusal {
  readonly ok: false;
  readonly key: 'file' | 'unit' | 'content';
  readonly found: string;
  readonly wanted: string;
}

/** Size below which every coordinate of a placed mesh must lie, mm: that of the format's numbers. */
const FARTHEST = 1e5;

function refused(key: MeshRefusal['key'], found: string, wanted: string): MeshRefusal {
  return { ok: false, key, found, wanted };
}

/** Says why the unit is missing, if it is. */
export function withoutUnit(mesh: MeshObstacle): MeshRefusal | null {
  if (meshUnit(mesh) !== null) return null;
  const kind = endingOf(mesh.file).toUpperCase() || 'such';
  return refused(
    'unit',
    `nothing, and ${kind} files state no unit`,
    '"mm" or "cm" or "m" or "inch"',
  );
}

/** The tree over an obstacle's triangles, in mm, from its file's bytes. */
export function treeOf(
  mesh: MeshObstacle,
  bytes: Uint8Array,
): { readonly ok: true; readonly tree: MeshTree } | MeshRefusal {
  const unit = meshUnit(mesh);
  if (unit === null) return withoutUnit(mesh)!;
  if (mesh.content !== undefined) {
    const content = fingerprint(bytes);
    if (content !== mesh.content) {
      const found = `${mesh.content}, but the file beside the model is ${content}`;
      return refused('content', found, 'the file that was meant, or no "content" to take any');
    }
  }
  const reading = readMesh(mesh.file, bytes);
  if (!reading.ok) return refused('file', reading.found, reading.wanted);
  return { ok: true, tree: buildTree(reading.mesh, unitInMillimetres(unit)) };
}

/** The obstacle as the solver asks it. */
export function surfaceOf(
  mesh: MeshObstacle,
  tree: MeshTree,
): { readonly ok: true; readonly surface: MeshSurface } | MeshRefusal {
  const surface = createMeshSurface(tree, placingOf(mesh));
  const { min, max } = surface.bounds;
  const reach = Math.max(...[...min, ...max].map(Math.abs));
  if (!(reach < FARTHEST)) {
    const metres = (reach / 1000).toFixed(0);
    return refused('unit', `a mesh that reaches to ${metres} m`, 'less than 100 m: another unit');
  }
  return { ok: true, surface };
}
