/**
 * Where a pointer's ray meets the things that are dragged. A ray is six numbers: origin, then unit direction; vehicle
 * axes, mm. Each function is pure, so that a drag is measured from the value at pointer-down and no error piles up.
 */

/** Six numbers of a ray. */
export type FlatRay = Float64Array;

/** Three numbers, readable by place. */
export type Triple = ArrayLike<number>;

/** Sine of the angle between ray and line below which the line cannot be read off the ray: about 8.6°. */
export const LEAST_SINE = 0.15;

/**
 * Distance along the line from `point` in the unit `direction` to its point nearest to the ray, mm; NaN when the ray
 * runs along the line. With w = point − origin and c = d·e it is (c·(w·d) − w·e)/(1 − c²), d the ray, e the line.
 */
export function alongLine(ray: FlatRay, point: Triple, direction: Triple): number {
  const wx = point[0]! - ray[0]!;
  const wy = point[1]! - ray[1]!;
  const wz = point[2]! - ray[2]!;
  const dx = ray[3]!;
  const dy = ray[4]!;
  const dz = ray[5]!;
  const c = dx * direction[0]! + dy * direction[1]! + dz * direction[2]!;
  const squared = 1 - c * c;
  if (squared < LEAST_SINE * LEAST_SINE) return Number.NaN;
  const along = wx * dx + wy * dy + wz * dz;
  const aside = wx * direction[0]! + wy * direction[1]! + wz * direction[2]!;
  return (c * along - aside) / squared;
}

/** Writes where the ray meets the plane through `point` with the unit `normal`; false when it runs along the plane. */
export function onPlane(ray: FlatRay, point: Triple, normal: Triple, out: Float64Array): boolean {
  const across = ray[3]! * normal[0]! + ray[4]! * normal[1]! + ray[5]! * normal[2]!;
  if (Math.abs(across) < LEAST_SINE) return false;
  const t =
    ((point[0]! - ray[0]!) * normal[0]! +
      (point[1]! - ray[1]!) * normal[1]! +
      (point[2]! - ray[2]!) * normal[2]!) /
    across;
  for (let i = 0; i < 3; i += 1) out[i] = ray[i]! + t * ray[3 + i]!;
  return true;
}

/** Where the ray meets the disc at `s` along the axis, if inside `radius`: its distance along the ray, else infinity. */
function meetsDisc(ray: FlatRay, centre: Triple, axis: Triple, s: number, radius: number): number {
  const across = ray[3]! * axis[0]! + ray[4]! * axis[1]! + ray[5]! * axis[2]!;
  if (across === 0) return Number.POSITIVE_INFINITY;
  let height = -s;
  for (let i = 0; i < 3; i += 1) height += (ray[i]! - centre[i]!) * axis[i]!;
  const t = -height / across;
  let squared = 0;
  for (let i = 0; i < 3; i += 1) {
    const aside = ray[i]! + t * ray[3 + i]! - centre[i]! - s * axis[i]!;
    squared += aside * aside;
  }
  return t > 0 && squared <= radius * radius ? t : Number.POSITIVE_INFINITY;
}

/** Where the ray enters the side of the drum |s| ≤ half: with parts normal to the axis, |o⊥ + t·d⊥| = radius. */
function meetsSide(
  ray: FlatRay,
  centre: Triple,
  axis: Triple,
  half: number,
  radius: number,
): number {
  let so = 0;
  let sd = 0;
  for (let i = 0; i < 3; i += 1) {
    so += (ray[i]! - centre[i]!) * axis[i]!;
    sd += ray[3 + i]! * axis[i]!;
  }
  let a = 0;
  let b = 0;
  let c = -radius * radius;
  for (let i = 0; i < 3; i += 1) {
    const o = ray[i]! - centre[i]! - so * axis[i]!;
    const d = ray[3 + i]! - sd * axis[i]!;
    a += d * d;
    b += o * d;
    c += o * o;
  }
  const left = b * b - a * c;
  if (a === 0 || left < 0) return Number.POSITIVE_INFINITY;
  const t = (-b - Math.sqrt(left)) / a;
  return t > 0 && Math.abs(so + t * sd) <= half ? t : Number.POSITIVE_INFINITY;
}

/**
 * The wheel as the drum of its tyre: writes the point where the ray first meets it. False when it misses. `half` is
 * half the drum's width, along the unit hub axis from the wheel centre.
 */
export function meetsDrum(
  ray: FlatRay,
  centre: Triple,
  axis: Triple,
  half: number,
  radius: number,
  out: Float64Array,
): boolean {
  const t = Math.min(
    meetsDisc(ray, centre, axis, half, radius),
    meetsDisc(ray, centre, axis, -half, radius),
    meetsSide(ray, centre, axis, half, radius),
  );
  if (t === Number.POSITIVE_INFINITY) return false;
  for (let i = 0; i < 3; i += 1) out[i] = ray[i]! + t * ray[3 + i]!;
  return true;
}
