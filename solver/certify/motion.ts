/**
 * Where every body of the linkage can be anywhere in a cell: an enclosure of its motion as first-order Taylor models.
 * Each of the cell's poses continues the one at its centre, with no singular pose in between.
 */
import { CIRCLE_AXIS } from '../linkage/circle.ts';
import type { Linkage } from '../linkage/linkage.ts';
import { Fixed, Slot } from '../linkage/slots.ts';
import type { BodyMotion } from './bodyMotion.ts';
import { type HalfSizes, regularDrive } from './drive.ts';
import { type Along, along, type Slopes, turnOver } from './rates.ts';
import {
  scaledTriple,
  sloping,
  swingOf,
  type Taylor,
  type TaylorVector,
  type Triple,
  tripleAt,
} from './taylor.ts';
import { type Settled, settle, strays } from './tube.ts';

export {
  type BodyMotion,
  carriedPoint,
  carriedVector,
  seenFrom,
  turnedBack,
} from './bodyMotion.ts';
export type { HalfSizes } from './drive.ts';

/** The linkage over a cell. */
export interface Motion {
  readonly lowerArm: BodyMotion;
  readonly upperArm: BodyMotion;
  readonly knuckle: BodyMotion;
  /** The tie rod's joints. */
  readonly outer: TaylorVector;
  readonly inner: TaylorVector;
}

/** A joint over the cell, from its rates; their middles are exact. */
function movingPoint(
  pose: Float64Array,
  joint: number,
  { a, b }: Along<TaylorVector>,
): TaylorVector {
  return sloping(tripleAt(pose, joint), a, b, strays({ a, b }));
}

function armMotion(
  { fixed }: Linkage,
  circle: number,
  origin: TaylorVector,
  turn: Taylor,
): BodyMotion {
  const axis = tripleAt(fixed, circle + CIRCLE_AXIS);
  const widest = swingOf(turn);
  return {
    origin,
    spinA: scaledTriple(turn.a, axis),
    spinB: scaledTriple(turn.b, axis),
    rest: turn.rest + (widest * widest) / 2,
  };
}

/** The motion that follows from rates that hold over a cell. */
export function motionOf(
  linkage: Linkage,
  pose: Float64Array,
  slopes: Slopes,
  { rates, tube }: Settled,
): Motion {
  const lower = movingPoint(pose, Slot.lower, rates.lower);
  const upper = movingPoint(pose, Slot.upper, rates.upper);
  const d = tripleAt(linkage.fixed, Fixed.rackDirection);
  return {
    lowerArm: armMotion(linkage, Fixed.lowerCircle, lower, turnOver(slopes.theta, tube.theta)),
    upperArm: armMotion(linkage, Fixed.upperCircle, upper, turnOver(slopes.phi, tube.phi)),
    knuckle: { origin: lower, spinA: slopes.spin.a, spinB: slopes.spin.b, rest: tube.turn },
    outer: movingPoint(pose, Slot.outer, rates.outer),
    inner: sloping(
      tripleAt(pose, Slot.inner),
      scaledTriple(slopes.rack.a, d),
      scaledTriple(slopes.rack.b, d),
      tube.rack,
    ),
  };
}

/** The exact rates of a pose, written by `poseRates`, over a cell's half-sizes. */
function slopesOf(pose: Float64Array, half: HalfSizes): Slopes {
  const number = (travel: number, rack: number): Along<number> => ({
    a: half.travel * pose[travel]!,
    b: half.rack * pose[rack]!,
  });
  const vector = (travel: number, rack: number): Along<Triple> =>
    along((side) =>
      side === 'a'
        ? scaledTriple(half.travel, tripleAt(pose, travel))
        : scaledTriple(half.rack, tripleAt(pose, rack)),
    );
  return {
    theta: number(Slot.travelTheta, Slot.rackTheta),
    phi: number(Slot.travelPhi, Slot.rackPhi),
    spin: vector(Slot.travelOmega, Slot.rackOmega),
    outer: vector(Slot.travelOuter, Slot.rackOuter),
    rack: { a: 0, b: half.rack },
  };
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
  const slopes = slopesOf(pose, half);
  const settled = settle(linkage, pose, regularDrive(half), slopes);
  return settled === null ? null : motionOf(linkage, pose, slopes, settled);
}
