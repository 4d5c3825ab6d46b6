/** What a drawing is made of: the solved design, its extent, and the ways its points take. */
import type { Posed } from '../../state/posed.ts';
import type { Extent } from '../camera/extent.ts';
import type { Paths } from './paths.ts';
import type { Pen } from './pen.ts';

export interface Subject {
  readonly now: Posed;
  readonly extent: Extent;
  readonly paths: Paths;
}

export type Drawing = (pen: Pen, subject: Subject) => void;

/** Reused vectors of the drawings: each drawing may write them, none keeps them. */
export const _u: Float64Array = new Float64Array(3);
export const _w: Float64Array = new Float64Array(3);
export const _p: Float64Array = new Float64Array(3);
/** Straight up. */
export const UP: Float64Array = Float64Array.of(0, 0, 1);

/** Makes `out` unit long; false when it is zero. */
export function unitise(out: Float64Array): boolean {
  const size = Math.hypot(out[0]!, out[1]!, out[2]!);
  if (!(size > 0)) return false;
  for (let i = 0; i < 3; i += 1) out[i]! /= size;
  return true;
}

/** Writes a vector. */
export function put(out: Float64Array, x: number, y: number, z: number): void {
  out[0] = x;
  out[1] = y;
  out[2] = z;
}
