/** Normals for drawing: of corners that triangles share the mean of theirs by area, of others their own triangle's. */
export function normalsOf(positions: Float32Array, index: Uint32Array): Float32Array<ArrayBuffer> {
  const normals = new Float32Array(positions.length);
  for (let at = 0; at + 2 < index.length; at += 3) {
    const a = 3 * index[at]!;
    const b = 3 * index[at + 1]!;
    const c = 3 * index[at + 2]!;
    const ux = positions[b]! - positions[a]!;
    const uy = positions[b + 1]! - positions[a + 1]!;
    const uz = positions[b + 2]! - positions[a + 2]!;
    const vx = positions[c]! - positions[a]!;
    const vy = positions[c + 1]! - positions[a + 1]!;
    const vz = positions[c + 2]! - positions[a + 2]!;
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    for (const corner of [a, b, c]) {
      normals[corner]! += nx;
      normals[corner + 1]! += ny;
      normals[corner + 2]! += nz;
    }
  }
  for (let at = 0; at < normals.length; at += 3) {
    const size = Math.hypot(normals[at]!, normals[at + 1]!, normals[at + 2]!);
    // A corner of no triangle's own has no direction; any will do, it is not seen.
    if (size === 0) normals[at + 2] = 1;
    else for (let i = 0; i < 3; i += 1) normals[at + i]! /= size;
  }
  return normals;
}
