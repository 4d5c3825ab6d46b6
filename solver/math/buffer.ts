/** Vectors that stand in flat buffers, three places each, for code that runs per pose and must not allocate. */
import { degrees } from '../units.ts';

/** buffer[a…]·buffer[b…] */
export function dotAt(buffer: Float64Array, a: number, b: number): number {
  return (
    buffer[a]! * buffer[b]! + buffer[a + 1]! * buffer[b + 1]! + buffer[a + 2]! * buffer[b + 2]!
  );
}

/** to = a × b; `to` may be a or b. */
export function crossAt(buffer: Float64Array, a: number, b: number, to: number): void {
  const ax = buffer[a]!;
  const ay = buffer[a + 1]!;
  const az = buffer[a + 2]!;
  const bx = buffer[b]!;
  const by = buffer[b + 1]!;
  const bz = buffer[b + 2]!;
  buffer[to] = ay * bz - az * by;
  buffer[to + 1] = az * bx - ax * bz;
  buffer[to + 2] = ax * by - ay * bx;
}

/** to = fa·a + fb·b */
export function combineAt(
  buffer: Float64Array,
  fa: number,
  a: number,
  fb: number,
  b: number,
  to: number,
): void {
  buffer[to] = fa * buffer[a]! + fb * buffer[b]!;
  buffer[to + 1] = fa * buffer[a + 1]! + fb * buffer[b + 1]!;
  buffer[to + 2] = fa * buffer[a + 2]! + fb * buffer[b + 2]!;
}

/** Angle between two lines, degrees, 0 to 90: exact near 0, where an arc cosine is not. */
export function lineAngle(
  ax: number,
  ay: number,
  az: number,
  bx: number,
  by: number,
  bz: number,
): number {
  const cx = ay * bz - az * by;
  const cy = az * bx - ax * bz;
  const cz = ax * by - ay * bx;
  const sine = Math.sqrt(cx * cx + cy * cy + cz * cz);
  return degrees(Math.atan2(sine, Math.abs(ax * bx + ay * by + az * bz)));
}
