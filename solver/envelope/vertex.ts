/**
 * Where a sheet of the surface has its vertex in a cell: at the point nearest to all tangent planes found on the cell's
 * edges, so that creases come out sharp. Least squares, held softly to the mean of the places on the edges.
 */

/** Weight of the mean place against one tangent plane. */
const HOLD = 0.02;

/** Tangent planes of a sheet, gathered before its vertex is placed. */
export interface Planes {
  /** Means of places and normals, scratch. */
  readonly sums: Float64Array;
  /** Places and normals, six numbers each. */
  readonly each: Float64Array;
  count: number;
}

export function createPlanes(): Planes {
  return { sums: new Float64Array(6), each: new Float64Array(72), count: 0 };
}

export function addPlane(planes: Planes, from: Float64Array, at: number): void {
  for (let i = 0; i < 6; i += 1) planes.each[6 * planes.count + i] = from[at + i]!;
  planes.count += 1;
}

/** Determinant of the rows a, b, c. */
function determinant(
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
  cx: number,
  cy: number,
  cz: number,
): number {
  return ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
}

/** Writes the vertex into the first three places of `out`, kept within `half` of the cell's middle, and the mean normal behind it. */
export function placeVertex(
  planes: Planes,
  middle: readonly [number, number, number],
  half: number,
  out: Float64Array,
): void {
  const { each, count, sums } = planes;
  sums.fill(0);
  for (let i = 0; i < count; i += 1) {
    for (let k = 0; k < 6; k += 1) sums[k] = sums[k]! + each[6 * i + k]! / count;
  }
  const mx = sums[0]!;
  const my = sums[1]!;
  const mz = sums[2]!;
  let xx = HOLD,
    xy = 0,
    xz = 0,
    yy = HOLD,
    yz = 0,
    zz = HOLD;
  let bx = 0,
    by = 0,
    bz = 0;
  for (let at = 0; at < 6 * count; at += 6) {
    const nx = each[at + 3]!;
    const ny = each[at + 4]!;
    const nz = each[at + 5]!;
    const off = nx * (each[at]! - mx) + ny * (each[at + 1]! - my) + nz * (each[at + 2]! - mz);
    xx += nx * nx;
    xy += nx * ny;
    xz += nx * nz;
    yy += ny * ny;
    yz += ny * nz;
    zz += nz * nz;
    bx += off * nx;
    by += off * ny;
    bz += off * nz;
  }
  const whole = determinant(xx, xy, xz, xy, yy, yz, xz, yz, zz);
  const dx = determinant(bx, xy, xz, by, yy, yz, bz, yz, zz) / whole;
  const dy = determinant(xx, bx, xz, xy, by, yz, xz, bz, zz) / whole;
  const dz = determinant(xx, xy, bx, xy, yy, by, xz, yz, bz) / whole;
  out[0] = Math.min(middle[0] + half, Math.max(middle[0] - half, mx + dx));
  out[1] = Math.min(middle[1] + half, Math.max(middle[1] - half, my + dy));
  out[2] = Math.min(middle[2] + half, Math.max(middle[2] - half, mz + dz));
  const size = Math.hypot(sums[3]!, sums[4]!, sums[5]!) || 1;
  for (let k = 3; k < 6; k += 1) out[k] = sums[k]! / size;
}
