/**
 * The knuckle as it would move at ride if its toe, or its camber, changed at the wanted rate and kept that rate: its
 * velocity and acceleration per travel, to first and second order exact. What moves is left out of the constraints, and
 * the wanted rate takes its place. Holds in the design pose, for a model whose ride and set-up are that pose.
 */
import { designHubAxis, designWheelCentre } from '../linkage/frames.ts';
import { add, addScaled, cross, dot, scale, subtract, unit, type Vector3 } from '../math/vec3.ts';
import type { Model } from '../model/model.ts';
import { radians } from '../units.ts';
import { solved } from './elimination.ts';
import { angleOf, type Question } from './question.ts';

/** Per mm of travel: ω, α of the knuckle, and its lower ball joint's velocity and acceleration. */
export interface WantedMotion {
  readonly origin: Vector3;
  readonly spin: Vector3;
  readonly spinRate: Vector3;
  readonly velocity: Vector3;
  readonly acceleration: Vector3;
}

/** Velocity of the knuckle's point now at `point`. */
export function velocityAt({ origin, spin, velocity }: WantedMotion, point: Vector3): Vector3 {
  return add(velocity, cross(spin, subtract(point, origin)));
}

/** Acceleration of the knuckle's point now at `point`. */
export function accelerationAt(motion: WantedMotion, point: Vector3): Vector3 {
  const { origin, spin, spinRate, acceleration } = motion;
  const arm = subtract(point, origin);
  return add(add(acceleration, cross(spinRate, arm)), cross(spin, cross(spin, arm)));
}

/** A linear condition on (θ̇, ω), its right side, and what it asks of (θ̈, α) once those are known. */
interface Condition {
  readonly row: readonly number[];
  readonly right: number;
  /** Right side of the second order, for a motion whose θ̈ and α are still 0. */
  readonly next: (bare: WantedMotion) => number;
}

type Pivot = { readonly tangent: Vector3; readonly origin: Vector3 };

/** direction·velocity of a knuckle's point, as a row of (θ̇, ω). */
function row({ tangent, origin }: Pivot, point: Vector3, direction: Vector3): readonly number[] {
  return [dot(tangent, direction), ...cross(subtract(point, origin), direction)];
}

/** The wheel centre rises by 1 mm per mm of travel. */
function height(pivot: Pivot, model: Model): Condition {
  const centre = designWheelCentre(model);
  return {
    row: row(pivot, centre, [0, 0, 1]),
    right: 1,
    next: (bare) => -accelerationAt(bare, centre)[2],
  };
}

/** A point of the knuckle keeps its distance to a point of the body. */
function link(pivot: Pivot, point: Vector3, to: Vector3): Condition {
  const way = subtract(point, to);
  return {
    row: row(pivot, point, way),
    right: 0,
    next: (bare) => {
      const speed = velocityAt(bare, point);
      return -dot(way, accelerationAt(bare, point)) - dot(speed, speed);
    },
  };
}

/** A point of the knuckle moves square to a direction that stands still. */
function square(pivot: Pivot, point: Vector3, direction: Vector3): Condition {
  return {
    row: row(pivot, point, direction),
    right: 0,
    next: (bare) => -dot(direction, accelerationAt(bare, point)),
  };
}

/** Toe atan2(a_x, a_y) changes at the rate w, rad/mm, for good. */
function toeRate(axis: Vector3, w: number): Condition {
  const [x, y, z] = axis;
  const flat = x * x + y * y;
  return {
    row: [0, (x * z) / flat, (y * z) / flat, -1],
    right: w,
    next: ({ spin }) => {
      const first = cross(spin, axis);
      const second = cross(spin, first);
      return (2 * w * (x * first[0] + y * first[1]) - (second[0] * y - x * second[1])) / flat;
    },
  };
}

/** Camber −asin(a_z) changes at the rate w, rad/mm, for good. */
function camberRate(axis: Vector3, w: number): Condition {
  const [x, y, z] = axis;
  const flat = Math.sqrt(x * x + y * y);
  return {
    row: [0, -y / flat, x / flat, 0],
    right: w,
    next: ({ spin }) => {
      const first = cross(spin, axis);
      return cross(spin, first)[2] / flat + (z * first[2] * first[2]) / flat ** 3;
    },
  };
}

/** The four conditions that are left when the subject's own constraint gives way to the wanted rate. */
function conditionsOf(model: Model, pivot: Pivot, question: Question): readonly Condition[] {
  const { upperArm, tieRod } = model;
  const { subject } = question;
  const [axis, w] = [designHubAxis(model), radians(question.wanted)];
  const rate = angleOf(subject) === 'toe' ? toeRate(axis, w) : camberRate(axis, w);
  const front = link(pivot, upperArm.ballJoint, upperArm.frontPivot);
  const rear = link(pivot, upperArm.ballJoint, upperArm.rearPivot);
  const rod = link(pivot, tieRod.outer, tieRod.inner);
  const along = subtract(upperArm.frontPivot, upperArm.rearPivot);
  const left = {
    rodInner: [front, rear],
    rodOuter: [front, rear],
    upperFront: [rear, rod],
    upperRear: [front, rod],
    upperBoth: [square(pivot, upperArm.ballJoint, along), rod],
  }[subject];
  return [height(pivot, model), rate, ...left];
}

function motionFrom(
  pivot: Pivot,
  inwards: Vector3,
  first: readonly number[],
  second: readonly number[],
): WantedMotion {
  const [turn, x, y, z] = first as [number, number, number, number];
  const [turnRate, p, q, r] = second as [number, number, number, number];
  return {
    origin: pivot.origin,
    spin: [x, y, z],
    spinRate: [p, q, r],
    velocity: scale(pivot.tangent, turn),
    acceleration: addScaled(scale(pivot.tangent, turnRate), inwards, turn * turn),
  };
}

/** The wanted motion in the design pose; null where the other constraints do not allow just one. */
export function wantedMotion(model: Model, question: Question): WantedMotion | null {
  const { lowerArm } = model;
  const axis = unit(subtract(lowerArm.frontPivot, lowerArm.rearPivot));
  const tangent = cross(axis, subtract(lowerArm.ballJoint, lowerArm.rearPivot));
  const inwards = cross(axis, tangent);
  const pivot = { tangent, origin: lowerArm.ballJoint };
  const conditions = conditionsOf(model, pivot, question);
  const rows = conditions.map((condition) => condition.row);
  const first = solved(
    rows,
    conditions.map(({ right }) => right),
  );
  if (first === null) return null;
  const bare = motionFrom(pivot, inwards, first, [0, 0, 0, 0]);
  const second = solved(
    rows,
    conditions.map(({ next }) => next(bare)),
  );
  return second === null ? null : motionFrom(pivot, inwards, first, second);
}
