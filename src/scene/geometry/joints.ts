/** Ball joints: housing on the arm or the rod, stud and seat on the knuckle. Design pose, vehicle axes. */
import type { Vector3 } from 'three';
import type { Arm, Model } from '../../../solver/index.ts';
import { designHubAxis } from '../../../solver/linkage/frames.ts';
import { tieRodStudAxis, tubeDiameter } from '../../../solver/model/defaults.ts';
import { BALL_JOINT, CARRIER, JOINT, ROD_END } from '../proportions.ts';
import { addHex, pinProfile, revolve } from './revolve.ts';
import { type Assembly, axisFrame, piece, toVector } from './solid.ts';

export type JointName = 'lower' | 'upper' | 'rod';
export const JOINT_NAMES: readonly JointName[] = ['lower', 'upper', 'rod'];

export interface JointShape {
  readonly ball: Vector3;
  /** Unit, from the ball towards the knuckle's seat; the housing's axis on the same side. */
  readonly stud: Vector3;
  readonly housing: Vector3;
  /** Radius of the housing, mm: every other size follows it. */
  readonly size: number;
}

function housingSize(tube: number): number {
  return Math.min(BALL_JOINT.largest, Math.max(BALL_JOINT.least, BALL_JOINT.part * tube));
}

/** Middle of the knuckle's bearing carrier: what the studs point to. */
export function carrierCentre(model: Model): Vector3 {
  const axis = toVector(designHubAxis(model));
  return toVector(model.hub.face).addScaledVector(axis, -CARRIER.inboard - CARRIER.width / 2);
}

function shape(
  ball: Vector3,
  stud: Vector3,
  housing: Vector3,
  size: number,
  towards: Vector3,
): JointShape {
  const sense = stud.dot(towards.clone().sub(ball)) < 0 ? -1 : 1;
  const turned = stud.clone().multiplyScalar(sense).normalize();
  const held = housing.clone().normalize();
  return { ball, stud: turned, housing: held.dot(turned) < 0 ? held.negate() : held, size };
}

/** The three joints of the knuckle; stated or copied axes as the contract says. */
export function jointShapes(model: Model): Record<JointName, JointShape> {
  const towards = carrierCentre(model);
  const span = toVector(model.upperArm.ballJoint).sub(toVector(model.lowerArm.ballJoint));
  const ofArm = (arm: Arm, tube: number): JointShape => {
    const stud = arm.studAxis === undefined ? span : toVector(arm.studAxis);
    const housing = arm.housingAxis === undefined ? stud : toVector(arm.housingAxis);
    return shape(toVector(arm.ballJoint), stud, housing, housingSize(tube), towards);
  };
  const rodStud = toVector(tieRodStudAxis(model.tieRod));
  const { housingAxis, outer } = model.tieRod;
  return {
    lower: ofArm(model.lowerArm, tubeDiameter(model, 'lowerArm')),
    upper: ofArm(model.upperArm, tubeDiameter(model, 'upperArm')),
    rod: shape(
      toVector(outer),
      rodStud,
      housingAxis === undefined ? rodStud : toVector(housingAxis),
      ROD_END,
      towards,
    ),
  };
}

/** The housing: cup, rolled mouth, foot plate. */
export function addHousing(
  assembly: Assembly,
  { size }: JointShape,
  ball: Vector3,
  axis: Vector3,
): void {
  const at = axisFrame(ball, axis);
  revolve(
    piece(assembly, 'dark'),
    at,
    [
      [JOINT.foot * size, 0],
      [JOINT.foot * size, 0.62 * size],
      [(JOINT.foot + 0.12) * size, 0.8 * size],
      [0.1 * size, size],
      [0.34 * size, size],
      [JOINT.mouth * size, 0.8 * size],
      [JOINT.mouth * size, 0],
    ],
    { segments: 28 },
  );
}

/** Middle of the seat in the knuckle that the stud is drawn into. */
export function seatCentre({ ball, stud, size }: JointShape): Vector3 {
  return ball.clone().addScaledVector(stud, (JOINT.seat + JOINT.height / 2) * size);
}

/** Stud, the knuckle's boss round its taper, and its nut. */
export function addSeat(assembly: Assembly, { ball, stud, size }: JointShape): void {
  const at = axisFrame(ball, stud);
  const top = (JOINT.seat + JOINT.height) * size;
  revolve(piece(assembly, 'steel'), at, pinProfile(JOINT.stud * size, 0, top + 0.5 * size), {
    segments: 14,
  });
  revolve(
    piece(assembly, 'knuckle'),
    at,
    pinProfile(JOINT.boss * size, JOINT.seat * size, top, 0.16 * size),
    { segments: 26 },
  );
  addHex(piece(assembly, 'steel'), at, 0.66 * size, top, top + 0.34 * size);
}
