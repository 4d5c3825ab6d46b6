/** Which way a file's axes point in the vehicle, as the turns that an obstacle states. */
import type { Vector3 } from '../../solver/index.ts';
import { degrees } from '../../solver/units.ts';
import type { MeshBox } from './data.ts';
import { type MeshObstacle, type Placing, placingOf, toVehicle } from './placing.ts';

/** An axis of a file, or its opposite. */
export const AXES = ['x', '-x', 'y', '-y', 'z', '-z'] as const;
export type Axis = (typeof AXES)[number];

function unitOf(axis: Axis): Vector3 {
  const sign = axis.startsWith('-') ? -1 : 1;
  const letter = axis.at(-1);
  return [letter === 'x' ? sign : 0, letter === 'y' ? sign : 0, letter === 'z' ? sign : 0];
}

/** The axes across another one. */
export function axesAcross(axis: Axis): readonly Axis[] {
  return AXES.filter((other) => other.at(-1) !== axis.at(-1));
}

/** The turns about x, y and z that bring a file's `forward` and `up`, which must be across each other, to the vehicle's. */
export function rotationOf(forward: Axis, up: Axis): Vector3 {
  const f = unitOf(forward);
  const u = unitOf(up);
  const left: Vector3 = [
    u[1] * f[2] - u[2] * f[1],
    u[2] * f[0] - u[0] * f[2],
    u[0] * f[1] - u[1] * f[0],
  ];
  // Rows of the turn are the vehicle's axes in the file's: R = Rz·Ry·Rx, so that R₃₁ = −sin ry.
  const sine = -u[0];
  const [rx, rz] =
    Math.abs(sine) < 0.5
      ? [Math.atan2(u[1], u[2]), Math.atan2(left[0], f[0])]
      : [Math.atan2(sine * f[1], left[1]), 0];
  return [rx, Math.asin(sine), rz].map((angle) => Math.round(degrees(angle)) + 0) as [
    number,
    number,
    number,
  ];
}

/** The box in the vehicle about a turned box. Exact for quarter turns. */
export function turnedBox(box: MeshBox, placing: Placing): MeshBox {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  const corner = new Float64Array(3);
  for (let which = 0; which < 8; which += 1) {
    for (let i = 0; i < 3; i += 1) {
      const axis = i as 0 | 1 | 2;
      corner[i] = (which >> i) & 1 ? box.max[axis] : box.min[axis];
    }
    toVehicle(placing, corner, corner);
    for (let i = 0; i < 3; i += 1) {
      const axis = i as 0 | 1 | 2;
      min[axis] = Math.min(min[axis], corner[i]!);
      max[axis] = Math.max(max[axis], corner[i]!);
    }
  }
  return { min, max };
}

/** The box about a file's vertices where its axes point `forward` and `up`, its origin at the vehicle's, in mm. */
export function boxIn(box: MeshBox, scale: number, forward: Axis, up: Axis): MeshBox {
  const scaled = {
    min: box.min.map((value) => value * scale) as [number, number, number],
    max: box.max.map((value) => value * scale) as [number, number, number],
  };
  const turned: MeshObstacle = {
    name: '',
    shape: 'mesh',
    file: '',
    rotation: rotationOf(forward, up),
  };
  return turnedBox(scaled, placingOf(turned));
}
