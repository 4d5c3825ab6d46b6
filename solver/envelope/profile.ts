/** The tyre's section as a planar signed distance: exact, with its gradient. */

/** A closed polygon in (s, ρ), mm. */
export interface Profile {
  /** [s, ρ, s, ρ, …], clockwise: the whole polygon, the last point on the first, or its half at s ≥ 0. */
  readonly line: Float64Array;
  /** 1/length² of every edge. */
  readonly inverse: Float64Array;
  /** True where the section has no hollow corner: then its signed distance is a convex function. */
  readonly isConvex: boolean;
  /** True where the line is only the half at s ≥ 0, and the other half its mirror image. */
  readonly isMirrored: boolean;
  /** Greatest distance of the section from the wheel centre. */
  readonly reach: number;
  /** How deep in the section a point of its middle can lie. */
  readonly depth: number;
}

/** What was found nearest, refilled by `profileDistance`. */
export interface NearestOnProfile {
  /** Negative inside. */
  distance: number;
  /** Gradient of the distance along s and ρ, unit long. */
  alongAxis: number;
  outward: number;
}

export function createNearest(): NearestOnProfile {
  return { distance: 0.5, alongAxis: 0.5, outward: 0.5 };
}

/** The half at s ≥ 0 of a polygon that is its own mirror image in s = 0, from there to there; else null. */
function mirrorHalf(line: Float64Array): Float64Array | null {
  const last = line.length - 2;
  for (let at = 0; at < last; at += 2) {
    const other = last - 2 - at;
    if (line[at] !== -line[other]! || line[at + 1] !== line[other + 1]) return null;
  }
  const half = Array.from(line.subarray(last / 2, last));
  return Float64Array.from([0, half[1]!, ...half, 0, half.at(-1)!]);
}

/** Makes a profile of a closed line that runs clockwise, as `tyreSections` gives it. */
export function createProfile(whole: Float64Array): Profile {
  const edges = whole.length / 2 - 1;
  let isConvex = true;
  let reach = 0;
  for (let i = 0; i < edges; i += 1) {
    const next = 2 * ((i + 1) % edges);
    const ds = whole[2 * i + 2]! - whole[2 * i]!;
    const dr = whole[2 * i + 3]! - whole[2 * i + 1]!;
    const turn =
      ds * (whole[next + 3]! - whole[next + 1]!) - dr * (whole[next + 2]! - whole[next]!);
    if (turn > 0) isConvex = false;
    reach = Math.max(reach, Math.hypot(whole[2 * i]!, whole[2 * i + 1]!));
  }
  const half = isConvex ? mirrorHalf(whole) : null;
  const line = half ?? whole;
  const inverse = new Float64Array(line.length / 2 - 1);
  for (let i = 0; i < inverse.length; i += 1) {
    const ds = line[2 * i + 2]! - line[2 * i]!;
    const dr = line[2 * i + 3]! - line[2 * i + 1]!;
    inverse[i] = 1 / (ds * ds + dr * dr || 1);
  }
  const profile = { line, inverse, isConvex, isMirrored: half !== null, reach, depth: 0 };
  return { ...profile, depth: depthOf(profile) };
}

const DEPTH_STEPS = 200;

/** Greatest distance from the section's edge to a point inside it at s = 0. */
function depthOf(profile: Profile): number {
  const nearest = createNearest();
  let depth = 0;
  for (let i = 0; i <= DEPTH_STEPS; i += 1) {
    profileDistance(profile, 0, (profile.reach * i) / DEPTH_STEPS, nearest);
    depth = Math.max(depth, -nearest.distance);
  }
  return depth;
}

/** Nearer to the line than this, mm, the gradient is the edge's own normal. */
const ON_LINE = 1e-6;

/** Signed distance from (s, ρ) to the polygon, into `out`. */
export function profileDistance(
  profile: Profile,
  s: number,
  radius: number,
  out: NearestOnProfile,
): void {
  const { line, inverse, isConvex, isMirrored } = profile;
  const side = isMirrored && s < 0 ? -1 : 1;
  const along = side * s;
  let least = Number.POSITIVE_INFINITY;
  let toS = 0;
  let toR = 0;
  let edge = 0;
  // Inside a convex polygon is right of all its edges; else what a ray along +s leaves through an odd number of them.
  let isInside = isConvex;
  let s0 = line[0]!;
  let r0 = line[1]!;
  for (let i = 0; i < inverse.length; i += 1) {
    const s1 = line[2 * i + 2]!;
    const r1 = line[2 * i + 3]!;
    const es = s1 - s0;
    const er = r1 - r0;
    const ps = along - s0;
    const pr = radius - r0;
    const foot = (ps * es + pr * er) * inverse[i]!;
    const t = Math.max(0, Math.min(1, foot));
    const qs = ps - t * es;
    const qr = pr - t * er;
    const squared = qs * qs + qr * qr;
    if (squared < least) {
      least = squared;
      toS = qs;
      toR = qr;
      edge = i;
    }
    if (isConvex) isInside &&= es * pr < er * ps;
    else if (r0 > radius !== r1 > radius && ps < (pr * es) / er) isInside = !isInside;
    s0 = s1;
    r0 = r1;
  }
  const size = Math.sqrt(least);
  out.distance = isInside ? -size : size;
  if (size > ON_LINE) {
    out.alongAxis = (side * toS) / out.distance;
    out.outward = toR / out.distance;
    return;
  }
  const length = Math.sqrt(inverse[edge]!);
  out.alongAxis = -side * (line[2 * edge + 3]! - line[2 * edge + 1]!) * length;
  out.outward = (line[2 * edge + 2]! - line[2 * edge]!) * length;
}
