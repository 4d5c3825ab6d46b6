/** Mesh obstacles as plain data: what a file held, and what distances need of it. Both pass between page and worker. */
import type { SerializedBVH } from 'three-mesh-bvh';

/** The triangles of a file, in the file's own unit; axes of the vehicle where the format defines axes, else the file's. */
export interface MeshTriangles {
  /** Three coordinates a vertex. */
  readonly positions: Float32Array<ArrayBuffer>;
  /** Three vertices a triangle. */
  readonly index: Uint32Array<ArrayBuffer>;
}

/** Triangles in mm with the tree over them, ready for distances in any thread. */
export interface MeshTree {
  readonly positions: Float32Array<ArrayBuffer>;
  /** The nodes, and the corners in the nodes' order. */
  readonly tree: SerializedBVH;
}

/** The box about all vertices, in the unit of the positions. */
export interface MeshBox {
  readonly min: readonly [number, number, number];
  readonly max: readonly [number, number, number];
}

/** Box about flat positions. */
export function boxOf(positions: Float32Array): MeshBox {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let at = 0; at < positions.length; at += 1) {
    const axis = (at % 3) as 0 | 1 | 2;
    const value = positions[at]!;
    if (value < min[axis]) min[axis] = value;
    if (value > max[axis]) max[axis] = value;
  }
  return { min, max };
}
