/** The mesh files a model's obstacles name, beside the model file. */
import { readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import {
  formatModelError,
  type MeshSurface,
  type MeshSurfaces,
  type Model,
  quoted,
} from '../../solver/index.ts';
import { type MeshRefusal, surfaceOf, treeOf, withoutUnit } from '../mesh/open.ts';
import type { MeshObstacle } from '../mesh/placing.ts';
import { tooLarge } from '../mesh/read/fault.ts';
import { obstruction } from './files.ts';
import { BadInput } from './refusal.ts';

function open(mesh: MeshObstacle, modelFile: string): MeshSurface | MeshRefusal {
  const missing = withoutUnit(mesh);
  if (missing !== null) return missing;
  const path = join(dirname(modelFile), mesh.file.replaceAll('\\', '/'));
  let bytes: Uint8Array;
  try {
    const large = tooLarge(statSync(path).size);
    if (large !== null) return { ok: false, key: 'file', found: large.found, wanted: large.wanted };
    bytes = readFileSync(path);
  } catch (thrown) {
    return {
      ok: false,
      key: 'file',
      found: obstruction(thrown),
      wanted: 'a mesh file beside the model',
    };
  }
  const opened = treeOf(mesh, bytes);
  if (!opened.ok) return opened;
  const placed = surfaceOf(mesh, opened.tree);
  return placed.ok ? placed.surface : placed;
}

/**
 * The surfaces of a model's mesh obstacles by their names; empty for a model without any.
 * @throws BadInput with one line for the first that cannot be used: no unit, no file, or a file that is refused
 */
export function loadMeshes(model: Model, modelFile: string): MeshSurfaces {
  const surfaces = new Map<string, MeshSurface>();
  (model.obstacles ?? []).forEach((obstacle, index) => {
    if (obstacle.shape !== 'mesh') return;
    const opened = open(obstacle, modelFile);
    if (!('ok' in opened)) {
      surfaces.set(obstacle.name, opened);
      return;
    }
    const { key, found, wanted } = opened;
    const about = key === 'file' ? `${quoted(obstacle.file)}, ${found}` : found;
    const path = `obstacles[${index}].${key}`;
    throw new BadInput(formatModelError({ file: modelFile, path, found: about, wanted }));
  });
  return surfaces;
}
