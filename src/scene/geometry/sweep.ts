/** Tubes and limbs: round or elliptical sections swept along a path without twist. */
import { Matrix4, Vector3 } from 'three';
import { addBall } from './revolve.ts';
import { addQuad, addVertex, leastAligned, type Solid } from './solid.ts';

/** Half axes of a section: across (along the carried hint) and over, mm. */
export type HalfAxes = readonly [number, number];

export interface Sweep {
  readonly segments?: number;
  /** Direction that the first half axis keeps to as nearly as it can. */
  readonly hint?: Vector3;
  /** Close the ends with flat faces. */
  readonly capped?: boolean;
}

const _identity = new Matrix4();

/** Unit tangents of a path, the mean of both neighbouring directions inside it. */
export function pathTangents(points: readonly Vector3[]): Vector3[] {
  return points.map((point, i) => {
    const before = points[Math.max(0, i - 1)]!;
    const after = points[Math.min(points.length - 1, i + 1)]!;
    const tangent = after.clone().sub(before);
    return tangent.lengthSq() > 0 ? tangent.normalize() : point.clone().set(0, 0, 1);
  });
}

function addRing(
  solid: Solid,
  centre: Vector3,
  across: Vector3,
  over: Vector3,
  [a, b]: HalfAxes,
  segments: number,
  cap: Vector3 | null,
): number {
  const start = solid.positions.length / 3;
  const point = new Vector3();
  const normal = new Vector3();
  for (let j = 0; j <= segments; j += 1) {
    const cos = Math.cos((2 * Math.PI * j) / segments);
    const sin = Math.sin((2 * Math.PI * j) / segments);
    point
      .copy(centre)
      .addScaledVector(across, a * cos)
      .addScaledVector(over, b * sin);
    normal
      .set(0, 0, 0)
      .addScaledVector(across, cos / a)
      .addScaledVector(over, sin / b)
      .normalize();
    const n = cap ?? normal;
    addVertex(solid, _identity, point.x, point.y, point.z, n.x, n.y, n.z);
  }
  return start;
}

/** Sweeps elliptical sections along `points`; `halfAxes` is asked at the share 0 to 1 of the path's points. */
export function sweep(
  solid: Solid,
  points: readonly Vector3[],
  halfAxes: (share: number) => HalfAxes,
  { segments = 18, hint, capped = true }: Sweep = {},
): void {
  const tangents = pathTangents(points);
  const across = (hint ?? leastAligned(tangents[0]!)).clone();
  const over = new Vector3();
  const last = points.length - 1;
  let before = -1;
  points.forEach((point, i) => {
    const tangent = tangents[i]!;
    across.addScaledVector(tangent, -across.dot(tangent));
    if (across.lengthSq() < 1e-9)
      across
        .copy(leastAligned(tangent))
        .addScaledVector(tangent, -leastAligned(tangent).dot(tangent));
    across.normalize();
    over.crossVectors(tangent, across);
    const size = halfAxes(last === 0 ? 0 : i / last);
    const row = addRing(solid, point, across, over, size, segments, null);
    if (before >= 0)
      for (let j = 0; j < segments; j += 1)
        addQuad(solid, before + j, before + j + 1, row + j + 1, row + j);
    before = row;
    if (!capped || (i !== 0 && i !== last)) return;
    const outwards = i === 0 ? tangent.clone().negate() : tangent;
    const rim = addRing(solid, point, across, over, size, segments, outwards);
    for (let j = 1; j < segments - 1; j += 1)
      solid.indices.push(rim, ...(i === 0 ? [rim + j + 1, rim + j] : [rim + j, rim + j + 1]));
  });
}

/** A polyline with its corners rounded by arcs of at most `radius`, its ends kept. */
export function roundedPath(points: readonly Vector3[], radius: number, steps = 6): Vector3[] {
  const path = [points[0]!.clone()];
  for (let i = 1; i < points.length - 1; i += 1) {
    const corner = points[i]!;
    const back = points[i - 1]!.clone().sub(corner);
    const ahead = points[i + 1]!.clone().sub(corner);
    const room = Math.min(back.length(), ahead.length()) / 2;
    back.normalize();
    ahead.normalize();
    const half = Math.acos(Math.max(-1, Math.min(1, back.dot(ahead)))) / 2;
    const reach = Math.min(room, radius / Math.tan(half));
    if (reach < 1e-3 || half > Math.PI / 2 - 1e-4) {
      path.push(corner.clone());
      continue;
    }
    const from = corner.clone().addScaledVector(back, reach);
    const to = corner.clone().addScaledVector(ahead, reach);
    const arc = reach * Math.tan(half);
    const centre = corner
      .clone()
      .addScaledVector(back.clone().add(ahead).normalize(), arc / Math.sin(half));
    const spread = Math.PI - 2 * half;
    const u = from.clone().sub(centre);
    const v = to.clone().sub(centre);
    for (let k = 0; k <= steps; k += 1) {
      const share = k / steps;
      const a = Math.sin((1 - share) * spread) / Math.sin(spread);
      const b = Math.sin(share * spread) / Math.sin(spread);
      path.push(centre.clone().addScaledVector(u, a).addScaledVector(v, b));
    }
  }
  path.push(points.at(-1)!.clone());
  return path;
}

/** A round tube along a polyline, its bends rounded. */
export function addTube(
  solid: Solid,
  points: readonly Vector3[],
  radius: number,
  {
    bend = 2 * radius,
    segments = 18,
    capped = true,
  }: { bend?: number; segments?: number; capped?: boolean } = {},
): void {
  sweep(solid, roundedPath(points, bend), () => [radius, radius], { segments, capped });
}

/** A round tube with a ball at both ends. */
export function addRoundedTube(solid: Solid, points: readonly Vector3[], radius: number): void {
  addTube(solid, points, radius, { capped: false });
  addBall(solid, points[0]!, radius);
  addBall(solid, points.at(-1)!, radius);
}

/** Points of a cubic that leaves `from` along `out` and arrives at `to` along `into` (lengths set the fullness). */
export function curve(
  from: Vector3,
  out: Vector3,
  to: Vector3,
  into: Vector3,
  steps = 12,
): Vector3[] {
  return Array.from({ length: steps + 1 }, (_, i) => {
    const t = i / steps;
    const u = 1 - t;
    return from
      .clone()
      .multiplyScalar(u * u * (1 + 2 * t))
      .addScaledVector(out, 3 * t * u * u)
      .addScaledVector(into, -3 * t * t * u)
      .addScaledVector(to, t * t * (3 - 2 * t));
  });
}
