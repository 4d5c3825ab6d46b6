/** A bent tube by its centreline: its length, its bends, and how its ends stand to each other. */
import {
  add,
  addScaled,
  cross,
  distance,
  dot,
  length,
  rejectFrom,
  scale,
  subtract,
  unit,
  type Vector3,
} from '../math/vec3.ts';
import { degrees } from '../units.ts';

/** A tube's centreline from joint to joint, mm. */
export interface Run {
  readonly points: readonly Vector3[];
  readonly diameter: number;
}

/** A corner of the centreline; the bend's own radius is the bender's and not in the model. */
export interface TubeBend {
  /** From the run's start to the corner along the centreline, mm. */
  readonly at: number;
  /** By how much the tube turns there, degrees. */
  readonly angle: number;
  /** Turn of the tube about itself since the bend before, degrees from −180 to 180, right-handed about the way from the start; null for the first. */
  readonly rotation: number | null;
}

/** Below this a corner does not bend, radians. */
const STRAIGHT = 1e-6;

/** Unit directions of the centreline's pieces; pieces without length are left out. */
export function directionsOf({ points }: Run): Vector3[] {
  return points
    .slice(1)
    .map((point, at) => subtract(point, points[at]!))
    .filter((piece) => length(piece) > 0)
    .map(unit);
}

/** Directions of the centreline's first and last piece. */
export function endWays(run: Run): { readonly first: Vector3; readonly last: Vector3 } {
  const ways = directionsOf(run);
  const none: Vector3 = [0, 1, 0];
  return { first: ways[0] ?? none, last: ways.at(-1) ?? none };
}

/** Length of the centreline from joint to joint, mm. */
export function runLength({ points }: Run): number {
  return points.slice(1).reduce((sum, point, at) => sum + distance(point, points[at]!), 0);
}

/** Angle between two directions, radians. */
function angleBetween(a: Vector3, b: Vector3): number {
  return Math.atan2(length(cross(a, b)), dot(a, b));
}

/** Signed angle from a to b about an axis normal to both, radians. */
function angleAbout(a: Vector3, b: Vector3, axis: Vector3): number {
  return Math.atan2(dot(cross(a, b), axis), dot(a, b));
}

/** The bends of a run, from its start. */
export function bendsOf(run: Run): TubeBend[] {
  const { points } = run;
  const bends: TubeBend[] = [];
  let at = 0;
  let before: Vector3 | null = null;
  for (let corner = 1; corner + 1 < points.length; corner += 1) {
    at += distance(points[corner]!, points[corner - 1]!);
    const into = unit(subtract(points[corner]!, points[corner - 1]!));
    const out = unit(subtract(points[corner + 1]!, points[corner]!));
    const angle = angleBetween(into, out);
    if (angle < STRAIGHT) continue;
    const plane: Vector3 = unit(cross(into, out));
    const rotation = before === null ? null : degrees(angleAbout(before, plane, into));
    bends.push({ at, angle: degrees(angle), rotation });
    before = plane;
  }
  return bends;
}

/** A direction carried along from one direction to another by the least turn (Rodrigues). */
function carried(what: Vector3, from: Vector3, to: Vector3): Vector3 {
  const axis = cross(from, to);
  const cos = dot(from, to);
  if (1 + cos < 1e-12) return what;
  const turned = add(scale(what, cos), cross(axis, what));
  return addScaled(turned, axis, dot(axis, what) / (1 + cos));
}

/**
 * How far an axis at the run's end is turned about the tube against an axis at its start, degrees from −90 to 90 (axes
 * are lines), right-handed looking from the start along the tube; the bends between turn nothing. Null where either axis
 * runs along the tube.
 */
export function rotationOfEnds(run: Run, start: Vector3, end: Vector3): number | null {
  const ways = directionsOf(run);
  const first = ways[0];
  const last = ways.at(-1);
  if (first === undefined || last === undefined) return null;
  const from = rejectFrom(start, first);
  const to = rejectFrom(end, last);
  if (length(from) < STRAIGHT || length(to) < STRAIGHT) return null;
  let mark = unit(from);
  ways.slice(1).forEach((way, at) => {
    mark = carried(mark, ways[at]!, way);
  });
  const turn = degrees(angleAbout(mark, unit(to), last));
  if (turn > 90) return turn - 180;
  return turn <= -90 ? turn + 180 : turn;
}
