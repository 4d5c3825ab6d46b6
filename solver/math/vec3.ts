/** Vectors as readonly triples, for code that runs once per model. Code that runs per pose works in place on buffers. */
import type { Vector3 } from '../model/model.ts';

export type { Vector3 };

export function add(a: Vector3, b: Vector3): Vector3 {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

export function subtract(a: Vector3, b: Vector3): Vector3 {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

export function scale(a: Vector3, factor: number): Vector3 {
  return [a[0] * factor, a[1] * factor, a[2] * factor];
}

/** a + factor·b */
export function addScaled(a: Vector3, b: Vector3, factor: number): Vector3 {
  return [a[0] + factor * b[0], a[1] + factor * b[1], a[2] + factor * b[2]];
}

export function dot(a: Vector3, b: Vector3): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function cross(a: Vector3, b: Vector3): Vector3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function length(a: Vector3): number {
  return Math.hypot(a[0], a[1], a[2]);
}

export function distance(a: Vector3, b: Vector3): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/** a divided by its length; the zero vector stays zero. */
export function unit(a: Vector3): Vector3 {
  const size = length(a);
  return size > 0 ? scale(a, 1 / size) : a;
}

/** The part of a normal to the unit vector axis. */
export function rejectFrom(a: Vector3, axis: Vector3): Vector3 {
  return addScaled(a, axis, -dot(a, axis));
}
