/** Circles in plan: where the lower ball joint may stand while one link holds with its pivot at one share of its reach. */
import { addScaled, dot } from '../math/vec3.ts';
import { type Held, jointOf, type Link, type Plan, type Stance, spanOf } from './stance.ts';

export interface Circle {
  readonly centre: Plan;
  readonly radius: number;
}

/** The circle of a link with its pivot at a share of its reach; null where it does not come to that height. */
export function circleOf(
  link: Link,
  joint: readonly [number, number, number],
  z: number,
  share: number,
): Circle | null {
  const pivot = addScaled(link.pivot, link.direction, share * link.reach);
  const rise = z + joint[2] - pivot[2];
  const squared = link.length * link.length - rise * rise;
  if (!(squared > 0)) return null;
  return { centre: [pivot[0] - joint[0], pivot[1] - joint[1]], radius: Math.sqrt(squared) };
}

/** The circle of an arm's side by its place in `Stance.arms`. */
export function armCircle(
  { arms }: Stance,
  held: Held,
  place: number,
  share: number,
): Circle | null {
  return circleOf(arms[place]!, jointOf(held, place), held.z, share);
}

export function pointOn({ centre, radius }: Circle, angle: number): Plan {
  return [centre[0] + radius * Math.cos(angle), centre[1] + radius * Math.sin(angle)];
}

/** Angle of a point as seen from a circle's centre, rad. */
export function angleFrom({ centre }: Circle, [x, y]: Plan): number {
  return Math.atan2(y - centre[1], x - centre[0]);
}

/** Angles on the first circle at which it meets the second: none, or two that may be one. */
export function meetings(first: Circle, second: Circle): number[] {
  const [dx, dy] = [second.centre[0] - first.centre[0], second.centre[1] - first.centre[1]];
  const apart = Math.hypot(dx, dy);
  if (!(apart > 0)) return [];
  const cosine =
    (first.radius * first.radius + apart * apart - second.radius * second.radius) /
    (2 * first.radius * apart);
  if (!(Math.abs(cosine) <= 1)) return [];
  const middle = Math.atan2(dy, dx);
  const swing = Math.acos(cosine);
  return [middle - swing, middle + swing];
}

/**
 * The share s at which a link holds with the lower ball joint at p, |u − s·reach·d| = length, u from the pivot to the joint: of
 * its two answers the one on the side `side` (±1, the sign of u·d as shifted) of the pivot. NaN where it cannot hold.
 */
export function shareAt(
  link: Link,
  joint: readonly [number, number, number],
  z: number,
  p: Plan,
  side: number,
): number {
  const span = spanOf(link, joint, z, p);
  const along = dot(span, link.direction);
  const excess = dot(span, span) - link.length * link.length;
  const root = side * Math.sqrt(along * along - excess);
  // The answer with the smaller shift without the loss of digits in along − root.
  const shift = along * side > 0 ? excess / (along + root) : along - root;
  return shift / link.reach;
}

/** Derivative of `shareAt` with respect to p, per mm. */
export function shareSlope(
  link: Link,
  joint: readonly [number, number, number],
  z: number,
  p: Plan,
  share: number,
): Plan {
  const span = addScaled(spanOf(link, joint, z, p), link.direction, -share * link.reach);
  const per = 1 / (dot(span, link.direction) * link.reach);
  return [span[0] * per, span[1] * per];
}
