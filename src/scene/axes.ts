/**
 * The only conversion between vehicle axes (x forward, y left, z up, mm) and three's (y up, x right of the screen at
 * rest, mm): a quarter turn about x, no scale. X = x, Y = z, Z = −y. Everything of the corner is drawn in vehicle axes
 * inside one group that carries `VEHICLE_ROTATION`; only cameras, lights and pointers live outside and convert here.
 */
import type { Ray, Vector3 } from 'three';

/** Euler angles of that group. */
export const VEHICLE_ROTATION: [number, number, number] = [-Math.PI / 2, 0, 0];

/** Numbers of a point or direction, read from a flat buffer. */
export type Flat = ArrayLike<number>;

/** Writes vehicle (x, y, z) into a vector in three's axes. */
export function toThree(x: number, y: number, z: number, out: Vector3): Vector3 {
  return out.set(x, z, -y);
}

/** As `toThree`, from three places of a buffer. */
export function flatToThree(from: Flat, at: number, out: Vector3): Vector3 {
  return out.set(from[at]!, from[at + 2]!, -from[at + 1]!);
}

/** Writes a vector in three's axes into three places of a buffer, in vehicle axes. */
export function threeToFlat(from: Vector3, out: Float64Array | number[], at: number): void {
  out[at] = from.x;
  out[at + 1] = -from.z;
  out[at + 2] = from.y;
}

/** Writes a ray into six places: origin and direction in vehicle axes. */
export function rayToFlat(ray: Ray, out: Float64Array): void {
  threeToFlat(ray.origin, out, 0);
  threeToFlat(ray.direction, out, 3);
}
