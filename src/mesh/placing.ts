/** Where a mesh stands in the vehicle: turned about the fixed axes x, then y, then z through its own origin, then shifted. */
import type { Obstacle, Vector3 } from '../../solver/index.ts';
import { meshPosition, meshRotation } from '../../solver/model/defaults.ts';
import { radians } from '../../solver/units.ts';
import type { MeshBox } from './data.ts';

export type MeshObstacle = Extract<Obstacle, { shape: 'mesh' }>;

export interface Placing {
  /** The turn, row by row: vehicle = turn · mesh + position. */
  readonly turn: Float64Array;
  readonly position: Vector3;
}

/** Cosine and sine of degrees; a quarter turn has no rounding, so that it keeps a box's faces where they are. */
function direction(degrees: number): readonly [cos: number, sin: number] {
  const quarter = (((degrees / 90) % 4) + 4) % 4;
  if (Number.isInteger(quarter)) {
    return (
      [
        [1, 0],
        [0, 1],
        [-1, 0],
        [0, -1],
      ] as const
    )[quarter as 0 | 1 | 2 | 3];
  }
  return [Math.cos(radians(degrees)), Math.sin(radians(degrees))];
}

export function placingOf(mesh: MeshObstacle): Placing {
  const [rx, ry, rz] = meshRotation(mesh);
  const [cx, sx] = direction(rx);
  const [cy, sy] = direction(ry);
  const [cz, sz] = direction(rz);
  const turn = Float64Array.of(
    cz * cy,
    cz * sy * sx - sz * cx,
    cz * sy * cx + sz * sx,
    sz * cy,
    sz * sy * sx + cz * cx,
    sz * sy * cx - cz * sx,
    -sy,
    cy * sx,
    cy * cx,
  );
  return { turn, position: meshPosition(mesh) };
}

/** Writes a point of the vehicle as a point of the mesh. */
export function toMesh(
  { turn, position }: Placing,
  from: ArrayLike<number>,
  at: number,
  out: Float64Array,
  to: number,
): void {
  const x = from[at]! - position[0];
  const y = from[at + 1]! - position[1];
  const z = from[at + 2]! - position[2];
  for (let i = 0; i < 3; i += 1) out[to + i] = turn[i]! * x + turn[3 + i]! * y + turn[6 + i]! * z;
}

/** Writes a direction of the vehicle as a direction of the mesh. */
export function directionToMesh(
  { turn }: Placing,
  from: ArrayLike<number>,
  at: number,
  out: Float64Array,
  to: number,
): void {
  for (let i = 0; i < 3; i += 1) {
    out[to + i] =
      turn[i]! * from[at]! + turn[3 + i]! * from[at + 1]! + turn[6 + i]! * from[at + 2]!;
  }
}

/** Writes a point of the mesh as a point of the vehicle; `from` and `out` may be the same. */
export function toVehicle(
  { turn, position }: Placing,
  from: ArrayLike<number>,
  out: Float64Array,
): void {
  const x = from[0]!;
  const y = from[1]!;
  const z = from[2]!;
  for (let i = 0; i < 3; i += 1) {
    out[i] = position[i]! + turn[3 * i]! * x + turn[3 * i + 1]! * y + turn[3 * i + 2]! * z;
  }
}

/** The box in the vehicle about all placed vertices. */
export function placedBox(positions: Float32Array, placing: Placing): MeshBox {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  const place = new Float64Array(3);
  for (let at = 0; at < positions.length; at += 3) {
    for (let i = 0; i < 3; i += 1) place[i] = positions[at + i]!;
    toVehicle(placing, place, place);
    for (let i = 0; i < 3; i += 1) {
      const axis = i as 0 | 1 | 2;
      if (place[i]! < min[axis]) min[axis] = place[i]!;
      if (place[i]! > max[axis]) max[axis] = place[i]!;
    }
  }
  return { min, max };
}
