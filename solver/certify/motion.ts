/**
 * Where every body of the linkage can be anywhere in a cell of travel × rack: an enclosure of its motion as first-order
 * Taylor models.
 *
 * From the solved pose at the cell's centre the pose is followed along any straight line in the cell. Suppose that on
 * the way no angle, joint or direction strays from its tangent by more than some tube. Then every quantity of the
 * linkage is enclosed, and so are the exact rates; integrated, these bound how far anything really strays. Where that is
 * no farther than was supposed, the supposition cannot fail first, and the enclosure holds over the whole cell: each of
 * its poses continues the centre's, with no singular one in between.
 */
import { CIRCLE_AXIS, circleVelocity, RADIUS } from '../linkage/circle.ts';
import type { Linkage } from '../linkage/linkage.ts';
import { Fixed, Slot } from '../linkage/slots.ts';
import {
  cross,
  difference,
  dot,
  inverse,
  midLength,
  multiple,
  plus,
  product,
  scaled,
  slopeA,
  slopeB,
  sloping,
  still,
  sum,
  swing,
  swingOf,
  type Taylor,
  type TaylorVector,
  type Triple,
  times,
  tripleAt,
  vertical,
} from './taylor.ts';

/** Half-sizes of a cell, mm of travel and of rack. */
export interface HalfSizes {
  readonly travel: number;
  readonly rack: number;
}

/** A rigid body over a cell. */
export interface BodyMotion {
  /** A point of the body. */
  readonly origin: TaylorVector;
  /** Rotation of the body from the centre's pose, linear in α and β: a vector of it turns from v to v + spin × v … */
  readonly spinA: Triple;
  readonly spinB: Triple;
  /** … but for this share of its length. */
  readonly rest: number;
}

/** The linkage over a cell. */
export interface Motion {
  readonly lowerArm: BodyMotion;
  readonly upperArm: BodyMotion;
  readonly knuckle: BodyMotion;
  /** The tie rod's joints. */
  readonly outer: TaylorVector;
  readonly inner: TaylorVector;
}

/** How far each may stray from its tangent: the arms' angles, the knuckle's turn (rad), the rod's outer joint (mm). */
interface Tube {
  readonly theta: number;
  readonly phi: number;
  readonly axis: number;
  readonly turn: number;
  readonly outer: number;
}

/** Rates along α and β. */
interface Along<T> {
  readonly a: T;
  readonly b: T;
}

interface Rates {
  readonly theta: Along<Taylor>;
  readonly phi: Along<Taylor>;
  readonly axis: Along<TaylorVector>;
  readonly spin: Along<TaylorVector>;
  readonly lower: Along<TaylorVector>;
  readonly upper: Along<TaylorVector>;
  readonly outer: Along<TaylorVector>;
}

/** The centre's own exact rates, from the pose buffer, over the cell's half-sizes. */
interface Centre {
  readonly pose: Float64Array;
  readonly half: HalfSizes;
  readonly spinA: Triple;
  readonly spinB: Triple;
  readonly lowerTangent: Triple;
  readonly upperTangent: Triple;
}

/** Share and size by which every tube is widened: far more than rounding and the solver's residuals come to. */
const SAFETY = 1e-9;
const SAFETY_SIZE = 1e-12;
const MOST_ROUNDS = 6;
const FIRST_GUESS = 1.3;
const NEXT_GUESS = 1.15;
/** Tubes wider than this are not worth a try, rad. */
const WIDEST = 0.5;

const _tangents = new Float64Array(6);

function scaledTriple(buffer: Float64Array, at: number, factor: number): Triple {
  return { x: factor * buffer[at]!, y: factor * buffer[at + 1]!, z: factor * buffer[at + 2]! };
}

function centreOf({ fixed }: Linkage, pose: Float64Array, half: HalfSizes): Centre {
  circleVelocity(fixed, Fixed.lowerCircle, pose, Slot.lowerCos, _tangents, 0);
  circleVelocity(fixed, Fixed.upperCircle, pose, Slot.upperCos, _tangents, 3);
  return {
    pose,
    half,
    spinA: scaledTriple(pose, Slot.travelOmega, half.travel),
    spinB: scaledTriple(pose, Slot.rackOmega, half.rack),
    lowerTangent: tripleAt(_tangents, 0),
    upperTangent: tripleAt(_tangents, 3),
  };
}

function angle(centre: Centre, travelRate: number, rackRate: number, rest: number): Taylor {
  const { pose, half } = centre;
  return { mid: 0, a: half.travel * pose[travelRate]!, b: half.rack * pose[rackRate]!, rest };
}

function triple(x: number, y: number, z: number): Triple {
  return { x, y, z };
}

function crossed(v: Triple, w: Triple): Triple {
  return triple(v.y * w.z - v.z * w.y, v.z * w.x - v.x * w.z, v.x * w.y - v.y * w.x);
}

function between(buffer: Float64Array, from: number, to: number): Triple {
  return triple(
    buffer[to]! - buffer[from]!,
    buffer[to + 1]! - buffer[from + 1]!,
    buffer[to + 2]! - buffer[from + 2]!,
  );
}

/** The tangent of an arm's circle while its angle turns: t − r·Δ, within ½ρΔ². */
function tangentOver(
  fixed: Float64Array,
  circle: number,
  tangent: Triple,
  turn: Taylor,
): TaylorVector {
  const axis = tripleAt(fixed, circle + CIRCLE_AXIS);
  const bend = crossed(axis, tangent);
  const widest = swingOf(turn);
  return sloping(
    tangent,
    triple(turn.a * bend.x, turn.a * bend.y, turn.a * bend.z),
    triple(turn.b * bend.x, turn.b * bend.y, turn.b * bend.z),
    fixed[circle + RADIUS]! * (turn.rest + (widest * widest) / 2),
  );
}

/** A vector of the knuckle over the cell. */
function knuckleVector(centre: Centre, tube: Tube, vector: Triple): TaylorVector {
  return sloping(
    vector,
    crossed(centre.spinA, vector),
    crossed(centre.spinB, vector),
    tube.turn * midLength(vector),
  );
}

/** The tie rod from TI to TO over the cell. */
function rodOver({ fixed }: Linkage, centre: Centre, tube: Tube): TaylorVector {
  const { pose, half } = centre;
  const along = scaledTriple(pose, Slot.rackOuter, half.rack);
  const rack = scaledTriple(fixed, Fixed.rackDirection, half.rack);
  return sloping(
    between(pose, Slot.inner, Slot.outer),
    scaledTriple(pose, Slot.travelOuter, half.travel),
    triple(along.x - rack.x, along.y - rack.y, along.z - rack.z),
    tube.outer,
  );
}

/** How the rod's length and the wheel centre's height grow while the knuckle turns, its origin moving. */
interface Response {
  readonly rod: Taylor;
  readonly height: Taylor;
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

function vectorsWithin(linkage: Linkage, centre: Centre, tube: Tube): Vectors {
  const { fixed } = linkage;
  const { pose } = centre;
  const theta = angle(centre, Slot.travelTheta, Slot.rackTheta, tube.theta);
  const phi = angle(centre, Slot.travelPhi, Slot.rackPhi, tube.phi);
  const steady = tripleAt(pose, Slot.frame);
  const carried = (vector: Triple): TaylorVector => knuckleVector(centre, tube, vector);
  const axis = carried(steady);
  const toOuter = between(pose, Slot.lower, Slot.outer);
  const toCentre = between(pose, Slot.lower, Slot.centre);
  return {
    lower: tangentOver(fixed, Fixed.lowerCircle, centre.lowerTangent, theta),
    upper: tangentOver(fixed, Fixed.upperCircle, centre.upperTangent, phi),
    axis: { ...axis, rest: Math.min(axis.rest, tube.axis) },
    rod: rodOver(linkage, centre, tube),
    toOuter: carried(toOuter),
    toCentre: carried(toCentre),
    outerLever: carried(crossed(steady, toOuter)),
    centreLever: carried(crossed(steady, toCentre)),
  };
}

function responseTo(v: Vectors, origin: TaylorVector, spin: TaylorVector): Response {
  return {
    rod: dot(v.rod, sum(origin, cross(spin, v.toOuter))),
    height: vertical(sum(origin, cross(spin, v.toCentre))),
  };
}

/** The arms' motion that keeps the steering axis's length, θ' and φ' in the ratio of their stretches B : A. */
function armsWithin(v: Vectors): { theta: Taylor; phi: Taylor } {
  const byLower = dot(v.lower, v.axis);
  const byUpper = dot(v.upper, v.axis);
  const room = inverse(byUpper);
  if (room === null) return { theta: byUpper, phi: byLower };
  return { theta: ONE, phi: product(byLower, room) };
}

const ONE: Taylor = { mid: 1, a: 0, b: 0, rest: 0 };

/** Share of the arms' motion, and spin about the steering axis, per mm of travel and of rack. */
interface Solution {
  readonly share: Along<Taylor>;
  readonly turn: Along<Taylor>;
}

/** Solves for a rod of constant length and the height's growth by eliminating the spin; null where its lever may be 0. */
function solveByLever(arms: Response, spun: Response, pull: Taylor): Solution | null {
  const lever = inverse(spun.rod);
  if (lever === null) return null;
  const drift = product(arms.rod, lever);
  const climb = inverse(minus(arms.height, product(spun.height, drift)));
  if (climb === null) return null;
  const steer = product(pull, lever);
  const back = multiple(-1, product(product(steer, spun.height), climb));
  return {
    share: { a: climb, b: back },
    turn: { a: multiple(-1, product(drift, climb)), b: minus(steer, product(drift, back)) },
  };
}

/** The same by the determinant, which is 0 in singular poses only. */
function solveByDeterminant(arms: Response, spun: Response, pull: Taylor): Solution | null {
  const room = inverse(minus(product(arms.rod, spun.height), product(spun.rod, arms.height)));
  if (room === null) return null;
  return {
    share: {
      a: multiple(-1, product(spun.rod, room)),
      b: product(product(pull, spun.height), room),
    },
    turn: {
      a: product(arms.rod, room),
      b: multiple(-1, product(product(pull, arms.height), room)),
    },
  };
}

/** All rates while nothing leaves the tube; null where a singular pose may lie within it. */
function ratesWithin(linkage: Linkage, centre: Centre, tube: Tube): Rates | null {
  const { fixed } = linkage;
  const { half } = centre;
  const v = vectorsWithin(linkage, centre, tube);
  const ratio = armsWithin(v);
  const lower = times(ratio.theta, v.lower);
  const upper = times(ratio.phi, v.upper);
  const axis = scaled(fixed[Fixed.spanInverse]!, difference(upper, lower));
  const tilt = cross(v.axis, axis);
  const arms = responseTo(v, lower, tilt);
  const spun: Response = { rod: dot(v.rod, v.outerLever), height: vertical(v.centreLever) };
  const pull = dot(v.rod, still(tripleAt(fixed, Fixed.rackDirection)));
  const solution = solveByLever(arms, spun, pull) ?? solveByDeterminant(arms, spun, pull);
  if (solution === null) return null;
  const sizes = { a: half.travel, b: half.rack };
  const share = along((side) => multiple(sizes[side], solution.share[side]));
  const turn = along((side) => multiple(sizes[side], solution.turn[side]));
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
  };
}

function along<T>(of: (side: 'a' | 'b') => T): Along<T> {
  return { a: of('a'), b: of('b') };
}

function minus(v: Taylor, w: Taylor): Taylor {
  return plus(v, multiple(-1, w));
}

function widened(rest: number): number {
  return rest * (1 + SAFETY) + SAFETY_SIZE;
}

/** How far a vector with these rates strays from its tangent: slopes count half, they grow from 0. */
function strays({ a, b }: Along<TaylorVector>): number {
  return widened((swing(a) + a.rest + swing(b) + b.rest) / 2);
}

function straysAngle({ a, b }: Along<Taylor>): number {
  return widened((swingOf(a) + a.rest + swingOf(b) + b.rest) / 2);
}

/** The same for the knuckle's turn: what its spin strays, and half the square of what it turns. */
function straysTurn(spin: Along<TaylorVector>): number {
  const first = midLength(spin.a) + midLength(spin.b);
  const widest = first + swing(spin.a) + swing(spin.b);
  return strays(spin) + widened((first * widest) / 2);
}

function tubeOf(rates: Rates): Tube {
  return {
    theta: straysAngle(rates.theta),
    phi: straysAngle(rates.phi),
    axis: strays(rates.axis),
    turn: straysTurn(rates.spin),
    outer: strays(rates.outer),
  };
}

function wider(tube: Tube, factor: number): Tube {
  return {
    theta: tube.theta * factor,
    phi: tube.phi * factor,
    axis: tube.axis * factor,
    turn: tube.turn * factor,
    outer: tube.outer * factor,
  };
}

function isWithin(inner: Tube, outer: Tube): boolean {
  return (
    inner.theta <= outer.theta &&
    inner.phi <= outer.phi &&
    inner.axis <= outer.axis &&
    inner.turn <= outer.turn &&
    inner.outer <= outer.outer
  );
}

const NO_TUBE: Tube = { theta: 0, phi: 0, axis: 0, turn: 0, outer: 0 };

/** Looks for a tube that cannot be left, and the rates that hold within it. */
function settle(linkage: Linkage, centre: Centre): { rates: Rates; tube: Tube } | null {
  const tangent = ratesWithin(linkage, centre, NO_TUBE);
  if (tangent === null) return null;
  let guess = wider(tubeOf(tangent), FIRST_GUESS);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    if (!(Math.max(guess.theta, guess.phi, guess.turn) < WIDEST)) return null;
    const rates = ratesWithin(linkage, centre, guess);
    if (rates === null) return null;
    const strayed = tubeOf(rates);
    if (isWithin(strayed, guess)) return { rates, tube: strayed };
    guess = wider(strayed, NEXT_GUESS);
  }
  return null;
}

function armMotion(
  linkage: Linkage,
  centre: Centre,
  circle: number,
  joint: number,
  velocity: Along<TaylorVector>,
  turn: Taylor,
): BodyMotion {
  const axis = tripleAt(linkage.fixed, circle + CIRCLE_AXIS);
  const widest = swingOf(turn);
  return {
    origin: movingPoint(centre.pose, joint, velocity),
    spinA: triple(turn.a * axis.x, turn.a * axis.y, turn.a * axis.z),
    spinB: triple(turn.b * axis.x, turn.b * axis.y, turn.b * axis.z),
    rest: turn.rest + (widest * widest) / 2,
  };
}

/** A joint over the cell, from its rates; their middles are exact. */
function movingPoint(
  pose: Float64Array,
  joint: number,
  { a, b }: Along<TaylorVector>,
): TaylorVector {
  return sloping(tripleAt(pose, joint), a, b, strays({ a, b }));
}

/**
 * Encloses the linkage over the cell with these half-sizes about the solved pose in the buffer, whose rates must be
 * written (`poseRates`); null where that proves nothing: the cell is too large, or a singular pose is in it or near it.
 */
export function encloseMotion(
  linkage: Linkage,
  pose: Float64Array,
  half: HalfSizes,
): Motion | null {
  const centre = centreOf(linkage, pose, half);
  const settled = settle(linkage, centre);
  if (settled === null) return null;
  const { rates, tube } = settled;
  const theta = angle(centre, Slot.travelTheta, Slot.rackTheta, tube.theta);
  const phi = angle(centre, Slot.travelPhi, Slot.rackPhi, tube.phi);
  const rack = scaledTriple(linkage.fixed, Fixed.rackDirection, half.rack);
  return {
    lowerArm: armMotion(linkage, centre, Fixed.lowerCircle, Slot.lower, rates.lower, theta),
    upperArm: armMotion(linkage, centre, Fixed.upperCircle, Slot.upper, rates.upper, phi),
    knuckle: {
      origin: movingPoint(pose, Slot.lower, rates.lower),
      spinA: centre.spinA,
      spinB: centre.spinB,
      rest: tube.turn,
    },
    outer: movingPoint(pose, Slot.outer, rates.outer),
    inner: sloping(tripleAt(pose, Slot.inner), triple(0, 0, 0), rack, 0),
  };
}

/** A vector fixed to the body, as it stands in the centre's pose, over the cell. */
export function carriedVector(body: BodyMotion, vector: Triple): TaylorVector {
  return sloping(
    vector,
    crossed(body.spinA, vector),
    crossed(body.spinB, vector),
    body.rest * midLength(vector),
  );
}

/** A point fixed to the body, as it stands in the centre's pose, over the cell. */
export function carriedPoint(body: BodyMotion, point: Triple): TaylorVector {
  const { origin } = body;
  const arm = triple(point.x - origin.x, point.y - origin.y, point.z - origin.z);
  return sum(origin, carriedVector(body, arm));
}

/** A moving vector as it is seen from a rigid body, in axes that turn with it and stand as they do at the centre. */
export function turnedBack(body: BodyMotion, vector: TaylorVector): TaylorVector {
  const turningA = crossed(body.spinA, vector);
  const turningB = crossed(body.spinB, vector);
  const spin = midLength(body.spinA) + midLength(body.spinB);
  const linear = midLength(slopeA(vector)) + midLength(slopeB(vector));
  return sloping(
    vector,
    triple(vector.ax - turningA.x, vector.ay - turningA.y, vector.az - turningA.z),
    triple(vector.bx - turningB.x, vector.by - turningB.y, vector.bz - turningB.z),
    vector.rest + spin * linear + body.rest * (midLength(vector) + linear),
  );
}

/** A moving point as it is seen from a rigid body, measured from the body's origin. */
export function seenFrom(body: BodyMotion, point: TaylorVector): TaylorVector {
  return turnedBack(body, difference(point, body.origin));
}
