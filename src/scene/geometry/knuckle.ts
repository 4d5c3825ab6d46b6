/** The knuckle in the design pose, vehicle axes: one forging between its joints and the bearing carrier. */
import { Vector3 } from 'three';
import type { Model, Tube } from '../../../solver/index.ts';
import { designHubAxis } from '../../../solver/linkage/frames.ts';
import { carrier } from '../../../solver/model/defaults.ts';
import { BELL, CARRIER, CLAMP } from '../proportions.ts';
import { addCoiloverMount } from './arm.ts';
import {
  addSeat,
  carrierCentre,
  JOINT_NAMES,
  type JointName,
  type JointShape,
  jointShapes,
  seatCentre,
} from './joints.ts';
import { nearestAlong } from './path.ts';
import { addBall, pinProfile, revolve, ringProfile } from './revolve.ts';
import { type Assembly, axisFrame, piece, toVector } from './solid.ts';
import { addRoundedTube, addTube, curve, sweep } from './sweep.ts';

interface Spine {
  readonly centre: Vector3;
  readonly axis: Vector3;
}

function spineOf(model: Model): Spine {
  return { centre: carrierCentre(model), axis: toVector(designHubAxis(model)) };
}

/** Point on the carrier's rim in the direction of `from`, a little within the metal, and the way out of it there. */
function rimTowards(from: Vector3, { centre, axis }: Spine): { point: Vector3; out: Vector3 } {
  const out = from.clone().sub(centre);
  out.addScaledVector(axis, -out.dot(axis));
  if (out.lengthSq() < 1) out.set(0, 0, 1);
  out.normalize();
  return { point: centre.clone().addScaledVector(out, CARRIER.outer - 9), out };
}

/** Half axes of a limb at its boss and at the carrier: across (in the wheel's plane) and through. */
const LIMBS: Record<JointName, readonly [number, number, number, number]> = {
  lower: [24, 22, 38, 25],
  upper: [17, 14, 34, 22],
  rod: [13, 12, 23, 18],
};

/** A tapered limb from a joint's boss to the carrier, leaving along its own way and arriving square to the rim. */
function addLimb(assembly: Assembly, name: JointName, joint: JointShape, spine: Spine): Vector3[] {
  const from = seatCentre(joint);
  const { point, out } = rimTowards(from, spine);
  const span = from.distanceTo(point);
  const leave = name === 'rod' ? point.clone().sub(from).normalize() : joint.stud.clone();
  const path = curve(
    from,
    leave.multiplyScalar(0.42 * span),
    point,
    out.clone().multiplyScalar(-0.55 * span),
    14,
  );
  const [a0, b0, a1, b1] = LIMBS[name];
  // A little waist makes it read as forged; the section grows towards the carrier as its load does.
  const size = (share: number): [number, number] => {
    const grow = share * share * (3 - 2 * share);
    const waist = 1 - 0.14 * Math.sin(Math.PI * share);
    return [(a0 + (a1 - a0) * grow) * waist, (b0 + (b1 - b0) * grow) * waist];
  };
  const hint = new Vector3().crossVectors(spine.axis, out);
  sweep(piece(assembly, 'knuckle'), path, size, { segments: 22, hint });
  return path;
}

function addCarrier(assembly: Assembly, { centre, axis }: Spine): void {
  const at = axisFrame(centre, axis);
  const half = CARRIER.width / 2;
  revolve(
    piece(assembly, 'knuckle'),
    at,
    [
      [-half, CARRIER.bore],
      [-half, CARRIER.outer - 7],
      [-half + 5, CARRIER.outer - 2],
      [-half + 14, CARRIER.outer],
      [half - 8, CARRIER.outer],
      [half, CARRIER.outer - 6],
      [half, CARRIER.bore],
      [-half, CARRIER.bore],
    ],
    { segments: 40 },
  );
  revolve(piece(assembly, 'steel'), at, ringProfile(30, CARRIER.bore, -half + 8, half + 3, 2), {
    segments: 32,
  });
}

/** The outer joint's bell with its stub axle. */
function addBell(assembly: Assembly, model: Model, { centre, axis }: Spine): void {
  if (model.halfShaft === undefined) {
    revolve(
      piece(assembly, 'dark'),
      axisFrame(centre, axis),
      pinProfile(30, -CARRIER.width / 2 + 2, 20),
      { segments: 28 },
    );
    return;
  }
  const outer = toVector(model.halfShaft.outer);
  const reach = Math.max(BELL.length + 10, centre.clone().sub(outer).dot(axis));
  revolve(
    piece(assembly, 'dark'),
    axisFrame(outer, axis),
    [
      [-BELL.mouth, BELL.radius - 7],
      [-BELL.mouth, BELL.radius],
      [-BELL.mouth + 6, BELL.radius],
      [-BELL.mouth + 6, BELL.radius + CLAMP],
      [-BELL.mouth + 13, BELL.radius + CLAMP],
      [-BELL.mouth + 13, BELL.radius],
      [-BELL.mouth + 16, BELL.radius],
      [-BELL.mouth + 20, BELL.radius - 3],
      [BELL.length * 0.55, BELL.radius - 4],
      [BELL.length * 0.9, BELL.radius * 0.62],
      [BELL.length, BELL.stub],
      [reach, BELL.stub],
    ],
    { segments: 34 },
  );
}

/** Joints whose limb a stated tube stands in for: those near one of its ends. */
function tubedJoints(
  tubes: readonly Tube[],
  joints: Record<JointName, JointShape>,
): Set<JointName> {
  const near = 60;
  const ends = tubes.flatMap(({ points }) => [toVector(points[0]!), toVector(points.at(-1)!)]);
  return new Set(
    JOINT_NAMES.filter((name) => ends.some((end) => end.distanceTo(joints[name].ball) < near)),
  );
}

/** Ties what the knuckle carries (a coilover's foot, a drop link, a strap) to its nearest limb. */
function addCarried(
  assembly: Assembly,
  model: Model,
  paths: readonly Vector3[][],
  spine: Spine,
): void {
  const { coilover, antiRollBar, strap } = model;
  const nearest = (point: Vector3): Vector3 => {
    const feet = [
      ...paths.map((path) => nearestAlong(path, point)),
      rimTowards(point, spine).point,
    ];
    return feet.reduce((best, foot) =>
      foot.distanceTo(point) < best.distanceTo(point) ? foot : best,
    );
  };
  const points = [
    ...(antiRollBar !== undefined && carrier(antiRollBar) === 'knuckle' ? [antiRollBar.link] : []),
    ...(strap !== undefined && carrier(strap) === 'knuckle' ? [strap.bottom] : []),
  ];
  for (const point of points.map(toVector))
    addRoundedTube(piece(assembly, 'knuckle'), [nearest(point), point], 9);
  if (coilover === undefined || carrier(coilover) !== 'knuckle') return;
  const bottom = toVector(coilover.bottom);
  const foot = nearest(bottom);
  addCoiloverMount(assembly, model, {
    legs: [
      [foot, foot],
      [foot, foot],
    ],
    axis: new Vector3(1, 0, 0),
    tube: 40,
  });
}

/** One forging; where the model states tubes, those are drawn exactly and stand in for the limbs they reach. */
export function buildKnuckle(model: Model): Assembly {
  const assembly: Assembly = {};
  const joints = jointShapes(model);
  const spine = spineOf(model);
  const tubes = model.knuckle?.tubes ?? [];
  const tubed = tubedJoints(tubes, joints);
  addCarrier(assembly, spine);
  addBell(assembly, model, spine);
  const paths: Vector3[][] = [];
  for (const name of JOINT_NAMES) {
    addSeat(assembly, joints[name]);
    if (!tubed.has(name)) paths.push(addLimb(assembly, name, joints[name], spine));
  }
  for (const { points, diameter } of tubes) {
    const path = points.map(toVector);
    addTube(piece(assembly, 'knuckle'), path, diameter / 2, { bend: diameter / 2 });
    for (const end of [path[0]!, path.at(-1)!])
      addBall(piece(assembly, 'knuckle'), end, diameter / 2);
    const feet = [path[0]!, path.at(-1)!].map((end) => end.distanceTo(spine.centre));
    const inner = feet[0]! < feet[1]! ? path[0]! : path.at(-1)!;
    addTube(piece(assembly, 'knuckle'), [inner, rimTowards(inner, spine).point], diameter / 2);
    paths.push(path);
  }
  addCarried(assembly, model, paths, spine);
  return assembly;
}
