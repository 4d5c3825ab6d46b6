/**
 * A lower bound, over a whole cell, of the distance between two convex hulls of moving points.
 *
 * For every direction ν the distance is at least min ν·(a − b)/|ν| over all pairs of their points. At the cell's centre
 * ν = n along the shortest connexion makes this exact; over the cell ν = n + τa·α + τb·β, tilted along with the bodies so
 * that edges which lie square to n stay square to ν. Then nothing is lost to first order, and the bound falls short of
 * the distance by the square of the cell's size only.
 */

/** Numbers of one point in a buffer: where it is at the centre, its slopes along α and along β, its rest. */
export const POINT = 10;
const A = 3;
const B = 6;
const REST = 9;

/** Two hulls and the direction between them; refilled for every bound. */
export interface Separation {
  readonly first: Float64Array;
  readonly second: Float64Array;
  firstCount: number;
  secondCount: number;
  /** Unit direction from the second hull's nearest point to the first's at the centre, and their distance there. */
  nx: number;
  ny: number;
  nz: number;
  distance: number;
  /** How far below its chord, in y, the first hull's edge may really lie. */
  sag: number;
  /** The tilts of the direction. */
  readonly tilt: Float64Array;
}

const MOST_POINTS = 8;

export function createSeparation(): Separation {
  return {
    first: new Float64Array(MOST_POINTS * POINT),
    second: new Float64Array(MOST_POINTS * POINT),
    firstCount: 2,
    secondCount: 2,
    nx: 0.5,
    ny: 0.5,
    nz: 0.5,
    distance: 0.5,
    sag: 0,
    tilt: new Float64Array(6),
  };
}

/** min over one pair of points of ν·(a − b), from below. */
function pairBound(s: Separation, i: number, j: number, length: number): number {
  const { first: p, second: q, tilt: t, nx, ny, nz } = s;
  const x = p[i]! - q[j]!;
  const y = p[i + 1]! - q[j + 1]!;
  const z = p[i + 2]! - q[j + 2]!;
  const ax = p[i + A]! - q[j + A]!;
  const ay = p[i + A + 1]! - q[j + A + 1]!;
  const az = p[i + A + 2]! - q[j + A + 2]!;
  const bx = p[i + B]! - q[j + B]!;
  const by = p[i + B + 1]! - q[j + B + 1]!;
  const bz = p[i + B + 2]! - q[j + B + 2]!;
  const alongA = nx * ax + ny * ay + nz * az + t[0]! * x + t[1]! * y + t[2]! * z;
  const alongB = nx * bx + ny * by + nz * bz + t[3]! * x + t[4]! * y + t[5]! * z;
  const bendA = t[0]! * ax + t[1]! * ay + t[2]! * az;
  const bendB = t[3]! * bx + t[4]! * by + t[5]! * bz;
  const mixed = t[0]! * bx + t[1]! * by + t[2]! * bz + t[3]! * ax + t[4]! * ay + t[5]! * az;
  return (
    nx * x +
    ny * y +
    nz * z -
    Math.abs(alongA) -
    Math.abs(alongB) +
    Math.min(0, bendA) +
    Math.min(0, bendB) -
    Math.abs(mixed) -
    length * (p[i + REST]! + q[j + REST]!)
  );
}

/** The bound that the tilts in the buffer give; it may be negative, which says nothing. */
export function tiltedBound(s: Separation): number {
  const t = s.tilt;
  const tilted =
    Math.sqrt(t[0]! * t[0]! + t[1]! * t[1]! + t[2]! * t[2]!) +
    Math.sqrt(t[3]! * t[3]! + t[4]! * t[4]! + t[5]! * t[5]!);
  const length = Math.sqrt(1 + tilted * tilted);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < s.firstCount; i += 1) {
    for (let j = 0; j < s.secondCount; j += 1) {
      least = Math.min(least, pairBound(s, i * POINT, j * POINT, length));
    }
  }
  if (s.sag > 0) least -= Math.max(0, s.ny + tilted) * s.sag;
  return least > 0 ? least / length : least;
}

/** Direction of a hull's edge from its first to its second point, less its part along n; and how n·edge grows. */
interface Edge {
  x: number;
  y: number;
  z: number;
  growA: number;
  growB: number;
}

function takeEdge(s: Separation, points: Float64Array, edge: Edge): void {
  const x = points[POINT]! - points[0]!;
  const y = points[POINT + 1]! - points[1]!;
  const z = points[POINT + 2]! - points[2]!;
  const along = s.nx * x + s.ny * y + s.nz * z;
  edge.x = x - along * s.nx;
  edge.y = y - along * s.ny;
  edge.z = z - along * s.nz;
  edge.growA = grow(s, points, A);
  edge.growB = grow(s, points, B);
}

function grow({ nx, ny, nz }: Separation, points: Float64Array, slope: number): number {
  const at = POINT + slope;
  return (
    nx * (points[at]! - points[slope]!) +
    ny * (points[at + 1]! - points[slope + 1]!) +
    nz * (points[at + 2]! - points[slope + 2]!)
  );
}

const _edge1: Edge = { x: 0.5, y: 0.5, z: 0.5, growA: 0.5, growB: 0.5 };
const _edge2: Edge = { x: 0.5, y: 0.5, z: 0.5, growA: 0.5, growB: 0.5 };

function setTilt(t: Float64Array, at: number, u: number, v: number): void {
  t[at] = u * _edge1.x + v * _edge2.x;
  t[at + 1] = u * _edge1.y + v * _edge2.y;
  t[at + 2] = u * _edge1.z + v * _edge2.z;
}

/** Tilts so that one edge stays square to ν. */
function squareToOne(t: Float64Array, { x, y, z, growA, growB }: Edge, isFirst: boolean): boolean {
  const squared = x * x + y * y + z * z;
  if (!(squared > 0)) return false;
  setTilt(t, 0, isFirst ? -growA / squared : 0, isFirst ? 0 : -growA / squared);
  setTilt(t, 3, isFirst ? -growB / squared : 0, isFirst ? 0 : -growB / squared);
  return true;
}

/** Edges more parallel than this share of their square tilt ν too far to help. */
const PARALLEL = 1e-6;

/** Tilts so that both edges stay square to ν. */
function squareToBoth(t: Float64Array): boolean {
  const p = _edge1;
  const q = _edge2;
  const pp = p.x * p.x + p.y * p.y + p.z * p.z;
  const qq = q.x * q.x + q.y * q.y + q.z * q.z;
  const pq = p.x * q.x + p.y * q.y + p.z * q.z;
  const det = pp * qq - pq * pq;
  if (!(det > PARALLEL * pp * qq)) return false;
  setTilt(t, 0, (pq * q.growA - qq * p.growA) / det, (pq * p.growA - pp * q.growA) / det);
  setTilt(t, 3, (pq * q.growB - qq * p.growB) / det, (pq * p.growB - pp * q.growB) / det);
  return true;
}

/**
 * Lower bound of the distance between two moving segments over the cell, at least 0; `enough` spares the search for a
 * better one. Needs the direction set; a distance of 0 at the centre has none and bounds nothing.
 */
export function segmentBound(s: Separation, enough: number): number {
  if (!(s.distance > 0)) return 0;
  const t = s.tilt;
  t.fill(0);
  let best = Math.max(0, tiltedBound(s));
  if (best >= enough) return best;
  takeEdge(s, s.first, _edge1);
  takeEdge(s, s.second, _edge2);
  if (squareToBoth(t)) best = Math.max(best, tiltedBound(s));
  if (best >= enough) return best;
  if (squareToOne(t, _edge1, true)) best = Math.max(best, tiltedBound(s));
  if (best >= enough) return best;
  if (squareToOne(t, _edge2, false)) best = Math.max(best, tiltedBound(s));
  return best;
}

function clampShare(value: number): number {
  return Math.min(1, Math.max(0, value));
}

/** Shares along both segments of their nearest points at the centre. */
const _near = { first: 0.5, second: 0.5 };

function findNearest(p: Float64Array, q: Float64Array): void {
  const ux = p[POINT]! - p[0]!;
  const uy = p[POINT + 1]! - p[1]!;
  const uz = p[POINT + 2]! - p[2]!;
  const vx = q[POINT]! - q[0]!;
  const vy = q[POINT + 1]! - q[1]!;
  const vz = q[POINT + 2]! - q[2]!;
  const wx = p[0]! - q[0]!;
  const wy = p[1]! - q[1]!;
  const wz = p[2]! - q[2]!;
  const uu = ux * ux + uy * uy + uz * uz;
  const vv = vx * vx + vy * vy + vz * vz;
  const uv = ux * vx + uy * vy + uz * vz;
  const uw = ux * wx + uy * wy + uz * wz;
  const vw = vx * wx + vy * wy + vz * wz;
  const det = uu * vv - uv * uv;
  let a = det > 1e-12 * uu * vv ? clampShare((uv * vw - vv * uw) / det) : 0;
  let b = vv > 0 ? (uv * a + vw) / vv : 0;
  if (!(b >= 0 && b <= 1)) {
    b = clampShare(b);
    a = uu > 0 ? clampShare((uv * b - uw) / uu) : 0;
  }
  _near.first = a;
  _near.second = b;
}

/** Sets the direction between the two segments (first and second point of each hull) at the centre. */
export function aimSegments(s: Separation): void {
  const { first: p, second: q } = s;
  findNearest(p, q);
  const { first: a, second: b } = _near;
  const x = (1 - a) * p[0]! + a * p[POINT]! - (1 - b) * q[0]! - b * q[POINT]!;
  const y = (1 - a) * p[1]! + a * p[POINT + 1]! - (1 - b) * q[1]! - b * q[POINT + 1]!;
  const z = (1 - a) * p[2]! + a * p[POINT + 2]! - (1 - b) * q[2]! - b * q[POINT + 2]!;
  aim(s, x, y, z);
}

/** Sets the direction to this connexion. */
export function aim(s: Separation, x: number, y: number, z: number): void {
  const distance = Math.sqrt(x * x + y * y + z * z);
  s.distance = distance;
  const inverse = distance > 0 ? 1 / distance : 0;
  s.nx = x * inverse;
  s.ny = y * inverse;
  s.nz = z * inverse;
}
