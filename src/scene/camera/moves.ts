/** A camera on its way from one shot to the next: around the target, never through it. Pure; nothing is allocated. */
import type { Shot } from './framing.ts';

/** Length of a move, ms. */
export const MOVE_TIME = 250;

function mix(a: number, b: number, t: number): number {
  return a + (b - a) * t;
}

/** Geometric mean with weight: lenses and sizes feel even this way. */
function mixRatio(a: number, b: number, t: number): number {
  return a * (b / a) ** t;
}

function tangent(fov: number): number {
  return Math.tan((fov * Math.PI) / 360);
}

/** Height angle of a unit direction, and its heading, rad. */
function elevation(direction: readonly number[]): number {
  return Math.asin(Math.max(-1, Math.min(1, direction[2]!)));
}

function heading(direction: readonly number[]): number {
  return Math.atan2(direction[1]!, direction[0]!);
}

export function copyShot(from: Shot, to: Shot): void {
  for (let i = 0; i < 3; i += 1) {
    to.target[i] = from.target[i]!;
    to.direction[i] = from.direction[i]!;
  }
  to.distance = from.distance;
  to.fov = from.fov;
}

/**
 * Fills `out` with the shot a part t (0 to 1) of the way. The lens changes while the size of what is looked at changes
 * evenly, so a change from the natural to the long lens does not jump.
 */
export function mixShots(from: Shot, to: Shot, t: number, out: Shot): void {
  const eased = t * t * (3 - 2 * t);
  for (let i = 0; i < 3; i += 1) out.target[i] = mix(from.target[i]!, to.target[i]!, eased);
  const turn = heading(to.direction) - heading(from.direction);
  const shortest = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  const around = heading(from.direction) + shortest * eased;
  const up = mix(elevation(from.direction), elevation(to.direction), eased);
  out.direction[0] = Math.cos(up) * Math.cos(around);
  out.direction[1] = Math.cos(up) * Math.sin(around);
  out.direction[2] = Math.sin(up);
  const size = mixRatio(from.distance * tangent(from.fov), to.distance * tangent(to.fov), eased);
  out.fov = mixRatio(from.fov, to.fov, eased);
  out.distance = size / tangent(out.fov);
}
