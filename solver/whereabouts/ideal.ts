/**
 * The ideal line and the ideal point: where the rate at ride is exactly the wanted one, and where it does not begin to
 * change either. The places of an end whose link keeps its length to first order fill a plane: square to the velocity,
 * in the wanted motion, of the link's knuckle end. So it is for either end, since a link's length does not ask which of its ends
 * moves. (Rods along which a moving body neither pushes nor pulls are the null lines of its screw: R. S. Ball, A
 * Treatise on the Theory of Screws, 1900, from memory.) To second order the places fill a plane again.
 */

import { settingsOf, sizeOf } from '../linkage/settings.ts';
import { addScaled, cross, dot, scale, subtract, type Vector3 } from '../math/vec3.ts';
import { rideTravel } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { solved } from './elimination.ts';
import { PLANE_AXES, type Question } from './question.ts';
import { placeOf } from './subject.ts';
import { accelerationAt, velocityAt, type WantedMotion, wantedMotion } from './wantedMotion.ts';

/** All points X with normal·X = offset. */
interface Flat {
  readonly normal: Vector3;
  readonly offset: number;
}

/** a·first + b·second = c in the coordinates of the picture's axes, with (a, b) of length 1. */
export interface IdealLine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

export interface Ideal {
  /** null where the plane of ideal places does not cut the picture's. */
  readonly line: IdealLine | null;
  /** Coordinates along the picture's two axes, mm; null where the two lines do not meet. */
  readonly point: readonly [number, number] | null;
}

/** Places of a body's point to which the knuckle's point P keeps its distance, to first and to second order. */
function bodyEnd(motion: WantedMotion, knuckleEnd: Vector3): readonly [Flat, Flat] {
  const v = velocityAt(motion, knuckleEnd);
  const a = accelerationAt(motion, knuckleEnd);
  return [
    { normal: v, offset: dot(knuckleEnd, v) },
    { normal: a, offset: dot(knuckleEnd, a) + dot(v, v) },
  ];
}

/**
 * Places of a knuckle's point that keeps its distance to the body's point Q. With P, Q from the lower ball joint and
 * v₀, a₀ its velocity and acceleration, (P − Q)·(a₀ + α×P + ω×(ω×P)) + |v₀ + ω×P|² = 0 is linear in P, as its squares
 * cancel: P·(a₀ + α×Q − ω×(ω×Q) + 2·v₀×ω) = Q·a₀ − |v₀|².
 */
function knuckleEnd(motion: WantedMotion, bodyPoint: Vector3): readonly [Flat, Flat] {
  const { origin, spin, spinRate, velocity, acceleration } = motion;
  const v = velocityAt(motion, bodyPoint);
  const q = subtract(bodyPoint, origin);
  const turning = subtract(cross(spinRate, q), cross(spin, cross(spin, q)));
  const normal = addScaled(
    [acceleration[0] + turning[0], acceleration[1] + turning[1], acceleration[2] + turning[2]],
    cross(velocity, spin),
    2,
  );
  const offset = dot(q, acceleration) - dot(velocity, velocity) + dot(normal, origin);
  return [
    { normal: v, offset: dot(bodyPoint, v) },
    { normal, offset },
  ];
}

/** Where a plane of space cuts the picture's; null where they are parallel. */
function cut({ normal, offset }: Flat, place: Vector3, question: Question): IdealLine | null {
  const [i, j] = PLANE_AXES[question.plane];
  const k = 3 - i - j;
  const size = Math.hypot(normal[i]!, normal[j]!);
  if (!(size > 1e-9 * Math.hypot(...normal))) return null;
  const unitNormal = scale(normal, 1 / size);
  return { a: unitNormal[i]!, b: unitNormal[j]!, c: offset / size - unitNormal[k]! * place[k]! };
}

/** Whether ride is the design pose and nothing is set: then the ideal line is straight, and exact. */
export function isRideAsDesigned(model: Model): boolean {
  return rideTravel(model.travel) === 0 && sizeOf(settingsOf(model)) === 0;
}

/** The ideal places in the picture's plane; null where ride is not the design pose, so that the line is not straight. */
export function idealOf(model: Model, question: Question): Ideal | null {
  const motion = isRideAsDesigned(model) ? wantedMotion(model, question) : null;
  if (motion === null) return null;
  const { subject } = question;
  const place = placeOf(model, subject);
  const [first, second] =
    subject === 'rodOuter'
      ? knuckleEnd(motion, model.tieRod.inner)
      : bodyEnd(motion, subject === 'rodInner' ? model.tieRod.outer : model.upperArm.ballJoint);
  const line = cut(first, place, question);
  const next = cut(second, place, question);
  const rows =
    line === null || next === null
      ? null
      : [
          [line.a, line.b],
          [next.a, next.b],
        ];
  const meet = rows === null ? null : solved(rows, [line!.c, next!.c]);
  return { line, point: meet === null ? null : [meet[0]!, meet[1]!] };
}
