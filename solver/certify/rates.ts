/**
 * The linkage's rates over a cell. The steering axis keeps its length when the arms turn in the ratio B : A of their
 * stretches of it; a share s of that motion and the knuckle's spin about the axis then make up every motion there is.
 * What drives them (travel and rack, or others) is solved for from two equations in s and the spin.
 */
import { CIRCLE_AXIS, circleVelocity, RADIUS } from '../linkage/circle.ts';
import type { Linkage } from '../linkage/linkage.ts';
import { Fixed, Slot } from '../linkage/slots.ts';
import {
  constant,
  cross,
  crossed,
  difference,
  dot,
  inverse,
  midLength,
  product,
  scaled,
  scaledTriple,
  sloping,
  still,
  sum,
  swingOf,
  type Taylor,
  type TaylorVector,
  type Triple,
  times,
  triple,
  tripleAt,
  vertical,
} from './taylor.ts';

/** Something along α and along β. */
export interface Along<T> {
  readonly a: T;
  readonly b: T;
}

export function along<T>(of: (side: 'a' | 'b') => T): Along<T> {
  return { a: of('a'), b: of('b') };
}

/** The exact rates in the pose at the cell's centre: angles and turns, rad, the rod's outer joint and the rack, mm. */
export interface Slopes {
  readonly theta: Along<number>;
  readonly phi: Along<number>;
  readonly spin: Along<Triple>;
  readonly outer: Along<Triple>;
  readonly rack: Along<number>;
}

/** How far each may stray from its tangent: the arms' angles, the knuckle's turn (rad), the rod's joints (mm). */
export interface Tube {
  readonly theta: number;
  readonly phi: number;
  readonly axis: number;
  readonly turn: number;
  readonly outer: number;
  readonly rack: number;
}

export interface Rates {
  readonly theta: Along<Taylor>;
  readonly phi: Along<Taylor>;
  readonly axis: Along<TaylorVector>;
  readonly spin: Along<TaylorVector>;
  readonly lower: Along<TaylorVector>;
  readonly upper: Along<TaylorVector>;
  readonly outer: Along<TaylorVector>;
  readonly travel: Along<Taylor>;
  readonly rack: Along<Taylor>;
  /** The determinant of the linkage in this pose, of the sign it has in `Linkage.homeDeterminant`. */
  readonly determinant: Taylor;
}

/** How the rod's length, the wheel centre's height and the mark grow with a motion. */
export interface Response {
  readonly rod: Taylor;
  readonly height: Taylor;
  readonly mark: Taylor;
}

/** What solving starts from: the arms' motion, a spin about the steering axis, the rod's growth per mm of rack. */
export interface Rows {
  readonly arms: Response;
  readonly spun: Response;
  readonly pull: Taylor;
}

/** Share of the arms' motion, spin about the steering axis, travel and rack, all per step of α and of β. */
export interface Solution {
  readonly share: Along<Taylor>;
  readonly turn: Along<Taylor>;
  readonly travel: Along<Taylor>;
  readonly rack: Along<Taylor>;
}

/** What α and β drive. */
export interface Drive {
  /** A point of the knuckle, by its place in a pose, and the direction along which it is watched; null where none is. */
  readonly mark: { readonly at: number; readonly along: Triple } | null;
  /** Null where a singular pose may lie within the tube. */
  readonly solve: (rows: Rows) => Solution | null;
}

/** Vectors of the linkage over the tube. */
interface Vectors {
  readonly lower: TaylorVector;
  readonly upper: TaylorVector;
  readonly axis: TaylorVector;
  readonly rod: TaylorVector;
  readonly toOuter: TaylorVector;
  readonly toCentre: TaylorVector;
  /** Levers of a spin about the steering axis. */
  readonly outerLever: TaylorVector;
  readonly centreLever: TaylorVector;
}

const _tangents = new Float64Array(6);

export function between(buffer: Float64Array, from: number, to: number): Triple {
  return triple(
    buffer[to]! - buffer[from]!,
    buffer[to + 1]! - buffer[from + 1]!,
    buffer[to + 2]! - buffer[from + 2]!,
  );
}

/** An arm's turn from the centre's pose. */
export function turnOver(slopes: Along<number>, rest: number): Taylor {
  return { mid: 0, a: slopes.a, b: slopes.b, rest };
}

/** The tangent of an arm's circle while its angle turns: t − r·Δ, within ½ρΔ². */
function tangentOver(
  fixed: Float64Array,
  circle: number,
  tangent: Triple,
  turn: Taylor,
): TaylorVector {
  const bend = crossed(tripleAt(fixed, circle + CIRCLE_AXIS), tangent);
  const widest = swingOf(turn);
  return sloping(
    tangent,
    scaledTriple(turn.a, bend),
    scaledTriple(turn.b, bend),
    fixed[circle + RADIUS]! * (turn.rest + (widest * widest) / 2),
  );
}

/** The tie rod from TI to TO over the cell. */
function rodOver(
  { fixed }: Linkage,
  pose: Float64Array,
  { outer, rack }: Slopes,
  tube: Tube,
): TaylorVector {
  const d = tripleAt(fixed, Fixed.rackDirection);
  const slope = along((side) =>
    triple(
      outer[side].x - rack[side] * d.x,
      outer[side].y - rack[side] * d.y,
      outer[side].z - rack[side] * d.z,
    ),
  );
  return sloping(between(pose, Slot.inner, Slot.outer), slope.a, slope.b, tube.outer + tube.rack);
}

function vectorsWithin(linkage: Linkage, pose: Float64Array, slopes: Slopes, tube: Tube): Vectors {
  const { fixed } = linkage;
  circleVelocity(fixed, Fixed.lowerCircle, pose, Slot.lowerCos, _tangents, 0);
  circleVelocity(fixed, Fixed.upperCircle, pose, Slot.upperCos, _tangents, 3);
  const theta = turnOver(slopes.theta, tube.theta);
  const phi = turnOver(slopes.phi, tube.phi);
  const steady = tripleAt(pose, Slot.frame);
  const carried = (vector: Triple): TaylorVector =>
    sloping(
      vector,
      crossed(slopes.spin.a, vector),
      crossed(slopes.spin.b, vector),
      tube.turn * midLength(vector),
    );
  const axis = carried(steady);
  const toOuter = between(pose, Slot.lower, Slot.outer);
  const toCentre = between(pose, Slot.lower, Slot.centre);
  return {
    lower: tangentOver(fixed, Fixed.lowerCircle, tripleAt(_tangents, 0), theta),
    upper: tangentOver(fixed, Fixed.upperCircle, tripleAt(_tangents, 3), phi),
    axis: { ...axis, rest: Math.min(axis.rest, tube.axis) },
    rod: rodOver(linkage, pose, slopes, tube),
    toOuter: carried(toOuter),
    toCentre: carried(toCentre),
    outerLever: carried(crossed(steady, toOuter)),
    centreLever: carried(crossed(steady, toCentre)),
  };
}

const NONE: Taylor = constant(0);
const ONE: Taylor = constant(1);

/** Growth along the mark's direction of a point that moves like the wheel centre or the rod's outer joint. */
function markOf({ mark }: Drive, outer: TaylorVector, centre: TaylorVector): Taylor {
  if (mark === null) return NONE;
  return dot(still(mark.along), mark.at === Slot.outer ? outer : centre);
}

function responseTo(v: Vectors, drive: Drive, origin: TaylorVector, spin: TaylorVector): Response {
  const outer = sum(origin, cross(spin, v.toOuter));
  const centre = sum(origin, cross(spin, v.toCentre));
  return {
    rod: dot(v.rod, outer),
    height: vertical(centre),
    mark: markOf(drive, outer, centre),
  };
}

/**
 * The arms' turns in the ratio B : A of their stretches of the steering axis, by B where it is not 0; and by what that
 * divides the determinant.
 */
function armsWithin(v: Vectors): { theta: Taylor; phi: Taylor; divided: Taylor } {
  const byLower = dot(v.lower, v.axis);
  const byUpper = dot(v.upper, v.axis);
  const room = inverse(byUpper);
  if (room === null) return { theta: byUpper, phi: byLower, divided: ONE };
  return { theta: ONE, phi: product(byLower, room), divided: byUpper };
}

/** All rates while nothing leaves the tube; null where a singular pose may lie within it. */
export function ratesWithin(
  linkage: Linkage,
  pose: Float64Array,
  drive: Drive,
  slopes: Slopes,
  tube: Tube,
): Rates | null {
  const { fixed } = linkage;
  const v = vectorsWithin(linkage, pose, slopes, tube);
  const ratio = armsWithin(v);
  const lower = times(ratio.theta, v.lower);
  const upper = times(ratio.phi, v.upper);
  const axis = scaled(fixed[Fixed.spanInverse]!, difference(upper, lower));
  const tilt = cross(v.axis, axis);
  const arms = responseTo(v, drive, lower, tilt);
  const spun: Response = {
    rod: dot(v.rod, v.outerLever),
    height: vertical(v.centreLever),
    mark: markOf(drive, v.outerLever, v.centreLever),
  };
  const pull = dot(v.rod, still(tripleAt(fixed, Fixed.rackDirection)));
  const solution = drive.solve({ arms, spun, pull });
  if (solution === null) return null;
  const { share, turn, travel, rack } = solution;
  const spins = along((side) => sum(times(share[side], tilt), times(turn[side], v.axis)));
  const lowers = along((side) => times(share[side], lower));
  return {
    theta: along((side) => product(share[side], ratio.theta)),
    phi: along((side) => product(share[side], ratio.phi)),
    axis: along((side) => times(share[side], axis)),
    spin: spins,
    lower: lowers,
    upper: along((side) => times(share[side], upper)),
    outer: along((side) => sum(lowers[side], cross(spins[side], v.toOuter))),
    travel,
    rack,
    determinant: product(ratio.divided, determinantOf(arms, spun)),
  };
}

/** The determinant of height and rod in s and the spin. */
export function determinantOf(arms: Response, spun: Response): Taylor {
  return determinant(arms.height, arms.rod, spun.height, spun.rod);
}

/** p·s − q·r of the two columns (p, q) and (r, s). */
export function determinant(p: Taylor, q: Taylor, r: Taylor, s: Taylor): Taylor {
  const left = product(p, s);
  const right = product(q, r);
  return {
    mid: left.mid - right.mid,
    a: left.a - right.a,
    b: left.b - right.b,
    rest: left.rest + right.rest,
  };
}
