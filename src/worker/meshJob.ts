/** Work on mesh files, wherever it runs: reading them, and making them ready to be drawn and measured. */
import { boxOf, type MeshBox, type MeshTree, type MeshTriangles } from '../mesh/data.ts';
import { fingerprint } from '../mesh/fingerprint.ts';
import { normalsOf } from '../mesh/normals.ts';
import { readMesh } from '../mesh/read/read.ts';
import { buffersOfTree, buildTree } from '../mesh/tree.ts';
import type { Runner } from './background.ts';

export type MeshRequest =
  | { readonly kind: 'read'; readonly name: string; readonly bytes: Uint8Array<ArrayBuffer> }
  /** `scale` is the mm in one of the file's unit. */
  | { readonly kind: 'prepare'; readonly mesh: MeshTriangles; readonly scale: number };

/** A file's triangles, in its own unit. */
export interface ReadMesh {
  readonly ok: true;
  readonly mesh: MeshTriangles;
  readonly box: MeshBox;
  readonly content: string;
}

/** A mesh in mm, ready to be drawn and measured. */
export interface PreparedMesh extends MeshTree {
  readonly normals: Float32Array<ArrayBuffer>;
  readonly box: MeshBox;
  readonly triangles: number;
}

export type MeshAnswer =
  | ReadMesh
  | { readonly ok: true; readonly prepared: PreparedMesh }
  | { readonly ok: false; readonly found: string; readonly wanted: string };

function work(request: MeshRequest): MeshAnswer {
  if (request.kind === 'read') {
    const { name, bytes } = request;
    const reading = readMesh(name, bytes);
    if (!reading.ok) return reading;
    const { mesh } = reading;
    return { ok: true, mesh, box: boxOf(mesh.positions), content: fingerprint(bytes) };
  }
  const tree = buildTree(request.mesh, request.scale);
  const prepared = {
    ...tree,
    normals: normalsOf(tree.positions, request.mesh.index),
    box: boxOf(tree.positions),
    triangles: request.mesh.index.length / 3,
  };
  return { ok: true, prepared };
}

export function createMeshRunner(
  answer: (answer: MeshAnswer) => void,
  later: (run: () => void) => void,
): Runner<MeshRequest> {
  return { ask: (request) => later(() => answer(work(request))) };
}

/** What is handed over with an answer instead of being copied. */
export function buffersOfAnswer(answer: MeshAnswer): Transferable[] {
  if (!answer.ok) return [];
  if ('prepared' in answer) {
    return [...buffersOfTree(answer.prepared), answer.prepared.normals.buffer];
  }
  return [answer.mesh.positions.buffer, answer.mesh.index.buffer];
}
