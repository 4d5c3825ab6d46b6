/**
 * Surfaces under construction: plain number lists that the builders add to, merged per material as they go, and turned
 * into buffer geometries once. Lengths mm, in the local axes of the body the surface belongs to.
 */
import { BufferAttribute, BufferGeometry, Matrix4, Vector3 } from 'three';
import type { Vector3 as Point } from '../../../solver/index.ts';
import { isPainted, MATERIAL_NAMES, type MaterialName } from '../materialNames.ts';
import type { Finish } from '../materials.ts';

export interface Solid {
  readonly positions: number[];
  readonly normals: number[];
  readonly indices: number[];
}

export function createSolid(): Solid {
  return { positions: [], normals: [], indices: [] };
}

const _point = new Vector3();
const _normal = new Vector3();

/** Adds a vertex given in the axes of `at` and returns its index. */
export function addVertex(
  solid: Solid,
  at: Matrix4,
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
): number {
  _point.set(x, y, z).applyMatrix4(at);
  _normal.set(nx, ny, nz).transformDirection(at);
  solid.positions.push(_point.x, _point.y, _point.z);
  solid.normals.push(_normal.x, _normal.y, _normal.z);
  return solid.positions.length / 3 - 1;
}

/** Adds the triangles of a quad seen counter-clockwise from outside. */
export function addQuad(solid: Solid, a: number, b: number, c: number, d: number): void {
  solid.indices.push(a, b, c, a, c, d);
}

export function toGeometry(solid: Solid): BufferGeometry {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(solid.positions), 3));
  geometry.setAttribute('normal', new BufferAttribute(Float32Array.from(solid.normals), 3));
  const wide = solid.positions.length / 3 > 65_535;
  const indices = wide ? Uint32Array.from(solid.indices) : Uint16Array.from(solid.indices);
  geometry.setIndex(new BufferAttribute(indices, 1));
  return geometry;
}

/** The surfaces of one rigid body, by material. */
export type Assembly = Partial<Record<MaterialName, Solid>>;
/** The same as geometries, one draw call each: all that is painted together, the rest by material. */
export type Pieces = Readonly<Partial<Record<Finish, BufferGeometry>>>;

/** The surface of that material, begun when first asked for. */
export function piece(assembly: Assembly, name: MaterialName): Solid {
  assembly[name] ??= createSolid();
  return assembly[name];
}

type Surface = readonly [MaterialName, Solid];

/** Surfaces as one geometry, each vertex naming its paint. */
function toPainted(surfaces: readonly Surface[]): BufferGeometry {
  const whole = createSolid();
  const paints: number[] = [];
  for (const [name, solid] of surfaces) {
    const start = whole.positions.length / 3;
    const paint = MATERIAL_NAMES.indexOf(name);
    for (const value of solid.positions) whole.positions.push(value);
    for (const value of solid.normals) whole.normals.push(value);
    for (const index of solid.indices) whole.indices.push(start + index);
    for (let i = 0; i < solid.positions.length; i += 3) paints.push(paint);
  }
  const geometry = toGeometry(whole);
  geometry.setAttribute('paint', new BufferAttribute(Uint8Array.from(paints), 1));
  return geometry;
}

export function toPieces(assembly: Assembly): Pieces {
  const surfaces = Object.entries(assembly) as [MaterialName, Solid][];
  const painted = surfaces.filter(([name]) => isPainted(name));
  const apart = surfaces.filter(([name]) => !isPainted(name));
  return {
    ...Object.fromEntries(apart.map(([name, solid]) => [name, toGeometry(solid)])),
    ...(painted.length === 0 ? {} : { painted: toPainted(painted) }),
  };
}

/** All surfaces of a body as one: for a design drawn in a single material. */
export function toOnePiece(assembly: Assembly): Pieces {
  return { painted: toPainted(Object.entries(assembly) as [MaterialName, Solid][]) };
}

export function disposePieces(pieces: Pieces): void {
  for (const geometry of Object.values(pieces)) geometry.dispose();
}

export function toVector([x, y, z]: Point): Vector3 {
  return new Vector3(x, y, z);
}

const FALLBACKS = [new Vector3(1, 0, 0), new Vector3(0, 1, 0), new Vector3(0, 0, 1)] as const;

/** The unit axis least aligned with a direction: a safe second direction for a frame. */
export function leastAligned(direction: Vector3): Vector3 {
  const size = [Math.abs(direction.x), Math.abs(direction.y), Math.abs(direction.z)];
  return FALLBACKS[size.indexOf(Math.min(...size))]!.clone();
}

/** Axes at `origin` with z along `axis` and x as near to `towards` as may be. */
export function axisFrame(origin: Vector3, axis: Vector3, towards?: Vector3): Matrix4 {
  const z = axis.clone().normalize();
  const x = (towards ?? leastAligned(z))
    .clone()
    .addScaledVector(z, -z.dot(towards ?? leastAligned(z)));
  if (x.lengthSq() < 1e-12) return axisFrame(origin, axis);
  x.normalize();
  const y = new Vector3().crossVectors(z, x);
  return new Matrix4().makeBasis(x, y, z).setPosition(origin);
}
