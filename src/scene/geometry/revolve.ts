/** Surfaces of revolution, and the solids made of them: pins, rings, balls. */
import { Matrix4, type Vector3 } from 'three';
import type { SectionPoint } from '../../../solver/index.ts';
import { addQuad, addVertex, axisFrame, type Solid } from './solid.ts';

export interface Turn {
  /** Flat steps round the full circle. */
  readonly segments?: number;
  /** Angles, rad, from local x towards local y, that the surface begins at and spans; the full circle if left out. */
  readonly from?: number;
  readonly span?: number;
  /** Edges of the profile sharper than this, rad, are kept sharp. */
  readonly crease?: number;
}

const CREASE = (32 * Math.PI) / 180;

/** One row of a turned profile: place and normal, [s, ρ] each. */
export interface Row {
  readonly s: number;
  readonly radius: number;
  readonly ns: number;
  readonly nr: number;
}

/** Normal left of each edge of the profile, [ns, nρ]. */
function edgeNormals(profile: readonly SectionPoint[]): [number, number][] {
  return profile.slice(1).map(([s, radius], i) => {
    const [s0, radius0] = profile[i]!;
    const size = Math.hypot(s - s0, radius - radius0) || 1;
    return [-(radius - radius0) / size, (s - s0) / size];
  });
}

function joined(a: readonly [number, number], b: readonly [number, number]): [number, number] {
  const size = Math.hypot(a[0] + b[0], a[1] + b[1]) || 1;
  return [(a[0] + b[0]) / size, (a[1] + b[1]) / size];
}

/** Pairs of rows, one pair an edge, with normals smoothed over edges that are not sharp. */
export function profileRows(
  profile: readonly SectionPoint[],
  crease = CREASE,
): (readonly [Row, Row])[] {
  const normals = edgeNormals(profile);
  const smooth = Math.cos(crease);
  const first = profile[0]!;
  const last = profile.at(-1)!;
  const closed = Math.hypot(first[0] - last[0], first[1] - last[1]) < 1e-9;
  const blend = (own: [number, number], other: [number, number] | undefined): [number, number] =>
    other !== undefined && own[0] * other[0] + own[1] * other[1] > smooth
      ? joined(own, other)
      : own;
  return normals.map((normal, i) => {
    const before = blend(normal, normals[i - 1] ?? (closed ? normals.at(-1) : undefined));
    const after = blend(normal, normals[i + 1] ?? (closed ? normals[0] : undefined));
    const [s0, radius0] = profile[i]!;
    const [s1, radius1] = profile[i + 1]!;
    return [
      { s: s0, radius: radius0, ns: before[0], nr: before[1] },
      { s: s1, radius: radius1, ns: after[0], nr: after[1] },
    ] as const;
  });
}

function addRow(
  solid: Solid,
  at: Matrix4,
  row: Row,
  from: number,
  step: number,
  steps: number,
): number {
  const start = solid.positions.length / 3;
  for (let j = 0; j <= steps; j += 1) {
    const cos = Math.cos(from + j * step);
    const sin = Math.sin(from + j * step);
    addVertex(
      solid,
      at,
      row.radius * cos,
      row.radius * sin,
      row.s,
      row.nr * cos,
      row.nr * sin,
      row.ns,
    );
  }
  return start;
}

/**
 * Turns a profile [s, ρ] about the local z axis of `at`. Its outside is left of the way along the profile: an outer
 * surface runs towards growing s, a bore towards falling s; a closed profile repeats its first point.
 */
export function revolve(
  solid: Solid,
  at: Matrix4,
  profile: readonly SectionPoint[],
  { segments = 24, from = 0, span = 2 * Math.PI, crease = CREASE }: Turn = {},
): void {
  const steps = Math.max(1, Math.round((segments * span) / (2 * Math.PI)));
  for (const [low, high] of profileRows(profile, crease)) {
    const a = addRow(solid, at, low, from, span / steps, steps);
    const b = addRow(solid, at, high, from, span / steps, steps);
    for (let j = 0; j < steps; j += 1) addQuad(solid, a + j, a + j + 1, b + j + 1, b + j);
  }
}

/** Profile of a pin from `low` to `high` along the axis, its ends flat with a small chamfer. */
export function pinProfile(
  radius: number,
  low: number,
  high: number,
  chamfer = 1.5,
): SectionPoint[] {
  const c = Math.min(chamfer, radius / 2, (high - low) / 3);
  return [
    [low, 0],
    [low, radius - c],
    [low + c, radius],
    [high - c, radius],
    [high, radius - c],
    [high, 0],
  ];
}

/** Closed profile of a ring between two radii. */
export function ringProfile(
  inner: number,
  outer: number,
  low: number,
  high: number,
  chamfer = 1.5,
): SectionPoint[] {
  const c = Math.min(chamfer, (outer - inner) / 3, (high - low) / 3);
  return [
    [low, inner],
    [low, outer - c],
    [low + c, outer],
    [high - c, outer],
    [high, outer - c],
    [high, inner],
    [low, inner],
  ];
}

/** A pin between two points. */
export function addPin(
  solid: Solid,
  from: Vector3,
  to: Vector3,
  radius: number,
  segments = 20,
): void {
  const axis = to.clone().sub(from);
  const length = axis.length();
  if (length < 1e-6) return;
  revolve(solid, axisFrame(from, axis), pinProfile(radius, 0, length), { segments });
}

const BALL_STEPS = 10;

export function addBall(solid: Solid, centre: Vector3, radius: number, segments = 18): void {
  const profile = Array.from({ length: BALL_STEPS + 1 }, (_, i): SectionPoint => {
    const angle = (Math.PI * i) / BALL_STEPS;
    return [-radius * Math.cos(angle), radius * Math.sin(angle)];
  });
  revolve(solid, new Matrix4().setPosition(centre), profile, { segments });
}

/** A hexagon nut or head, `corner` being the radius over its corners. */
export function addHex(solid: Solid, at: Matrix4, corner: number, low: number, high: number): void {
  const flat = corner * Math.cos(Math.PI / 6);
  for (let side = 0; side < 6; side += 1) {
    const middle = (Math.PI / 3) * (side + 0.5);
    const nx = Math.cos(middle);
    const ny = Math.sin(middle);
    const half = corner / 2;
    const left = [flat * nx + half * ny, flat * ny - half * nx] as const;
    const right = [flat * nx - half * ny, flat * ny + half * nx] as const;
    const corners = [
      addVertex(solid, at, ...left, low, nx, ny, 0),
      addVertex(solid, at, ...right, low, nx, ny, 0),
      addVertex(solid, at, ...right, high, nx, ny, 0),
      addVertex(solid, at, ...left, high, nx, ny, 0),
    ] as const;
    addQuad(solid, ...corners);
    for (const [z, nz] of [
      [high, 1],
      [low, -1],
    ] as const) {
      const centre = addVertex(solid, at, 0, 0, z, 0, 0, nz);
      const a = addVertex(solid, at, ...left, z, 0, 0, nz);
      const b = addVertex(solid, at, ...right, z, 0, 0, nz);
      solid.indices.push(centre, ...(nz > 0 ? [a, b] : [b, a]));
    }
  }
}
