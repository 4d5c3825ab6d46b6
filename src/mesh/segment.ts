/** Distance of a segment and a triangle in closed form. One triangle and one segment at a time, in buffers of this file. */

/** The triangle's corners, nine numbers. */
export const triangle = new Float64Array(9);

/** The segment: its start, then start to end. */
export const segment = new Float64Array(6);

/** What was found: the least distance, λ along the segment, and the triangle's nearest point. */
export const nearest = { apart: 0.5, lambda: 0.5, x: 0.5, y: 0.5, z: 0.5 };

function keep(apart: number, lambda: number, x: number, y: number, z: number): void {
  nearest.apart = apart;
  nearest.lambda = lambda;
  nearest.x = x;
  nearest.y = y;
  nearest.z = z;
}

function clamp(value: number): number {
  return Math.min(1, Math.max(0, value));
}

/** Nearest points of the segment and the edge from corner `a` to corner `b`; either may be of no length. */
function tryEdge(a: number, b: number): void {
  const ax = triangle[a]!;
  const ay = triangle[a + 1]!;
  const az = triangle[a + 2]!;
  const ex = triangle[b]! - ax;
  const ey = triangle[b + 1]! - ay;
  const ez = triangle[b + 2]! - az;
  const dx = segment[3]!;
  const dy = segment[4]!;
  const dz = segment[5]!;
  const wx = segment[0]! - ax;
  const wy = segment[1]! - ay;
  const wz = segment[2]! - az;
  const dd = dx * dx + dy * dy + dz * dz;
  const ee = ex * ex + ey * ey + ez * ez;
  const de = dx * ex + dy * ey + dz * ez;
  const dw = dx * wx + dy * wy + dz * wz;
  const ew = ex * wx + ey * wy + ez * wz;
  const room = dd * ee - de * de;
  // Parallel lines have no single nearest pair: any start will do, the clamps find an end.
  let lambda = room > 1e-14 * dd * ee ? clamp((de * ew - ee * dw) / room) : 0;
  let mu = ee > 0 ? (de * lambda + ew) / ee : 0;
  if (!(mu >= 0 && mu <= 1)) {
    mu = clamp(mu);
    lambda = dd > 0 ? clamp((de * mu - dw) / dd) : 0;
  }
  const x = ax + mu * ex;
  const y = ay + mu * ey;
  const z = az + mu * ez;
  const apart = Math.hypot(
    segment[0]! + lambda * dx - x,
    segment[1]! + lambda * dy - y,
    segment[2]! + lambda * dz - z,
  );
  if (apart < nearest.apart) keep(apart, lambda, x, y, z);
}

/** Whether a point of the triangle's plane lies inside: on the same side of all three edges. */
function isInside(x: number, y: number, z: number, nx: number, ny: number, nz: number): boolean {
  for (let a = 0; a < 9; a += 3) {
    const b = a === 6 ? 0 : a + 3;
    const ex = triangle[b]! - triangle[a]!;
    const ey = triangle[b + 1]! - triangle[a + 1]!;
    const ez = triangle[b + 2]! - triangle[a + 2]!;
    const px = x - triangle[a]!;
    const py = y - triangle[a + 1]!;
    const pz = z - triangle[a + 2]!;
    const side = (ey * pz - ez * py) * nx + (ez * px - ex * pz) * ny + (ex * py - ey * px) * nz;
    if (side < 0) return false;
  }
  return true;
}

/** The foot of the segment's point at λ on the triangle's plane, if it lies inside. */
function tryFoot(lambda: number, apart: number, nx: number, ny: number, nz: number): void {
  const size = Math.abs(apart);
  if (!(size < nearest.apart)) return;
  const x = segment[0]! + lambda * segment[3]! - apart * nx;
  const y = segment[1]! + lambda * segment[4]! - apart * ny;
  const z = segment[2]! + lambda * segment[5]! - apart * nz;
  if (isInside(x, y, z, nx, ny, nz)) keep(size, lambda, x, y, z);
}

/** Finds the least distance of `segment` and `triangle` if it is less than `below`; false where it is not. */
export function nearTriangle(below: number): boolean {
  nearest.apart = below;
  const ux = triangle[3]! - triangle[0]!;
  const uy = triangle[4]! - triangle[1]!;
  const uz = triangle[5]! - triangle[2]!;
  const vx = triangle[6]! - triangle[0]!;
  const vy = triangle[7]! - triangle[1]!;
  const vz = triangle[8]! - triangle[2]!;
  let nx = uy * vz - uz * vy;
  let ny = uz * vx - ux * vz;
  let nz = ux * vy - uy * vx;
  const size = Math.hypot(nx, ny, nz);
  if (size > 0) {
    nx /= size;
    ny /= size;
    nz /= size;
    const start =
      (segment[0]! - triangle[0]!) * nx +
      (segment[1]! - triangle[1]!) * ny +
      (segment[2]! - triangle[2]!) * nz;
    const end = start + segment[3]! * nx + segment[4]! * ny + segment[5]! * nz;
    const isBeside = start > 0 === end > 0;
    if (isBeside && Math.min(Math.abs(start), Math.abs(end)) >= below) return false;
    tryFoot(0, start, nx, ny, nz);
    tryFoot(1, end, nx, ny, nz);
    if (!isBeside) tryFoot(start / (start - end), 0, nx, ny, nz);
  }
  tryEdge(0, 3);
  tryEdge(3, 6);
  tryEdge(6, 0);
  return nearest.apart < below;
}
