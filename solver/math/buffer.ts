/**
 * Vectors that stand in flat buffers, three places each, for code that runs per pose and must not allocate. Scalars too
 * go in and out by their place in the buffer: a number handed to a function that is not inlined is boxed.
 */
import { degrees } from '../units.ts';

/** buffer[to] = a·b */
export function dotAt(buffer: Float64Array, a: number, b: number, to: number): void {
  buffer[to] =
    buffer[a]! * buffer[b]! + buffer[a + 1]! * buffer[b + 1]! + buffer[a + 2]! * buffer[b + 2]!;
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

/** to = a + b */
export function sumAt(buffer: Float64Array, a: number, b: number, to: number): void {
  for (let i = 0; i < 3; i += 1) buffer[to + i] = buffer[a + i]! + buffer[b + i]!;
}

/** to = a − b */
export function differenceAt(buffer: Float64Array, a: number, b: number, to: number): void {
  for (let i = 0; i < 3; i += 1) buffer[to + i] = buffer[a + i]! - buffer[b + i]!;
}

/** to = f·a, f the scalar at `factor` */
export function scaledAt(buffer: Float64Array, factor: number, a: number, to: number): void {
  const f = buffer[factor]!;
  for (let i = 0; i < 3; i += 1) buffer[to + i] = f * buffer[a + i]!;
}

/** to = a + f·b, f the scalar at `factor` */
export function addScaledAt(
  buffer: Float64Array,
  a: number,
  factor: number,
  b: number,
  to: number,
): void {
  const f = buffer[factor]!;
  for (let i = 0; i < 3; i += 1) buffer[to + i] = buffer[a + i]! + f * buffer[b + i]!;
}

/** a divided by its length, in place. */
export function normaliseAt(buffer: Float64Array, a: number): void {
  const x = buffer[a]!;
  const y = buffer[a + 1]!;
  const z = buffer[a + 2]!;
  const inverse = 1 / Math.sqrt(x * x + y * y + z * z);
  buffer[a] = x * inverse;
  buffer[a + 1] = y * inverse;
  buffer[a + 2] = z * inverse;
}

/** out[to] = angle between two lines, degrees, 0 to 90: exact near 0, where an arc cosine is not. */
export function lineAngleAt(
  buffer: Float64Array,
  a: number,
  b: number,
  out: Float64Array,
  to: number,
): void {
  const ax = buffer[a]!;
  const ay = buffer[a + 1]!;
  const az = buffer[a + 2]!;
  const bx = buffer[b]!;
  const by = buffer[b + 1]!;
  const bz = buffer[b + 2]!;
  const cx = ay * bz - az * by;
  const cy = az * bx - ax * bz;
  const cz = ax * by - ay * bx;
  const sine = Math.sqrt(cx * cx + cy * cy + cz * cz);
  out[to] = degrees(Math.atan2(sine, Math.abs(ax * bx + ay * by + az * bz)));
}
