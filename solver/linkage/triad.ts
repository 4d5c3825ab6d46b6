/**
 * The rigid triad: a body known by two of its points A, B and by a third, T, that keeps its distance to a point D.
 * Its frame is k = unit(B − A), m = unit of (T − A) made normal to k, n = k × m: nine numbers in the pose buffer.
 */

/** A triad's constants in a buffer: 1/|B − A|, α, β (> 0), ℓ², and ±1 for which of the two answers is meant. */
const SPAN_INVERSE = 0;
const ALONG = 1;
const ASIDE = 2;
const ROD_SQUARED = 3;
const SIDE = 4;

/**
 * Three spheres, closed form: T = A + α·k + β·m with |T − D| = ℓ. With e = D − A − α·k and e⊥ its part normal to k,
 * m·e⊥ = G = (β² + |e|² − ℓ²)/(2β); the record's side picks one of the two answers. Writes at `room` 1 − G²/|e⊥|²:
 * 0 where both answers meet, negative out of reach; in reach it writes the frame and T and returns true.
 */
export function placeTriad(
  fixed: Float64Array,
  at: number,
  pose: Float64Array,
  a: number,
  b: number,
  d: number,
  frame: number,
  t: number,
  room: number,
): boolean {
  const spanInverse = fixed[at + SPAN_INVERSE]!;
  const along = fixed[at + ALONG]!;
  const aside = fixed[at + ASIDE]!;
  const ax = pose[a]!;
  const ay = pose[a + 1]!;
  const az = pose[a + 2]!;
  const kx = (pose[b]! - ax) * spanInverse;
  const ky = (pose[b + 1]! - ay) * spanInverse;
  const kz = (pose[b + 2]! - az) * spanInverse;
  const ex = pose[d]! - ax;
  const ey = pose[d + 1]! - ay;
  const ez = pose[d + 2]! - az;
  const axial = ex * kx + ey * ky + ez * kz;
  const px = ex - axial * kx;
  const py = ey - axial * ky;
  const pz = ez - axial * kz;
  const squared = px * px + py * py + pz * pz;
  const g =
    (aside * aside + squared + (axial - along) * (axial - along) - fixed[at + ROD_SQUARED]!) /
    (2 * aside);
  const left = squared - g * g;
  pose[frame] = kx;
  pose[frame + 1] = ky;
  pose[frame + 2] = kz;
  if (!(left > 0)) {
    pose[room] = squared > 0 ? left / squared : -1;
    return false;
  }
  const inverse = 1 / squared;
  pose[room] = left * inverse;
  const straight = g * inverse;
  const across = fixed[at + SIDE]! * Math.sqrt(left) * inverse;
  const mx = straight * px + across * (ky * pz - kz * py);
  const my = straight * py + across * (kz * px - kx * pz);
  const mz = straight * pz + across * (kx * py - ky * px);
  pose[frame + 3] = mx;
  pose[frame + 4] = my;
  pose[frame + 5] = mz;
  pose[frame + 6] = ky * mz - kz * my;
  pose[frame + 7] = kz * mx - kx * mz;
  pose[frame + 8] = kx * my - ky * mx;
  pose[t] = ax + along * kx + aside * mx;
  pose[t + 1] = ay + along * ky + aside * my;
  pose[t + 2] = az + along * kz + aside * mz;
  return true;
}

/**
 * Angular velocity ω of the triad when A and B move as read at `aRate`, `bRate` and D stands still:
 * ω = k × k′ + μ·k with μ from (T − D)·(A′ + ω × (T − A)) = 0. Writes ω.
 */
export function triadSpin(
  fixed: Float64Array,
  at: number,
  pose: Float64Array,
  a: number,
  aRate: number,
  bRate: number,
  d: number,
  frame: number,
  t: number,
  omega: number,
): void {
  const spanInverse = fixed[at + SPAN_INVERSE]!;
  const vx = pose[aRate]!;
  const vy = pose[aRate + 1]!;
  const vz = pose[aRate + 2]!;
  const kx = pose[frame]!;
  const ky = pose[frame + 1]!;
  const kz = pose[frame + 2]!;
  const rx = (pose[bRate]! - vx) * spanInverse;
  const ry = (pose[bRate + 1]! - vy) * spanInverse;
  const rz = (pose[bRate + 2]! - vz) * spanInverse;
  const ox = ky * rz - kz * ry;
  const oy = kz * rx - kx * rz;
  const oz = kx * ry - ky * rx;
  const bx = pose[t]! - pose[a]!;
  const by = pose[t + 1]! - pose[a + 1]!;
  const bz = pose[t + 2]! - pose[a + 2]!;
  const tx = pose[t]! - pose[d]!;
  const ty = pose[t + 1]! - pose[d + 1]!;
  const tz = pose[t + 2]! - pose[d + 2]!;
  const drift =
    tx * (vx + oy * bz - oz * by) + ty * (vy + oz * bx - ox * bz) + tz * (vz + ox * by - oy * bx);
  const lever = tx * (ky * bz - kz * by) + ty * (kz * bx - kx * bz) + tz * (kx * by - ky * bx);
  const spin = -drift / lever;
  pose[omega] = ox + spin * kx;
  pose[omega + 1] = oy + spin * ky;
  pose[omega + 2] = oz + spin * kz;
}

/**
 * Spin of the triad about k when A and B stand still and D moves with unit speed along the direction read from
 * `direction`: (T − D)·(μ·k × (T − A) − direction) = 0. Writes μ, rad/mm.
 */
export function triadSpinFromRod(
  pose: Float64Array,
  a: number,
  d: number,
  frame: number,
  t: number,
  direction: Float64Array,
  directionAt: number,
  spin: number,
): void {
  const kx = pose[frame]!;
  const ky = pose[frame + 1]!;
  const kz = pose[frame + 2]!;
  const bx = pose[t]! - pose[a]!;
  const by = pose[t + 1]! - pose[a + 1]!;
  const bz = pose[t + 2]! - pose[a + 2]!;
  const tx = pose[t]! - pose[d]!;
  const ty = pose[t + 1]! - pose[d + 1]!;
  const tz = pose[t + 2]! - pose[d + 2]!;
  const lever = tx * (ky * bz - kz * by) + ty * (kz * bx - kx * bz) + tz * (kx * by - ky * bx);
  pose[spin] =
    (tx * direction[directionAt]! +
      ty * direction[directionAt + 1]! +
      tz * direction[directionAt + 2]!) /
    lever;
}

/** Writes the direction with components (fixed[at], …) in the frame at `frame`. */
export function carryDirection(
  fixed: Float64Array,
  at: number,
  pose: Float64Array,
  frame: number,
  to: number,
): void {
  const x = fixed[at]!;
  const y = fixed[at + 1]!;
  const z = fixed[at + 2]!;
  pose[to] = x * pose[frame]! + y * pose[frame + 3]! + z * pose[frame + 6]!;
  pose[to + 1] = x * pose[frame + 1]! + y * pose[frame + 4]! + z * pose[frame + 7]!;
  pose[to + 2] = x * pose[frame + 2]! + y * pose[frame + 5]! + z * pose[frame + 8]!;
}

/** Writes the body-fixed point with components (fixed[at], …) in the frame at `frame`, measured from `origin`. */
export function carryPoint(
  fixed: Float64Array,
  at: number,
  pose: Float64Array,
  origin: number,
  frame: number,
  to: number,
): void {
  const x = fixed[at]!;
  const y = fixed[at + 1]!;
  const z = fixed[at + 2]!;
  pose[to] = pose[origin]! + x * pose[frame]! + y * pose[frame + 3]! + z * pose[frame + 6]!;
  pose[to + 1] =
    pose[origin + 1]! + x * pose[frame + 1]! + y * pose[frame + 4]! + z * pose[frame + 7]!;
  pose[to + 2] =
    pose[origin + 2]! + x * pose[frame + 2]! + y * pose[frame + 5]! + z * pose[frame + 8]!;
}

/** Writes factor·v(origin) + ω × (point − origin), v and ω read from the buffer: a body-fixed point's velocity. */
export function carryVelocity(
  pose: Float64Array,
  origin: number,
  originRate: number,
  omega: number,
  point: number,
  to: number,
): void {
  const x = pose[point]! - pose[origin]!;
  const y = pose[point + 1]! - pose[origin + 1]!;
  const z = pose[point + 2]! - pose[origin + 2]!;
  const ox = pose[omega]!;
  const oy = pose[omega + 1]!;
  const oz = pose[omega + 2]!;
  pose[to] = pose[originRate]! + oy * z - oz * y;
  pose[to + 1] = pose[originRate + 1]! + oz * x - ox * z;
  pose[to + 2] = pose[originRate + 2]! + ox * y - oy * x;
}
