/**
 * A solved pose with its derivatives along a line of the motion and with respect to every input: implicit differentiation of nine
 * equations in the nine coordinates of LB, UB and TO,
 *   |LB − pivots|² (2), |UB − pivots|² (2), |UB − LB|², |TO − LB|², |TO − UB|², |TO − TI|² kept, and W_z = design W_z + travel.
 * They are solved by Newton steps in the algebra of jets with the real derivative of the solved pose: each step makes one more order exact
 * (s, s², and the inputs' derivatives of each), so that order + 1 steps do.
 */
import { Slot } from '../linkage/slots.ts';
import type { Pose } from '../linkage/solve.ts';
import type { Vector3 } from '../math/vec3.ts';
import { type Constants, knuckleAxes } from './design.ts';
import { invert } from './invert.ts';
import type { Jet, Jets } from './jets.ts';
import {
  composed,
  constantVector,
  difference,
  dotProduct,
  type JetAxes,
  type JetVector,
  sum,
} from './vectors.ts';

/** The line a pose is differentiated along: travel + s·perTravel, rack + s·perRack. */
export interface Course {
  readonly travel: number;
  readonly rack: number;
  readonly perTravel: number;
  readonly perRack: number;
}

interface Bodies {
  readonly lower: JetVector;
  readonly upper: JetVector;
  readonly outer: JetVector;
  readonly inner: JetVector;
  readonly knuckle: JetAxes;
  readonly centre: JetVector;
}

export interface Motion extends Bodies {
  readonly hub: JetVector;
}

const UNKNOWNS = 9;
const [LB, UB, TO] = [0, 3, 6];

const _derivative = new Float64Array(UNKNOWNS * UNKNOWNS);
const _inverse = new Float64Array(UNKNOWNS * UNKNOWNS);

function vectorAt(data: Float64Array, at: number): Vector3 {
  return [data[at]!, data[at + 1]!, data[at + 2]!];
}

function valuesOf(jets: Jets, a: JetVector): Vector3 {
  return [jets.value(a[0]), jets.value(a[1]), jets.value(a[2])];
}

/** Row of |A − B|²: 2(A − B) under A, and minus that under B where B moves. */
function writeLength(row: number, a: Vector3, at: number, b: Vector3, other: number | null): void {
  for (let i = 0; i < 3; i += 1) {
    const twice = 2 * (a[i]! - b[i]!);
    _derivative[row * UNKNOWNS + at + i] = twice;
    if (other !== null) _derivative[row * UNKNOWNS + other + i] = -twice;
  }
}

/** Row of W_z = LB_z + α·u_z + β·v_z + γ·(u_x·v_y − u_y·v_x). */
function writeHeight(lower: Vector3, upper: Vector3, outer: Vector3, at: Vector3): void {
  const [alpha, beta, gamma] = at;
  const row = (UNKNOWNS - 1) * UNKNOWNS;
  const u = [gamma * (outer[1] - lower[1]), -gamma * (outer[0] - lower[0]), alpha];
  const v = [-gamma * (upper[1] - lower[1]), gamma * (upper[0] - lower[0]), beta];
  for (let i = 0; i < 3; i += 1) {
    _derivative[row + UB + i] = u[i]!;
    _derivative[row + TO + i] = v[i]!;
    _derivative[row + LB + i] = (i === 2 ? 1 : 0) - u[i]! - v[i]!;
  }
}

function writeDerivative(jets: Jets, constants: Constants, data: Float64Array): void {
  const lower = vectorAt(data, Slot.lower);
  const upper = vectorAt(data, Slot.upper);
  const outer = vectorAt(data, Slot.outer);
  const { lowerPivots, upperPivots, centreAt } = constants;
  _derivative.fill(0);
  writeLength(0, lower, LB, valuesOf(jets, lowerPivots[0]), null);
  writeLength(1, lower, LB, valuesOf(jets, lowerPivots[1]), null);
  writeLength(2, upper, UB, valuesOf(jets, upperPivots[0]), null);
  writeLength(3, upper, UB, valuesOf(jets, upperPivots[1]), null);
  writeLength(4, upper, UB, lower, LB);
  writeLength(5, outer, TO, lower, LB);
  writeLength(6, outer, TO, upper, UB);
  writeLength(7, outer, TO, vectorAt(data, Slot.inner), null);
  writeHeight(lower, upper, outer, valuesOf(jets, centreAt));
}

/** The bodies at nine coordinates. */
function place(jets: Jets, constants: Constants, x: readonly Jet[], inner: JetVector): Bodies {
  const lower: JetVector = [x[0]!, x[1]!, x[2]!];
  const upper: JetVector = [x[3]!, x[4]!, x[5]!];
  const outer: JetVector = [x[6]!, x[7]!, x[8]!];
  const knuckle = knuckleAxes(jets, lower, upper, outer);
  const centre = sum(jets, lower, composed(jets, knuckle, constants.centreAt));
  return { lower, upper, outer, inner, knuckle, centre };
}

/** What the nine equations lack. */
function residuals(jets: Jets, constants: Constants, bodies: Bodies, travel: Jet): Jet[] {
  const { lower, upper, outer, inner, knuckle, centre } = bodies;
  const { lowerPivots, upperPivots, squares, designHeight } = constants;
  const spans: readonly JetVector[] = [
    difference(jets, lower, lowerPivots[0]),
    difference(jets, lower, lowerPivots[1]),
    difference(jets, upper, upperPivots[0]),
    difference(jets, upper, upperPivots[1]),
    knuckle[0],
    knuckle[1],
    difference(jets, outer, upper),
    difference(jets, outer, inner),
  ];
  const lengths = spans.map((span, i) => jets.subtract(dotProduct(jets, span, span), squares[i]!));
  const height = jets.subtract(centre[2], jets.add(designHeight, travel));
  return [...lengths, height];
}

/** The motion through a solved pose along a course, to the order the algebra is set to; null at a singular pose. */
export function motionOf(
  jets: Jets,
  constants: Constants,
  { data }: Pose,
  course: Course,
): Motion | null {
  writeDerivative(jets, constants, data);
  if (!invert(_derivative, _inverse, UNKNOWNS)) return null;
  for (let i = 0; i < _inverse.length; i += 1) _inverse[i] = -_inverse[i]!;
  const rack = jets.moving(course.rack, course.perRack);
  const along = constantVector(jets, constants.rackDirection);
  const inner = sum(jets, constants.rackOrigin, [
    jets.multiply(rack, along[0]),
    jets.multiply(rack, along[1]),
    jets.multiply(rack, along[2]),
  ]);
  const travel = jets.moving(course.travel, course.perTravel);
  let x: readonly Jet[] = [Slot.lower, Slot.upper, Slot.outer].flatMap((at) => [
    ...constantVector(jets, vectorAt(data, at)),
  ]);
  const { order } = jets;
  for (let step = 0; step <= order; step += 1) {
    // The first step makes s and the inputs exact and nothing beyond: it need not carry more.
    if (step === 0 && order === 2) jets.order = 1;
    const lacking = residuals(jets, constants, place(jets, constants, x, inner), travel);
    x = jets.stepBy(x, _inverse, lacking);
    jets.order = order;
  }
  const bodies = place(jets, constants, x, inner);
  return { ...bodies, hub: composed(jets, bodies.knuckle, constants.hubAt) };
}
