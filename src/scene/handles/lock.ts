/** Which way a drag of the wheel goes: nothing before a short threshold, then the dominant way, or both at once. */

/** 'travel' up and down, 'steer' about the steering axis, 'free' both. */
export type Way = 'undecided' | 'travel' | 'steer' | 'free';

/** Pixels a pointer may move before a way is chosen, so that a click moves nothing. */
export const THRESHOLD = 5;

/**
 * The way of a drag whose pointer has moved (dx, dy) px since pointer-down. `up` and `side` are the screen directions
 * (unit, px) in which the wheel travels and steers, or null where the view shows none of it. `isFree` is the held Alt.
 */
export function wayOf(
  dx: number,
  dy: number,
  up: readonly [number, number] | null,
  side: readonly [number, number] | null,
  isFree: boolean,
): Way {
  if (Math.hypot(dx, dy) < THRESHOLD) return 'undecided';
  if (up === null) return side === null ? 'undecided' : 'steer';
  if (side === null) return 'travel';
  if (isFree) return 'free';
  const upward = Math.abs(dx * up[0] + dy * up[1]);
  const sideward = Math.abs(dx * side[0] + dy * side[1]);
  return upward >= sideward ? 'travel' : 'steer';
}
