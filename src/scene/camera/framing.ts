/**
 * Where the camera stands so that the whole corner fills the free part of the window. Pure numbers in vehicle axes, mm.
 * Front, side and above are seen through a very long lens: straight on, so near enough without perspective that lengths
 * can be compared (over a depth of ±500 mm a length errs by less than 1 %).
 */
import type { Insets, Viewpoint } from '../../state/view.ts';

/** A camera: where it looks, from which unit direction, how far away, and its vertical angle of view in degrees. */
export interface Shot {
  readonly target: [number, number, number];
  readonly direction: [number, number, number];
  distance: number;
  fov: number;
}

export function createShot(): Shot {
  return { target: [0, 0, 0], direction: [1, 0, 0], distance: 1000, fov: 30 };
}

const LONG_LENS = 1.2;
const NATURAL_LENS = 26;

interface Outlook {
  readonly direction: readonly [number, number, number];
  readonly fov: number;
}

/** From where each viewpoint looks (vehicle axes); along the rod follows the rod and is set elsewhere. */
export const OUTLOOKS: Readonly<Record<Exclude<Viewpoint, 'alongRod'>, Outlook>> = {
  threeQuarter: { direction: [0.8, 0.1, 0.36], fov: NATURAL_LENS },
  front: { direction: [1, 0, 0], fov: LONG_LENS },
  side: { direction: [0, 1, 0], fov: LONG_LENS },
  // A hair off the vertical: it settles which way is up on the screen (forward).
  above: { direction: [-1e-4, 0, 1], fov: LONG_LENS },
};
export const ROD_LENS = 9;

/** Free air around the corner, as a part of the free rectangle. */
const MARGIN = 1.06;

function normalised(v: readonly [number, number, number]): [number, number, number] {
  const size = Math.hypot(v[0], v[1], v[2]);
  return [v[0] / size, v[1] / size, v[2] / size];
}

/** Screen axes of a camera looking from `direction`: right and up, unit, the vehicle's z upward. */
export function screenAxes(
  direction: readonly [number, number, number],
): [right: [number, number, number], up: [number, number, number]] {
  const [x, y, z] = direction;
  const right = normalised([-y, x, 0]);
  return [right, [-z * right[1], z * right[0], x * right[1] - y * right[0]]];
}

/** The free rectangle's size as parts of the window's height; never less than a fifth of it. */
export function freeSize(width: number, height: number, insets: Insets): [number, number] {
  const free = (all: number, a: number, b: number): number => Math.max(all / 5, all - a - b);
  return [
    free(width, insets.left, insets.right) / height,
    free(height, insets.top, insets.bottom) / height,
  ];
}

/** Least and greatest of the points along a direction. */
function spread(points: Float64Array, along: readonly number[]): [least: number, most: number] {
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < points.length; at += 3) {
    const part =
      points[at]! * along[0]! + points[at + 1]! * along[1]! + points[at + 2]! * along[2]!;
    least = Math.min(least, part);
    most = Math.max(most, part);
  }
  return [least, most];
}

/**
 * Fills `shot` so that every point (three numbers each) lies in the free rectangle, about the middle of what is seen:
 * from a point at (x, y) across and z towards the camera, distance ≥ |x|/tan(half width) + z, and so for the height.
 */
export function framePoints(
  shot: Shot,
  points: Float64Array,
  outlook: Outlook,
  width: number,
  height: number,
  insets: Insets,
): void {
  const direction = normalised(outlook.direction);
  const axes = [...screenAxes(direction), direction] as const;
  const free = freeSize(width, height, insets);
  const tangent = Math.tan((outlook.fov * Math.PI) / 360) / MARGIN;
  const middle = axes.map((axis) => {
    const [least, most] = spread(points, axis);
    return (least + most) / 2;
  });
  let distance = 0;
  for (let at = 0; at < points.length; at += 3) {
    const part = (k: 0 | 1 | 2): number =>
      points[at]! * axes[k][0] +
      points[at + 1]! * axes[k][1] +
      points[at + 2]! * axes[k][2] -
      middle[k]!;
    const z = part(2);
    for (const k of [0, 1] as const) {
      distance = Math.max(distance, Math.abs(part(k)) / (tangent * free[k]) + z);
    }
  }
  for (let i = 0; i < 3; i += 1) {
    shot.target[i] = middle[0]! * axes[0][i]! + middle[1]! * axes[1][i]! + middle[2]! * axes[2][i]!;
    shot.direction[i] = direction[i]!;
  }
  shot.distance = distance;
  shot.fov = outlook.fov;
}

/** How far the free rectangle's centre lies from the window's, px, right and down positive. */
export function freeCentre(insets: Insets): [number, number] {
  return [(insets.left - insets.right) / 2, (insets.top - insets.bottom) / 2];
}
