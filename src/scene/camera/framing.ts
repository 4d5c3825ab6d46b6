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

/** A side of the free rectangle, px; never less than a twelfth of the window's. */
function freeSide(all: number, one: number, other: number): number {
  return Math.max(all / 12, all - one - other);
}

/** Right, up and towards the camera, as nine numbers, of the shot last framed. */
const _axes = new Float64Array(9);

function setAxes([x, y, z]: readonly [number, number, number]): void {
  const across = Math.hypot(x, y);
  _axes[0] = -y / across;
  _axes[1] = x / across;
  _axes[2] = 0;
  _axes[3] = -z * _axes[1];
  _axes[4] = z * _axes[0];
  _axes[5] = x * _axes[1] - y * _axes[0];
  _axes[6] = x;
  _axes[7] = y;
  _axes[8] = z;
}

/**
 * The most of a point's part along an axis (times `sign`) and its part towards the camera times `slope`: where the
 * steepest ray along that edge of the picture touches the points.
 */
function reach(points: Float64Array, axis: 0 | 3 | 6, sign: 1 | -1, slope: number): number {
  let most = Number.NEGATIVE_INFINITY;
  for (let at = 0; at + 2 < points.length; at += 3) {
    const x = points[at]!;
    const y = points[at + 1]!;
    const z = points[at + 2]!;
    const across = x * _axes[axis]! + y * _axes[axis + 1]! + z * _axes[axis + 2]!;
    const near = x * _axes[6]! + y * _axes[7]! + z * _axes[8]!;
    most = Math.max(most, sign * across + slope * near);
  }
  return most;
}

/**
 * Fills `shot`, from its own direction and lens, with the nearest place from which every point (three numbers each) is
 * seen in the free rectangle. A point at a across and n towards the camera is inside the right edge when a − c ≤ k (d − n),
 * with k the tangent of half the angle seen: two such edges settle the middle c and bound the distance d. Allocates nothing.
 */
export function fitPoints(
  shot: Shot,
  points: Float64Array,
  width: number,
  height: number,
  insets: Insets,
): void {
  setAxes(shot.direction);
  const tangent = Math.tan((shot.fov * Math.PI) / 360) / MARGIN;
  const across = (tangent * freeSide(width, insets.left, insets.right)) / height;
  const upward = (tangent * freeSide(height, insets.top, insets.bottom)) / height;
  const right = reach(points, 0, 1, across);
  const left = reach(points, 0, -1, across);
  const top = reach(points, 3, 1, upward);
  const bottom = reach(points, 3, -1, upward);
  const depth = Math.max((right + left) / (2 * across), (top + bottom) / (2 * upward));
  const near = (reach(points, 6, 1, 0) - reach(points, 6, -1, 0)) / 2;
  const x = (right - left) / 2;
  const y = (top - bottom) / 2;
  for (let i = 0; i < 3; i += 1) {
    shot.target[i] = x * _axes[i]! + y * _axes[3 + i]! + near * _axes[6 + i]!;
  }
  shot.distance = depth - near;
}

/** Fills `shot` so that every point lies in the free rectangle, seen from `outlook`. */
export function framePoints(
  shot: Shot,
  points: Float64Array,
  outlook: Outlook,
  width: number,
  height: number,
  insets: Insets,
): void {
  const direction = normalised(outlook.direction);
  for (let i = 0; i < 3; i += 1) shot.direction[i] = direction[i]!;
  shot.fov = outlook.fov;
  fitPoints(shot, points, width, height, insets);
}

/** How far the free rectangle's centre lies from the window's, px, right and down positive. */
export function freeCentre(insets: Insets): [number, number] {
  return [(insets.left - insets.right) / 2, (insets.top - insets.bottom) / 2];
}
