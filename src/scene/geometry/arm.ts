/** An arm in the design pose, vehicle axes: legs, bushes, brace, gusset, mounts of what it carries. */
import type { Vector3 } from 'three';
import type { Model, Vector3 as Point } from '../../../solver/index.ts';
import { carrier, coiloverDiameter, tubeDiameter } from '../../../solver/model/defaults.ts';
import { BUSH, DAMPER } from '../proportions.ts';
import { mountHalfWidth } from './coiloverShape.ts';
import { addHousing, type JointShape, jointShapes } from './joints.ts';
import { nearestAlong, pointAlong } from './path.ts';
import { addPlateThrough } from './plate.ts';
import { addBall, addHex, addPin, pinProfile, revolve, ringProfile } from './revolve.ts';
import { type Assembly, axisFrame, piece, toVector } from './solid.ts';
import { addTube } from './sweep.ts';

export type ArmName = 'lowerArm' | 'upperArm';

interface ArmShape {
  readonly tube: number;
  /** Centrelines from pivot to ball joint. */
  readonly legs: readonly [readonly Vector3[], readonly Vector3[]];
  /** Unit along the pivots, to the front. */
  readonly axis: Vector3;
  readonly joint: JointShape;
  /** The coilover's centreline, half its thickness. */
  readonly coilover: {
    readonly from: Vector3;
    readonly to: Vector3;
    readonly radius: number;
  } | null;
}

function legOf(pivot: Point, bends: readonly Point[], ball: Point): Vector3[] {
  return [pivot, ...bends, ball].map(toVector);
}

function armShape(model: Model, name: ArmName): ArmShape {
  const arm = model[name];
  const { coilover } = model;
  return {
    tube: tubeDiameter(model, name),
    legs: [
      legOf(arm.frontPivot, arm.legs?.front ?? [], arm.ballJoint),
      legOf(arm.rearPivot, arm.legs?.rear ?? [], arm.ballJoint),
    ],
    axis: toVector(arm.frontPivot).sub(toVector(arm.rearPivot)).normalize(),
    joint: jointShapes(model)[name === 'lowerArm' ? 'lower' : 'upper'],
    coilover:
      coilover === undefined
        ? null
        : {
            from: toVector(coilover.bottom),
            to: toVector(coilover.top),
            radius: coiloverDiameter(coilover) / 2,
          },
  };
}

/** Least distance between a straight piece and the coilover's axis, sampled. */
function roomToCoilover(from: Vector3, to: Vector3, shape: ArmShape): number {
  if (shape.coilover === null) return Number.POSITIVE_INFINITY;
  const line = [shape.coilover.from, shape.coilover.to];
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= 12; i += 1) {
    const point = from.clone().lerp(to, i / 12);
    least = Math.min(least, nearestAlong(line, point).distanceTo(point));
  }
  return least - shape.coilover.radius;
}

function addBush(assembly: Assembly, pivot: Vector3, { axis, tube }: ArmShape): void {
  const at = axisFrame(pivot, axis);
  const half = (BUSH.length * tube) / 2;
  const shell = BUSH.shell * tube;
  const rubber = BUSH.rubber * tube;
  const sleeve = BUSH.sleeve * tube;
  revolve(piece(assembly, 'arm'), at, ringProfile(rubber, shell, -half, half, 2), { segments: 28 });
  revolve(
    piece(assembly, 'rubber'),
    at,
    ringProfile(sleeve, rubber - 0.5, -half - 1, half + 1, 3),
    { segments: 24 },
  );
  revolve(piece(assembly, 'steel'), at, pinProfile(sleeve, -half - 4, half + 4, 1), {
    segments: 18,
  });
}

/** The tube between both legs, at the place nearest the pivots' third that leaves the coilover room. */
function addBrace(assembly: Assembly, shape: ArmShape): void {
  const radius = 0.3 * shape.tube;
  for (const share of [0.36, 0.3, 0.42, 0.24, 0.5]) {
    const [front, rear] = shape.legs.map((leg) => pointAlong(leg, share)) as [Vector3, Vector3];
    if (roomToCoilover(front, rear, shape) > radius + 14) {
      addTube(piece(assembly, 'arm'), [front, rear], radius);
      return;
    }
  }
}

/** Web between the legs beside the ball joint, drawn back where the coilover comes near. */
function addGusset(assembly: Assembly, shape: ArmShape): void {
  const [front, rear] = shape.legs;
  for (const reach of [0.34, 0.26, 0.18]) {
    const a = pointAlong(front, 1 - reach);
    const b = pointAlong(rear, 1 - reach);
    const middle = a.clone().add(b).multiplyScalar(0.5).lerp(shape.joint.ball, 0.34);
    const ball = shape.joint.ball.clone();
    if (roomToCoilover(ball, middle, shape) < 12) continue;
    const normal = a.clone().sub(ball).cross(b.clone().sub(ball));
    if (normal.lengthSq() < 1) return;
    const at = axisFrame(ball, normal, shape.axis);
    addPlateThrough(piece(assembly, 'arm'), at, [ball, a, middle, b], 0.16 * shape.tube);
    return;
  }
}

function addCup(assembly: Assembly, { joint, tube }: ArmShape): void {
  const at = axisFrame(joint.ball, joint.housing);
  const outer = Math.max(joint.size + 6, 0.56 * tube + 4);
  const profile = ringProfile(joint.size * 0.7, outer, -0.62 * joint.size, 0.3 * joint.size, 3);
  revolve(piece(assembly, 'arm'), at, profile, { segments: 30 });
  addHousing(assembly, joint, joint.ball, joint.housing);
}

/** The cross tube that carries a coilover's eye (or both eyes of its fork), with ears and bolt. */
export function addCoiloverMount(
  assembly: Assembly,
  model: Model,
  shape: Pick<ArmShape, 'legs' | 'axis' | 'tube'>,
): void {
  const bottom = toVector(model.coilover!.bottom);
  const half = mountHalfWidth(model);
  const paint = piece(assembly, 'arm');
  const radius = Math.max(9, 0.26 * shape.tube);
  for (const [leg, sense] of [
    [shape.legs[0], 1],
    [shape.legs[1], -1],
  ] as const) {
    const ear = bottom.clone().addScaledVector(shape.axis, sense * (half + 2));
    const outer = ear.clone().addScaledVector(shape.axis, sense * 7);
    addPin(paint, ear, outer, DAMPER.eye + 1, 26);
    addTube(paint, [outer, nearestAlong(leg, outer)], radius);
    const head = bottom.clone().addScaledVector(shape.axis, sense * (half + 9));
    addHex(
      piece(assembly, 'steel'),
      axisFrame(head, shape.axis.clone().multiplyScalar(sense)),
      13,
      0,
      8,
    );
  }
  const ends = [-half - 4, half + 4].map((s) => bottom.clone().addScaledVector(shape.axis, s)) as [
    Vector3,
    Vector3,
  ];
  addPin(piece(assembly, 'steel'), ends[0], ends[1], 8, 14);
}

/** A bracket from the nearer leg to a carried joint. */
function addTab(assembly: Assembly, point: Vector3, { legs, tube }: ArmShape): void {
  const feet = legs.map((leg) => nearestAlong(leg, point)) as [Vector3, Vector3];
  const foot = feet[0].distanceTo(point) < feet[1].distanceTo(point) ? feet[0] : feet[1];
  addTube(piece(assembly, 'arm'), [foot, point], Math.min(9, 0.3 * tube));
  addBall(piece(assembly, 'arm'), point, Math.min(10, 0.32 * tube));
}

export function buildArm(model: Model, name: ArmName): Assembly {
  const shape = armShape(model, name);
  const assembly: Assembly = {};
  for (const leg of shape.legs) {
    addTube(piece(assembly, 'arm'), leg, shape.tube / 2, { segments: 22, bend: shape.tube });
    addBush(assembly, leg[0]!, shape);
  }
  addBall(piece(assembly, 'arm'), shape.joint.ball, shape.tube / 2, 22);
  addBrace(assembly, shape);
  addGusset(assembly, shape);
  addCup(assembly, shape);
  const { coilover, antiRollBar, strap } = model;
  if (coilover !== undefined && carrier(coilover) === name)
    addCoiloverMount(assembly, model, shape);
  if (antiRollBar !== undefined && carrier(antiRollBar) === name)
    addTab(assembly, toVector(antiRollBar.link), shape);
  if (strap !== undefined && carrier(strap) === name)
    addTab(assembly, toVector(strap.bottom), shape);
  return assembly;
}
