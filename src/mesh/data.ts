/** Mesh obstacles as plain data: what a file held, and what distances need of it. Both pass between page and worker. */

/** The triangles of a file, in the file's own unit; axes of the vehicle where the format defines axes, else the file's. */
export interface MeshTriangles {
  /** Three coordinates a vertex. */
  readonly positions: Float32Array;
  /** Three vertices a triangle. */
  readonly index: Uint32Array;
}

/** Triangles in mm with the tree over them, ready for distances in any thread. */
export interface MeshTree extends MeshTriangles {
  /** Nodes of the tree; `index` is in its order. */
  readonly roots: readonly ArrayBuffer[];
}

/** The box about all vertices, in the unit of the positions. */
export interface MeshBox {
  readonly min: readonly [number, number, number];
  readonly max: readonly [number, number, number];
}

/** Box about the vertices of triangles. */
export function boxOf({ positions }: MeshTriangles): MeshBox {
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
