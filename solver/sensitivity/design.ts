/** The design pose with every measured input as a variable: points, and what the linkage keeps constant. */
import type { Input } from '../inputs/input.ts';
import { inputsOf } from '../inputs/list.ts';
import { inputValue } from '../inputs/value.ts';
import { type Settings, settingsOf } from '../linkage/settings.ts';
import { scale, unit, type Vector3 } from '../math/vec3.ts';
import { camAngle, camSlot, steeringDirection } from '../model/defaults.ts';
import type { Cam, Model } from '../model/model.ts';
import { RADIANS_PER_DEGREE, radians } from '../units.ts';
import { type Jet, Jets } from './jets.ts';
import {
  constantVector,
  crossProduct,
  difference,
  dotProduct,
  type JetAxes,
  type JetVector,
  scaled,
  size,
  sum,
  times,
} from './vectors.ts';

/** A model's inputs as jets, by the keys of the model file. */
export interface DesignInputs {
  readonly model: Model;
  readonly jets: Jets;
  /** The inputs that measures depend on, in the order of the derivatives. */
  readonly inputs: readonly Input[];
  readonly point: (path: string) => JetVector;
  readonly number: (path: string) => Jet;
}

export function designInputs(model: Model): DesignInputs {
  const inputs = inputsOf(model).filter(({ isMeasured }) => isMeasured);
  const jets = new Jets(inputs.length);
  const byKey = new Map(
    inputs.map((input, place) => [input.key, jets.input(inputValue(model, input), place)]),
  );
  const number = (key: string): Jet => byKey.get(key)!;
  const point = (path: string): JetVector => [
    number(`${path}.x`),
    number(`${path}.y`),
    number(`${path}.z`),
  ];
  return { model, jets, inputs, point, number };
}

/** What the linkage keeps, with derivatives with respect to the inputs. mm. */
export interface Constants {
  /** Pivots with cams, shims applied. */
  readonly lowerPivots: readonly [JetVector, JetVector];
  readonly upperPivots: readonly [JetVector, JetVector];
  /** Squares of the eight lengths, in the order of motion.ts. */
  readonly squares: readonly Jet[];
  readonly rackOrigin: JetVector;
  readonly rackDirection: Vector3;
  readonly designHeight: Jet;
  /** Wheel centre from LB, and hub axis, by their components in the knuckle's oblique axes. */
  readonly centreAt: JetVector;
  readonly hubAt: JetVector;
}

/** The knuckle's oblique axes UB − LB, TO − LB and their cross product: as rigid as the knuckle, and polynomials in its points. */
export function knuckleAxes(
  jets: Jets,
  lower: JetVector,
  upper: JetVector,
  outer: JetVector,
): JetAxes {
  const u = difference(jets, upper, lower);
  const v = difference(jets, outer, lower);
  return [u, v, crossProduct(jets, u, v)];
}

/** Components of a vector in oblique axes u, v, w = u × v: by Gram's equations in the plane of u and v. */
export function obliquely(jets: Jets, [u, v, w]: JetAxes, a: JetVector): JetVector {
  const inverse = jets.reciprocal(dotProduct(jets, w, w));
  const [uu, uv, vv] = [dotProduct(jets, u, u), dotProduct(jets, u, v), dotProduct(jets, v, v)];
  const [au, av] = [dotProduct(jets, a, u), dotProduct(jets, a, v)];
  const first = jets.subtract(jets.multiply(au, vv), jets.multiply(av, uv));
  const second = jets.subtract(jets.multiply(av, uu), jets.multiply(au, uv));
  return [
    jets.multiply(first, inverse),
    jets.multiply(second, inverse),
    jets.multiply(dotProduct(jets, a, w), inverse),
  ];
}

/** a = [cos c·sin τ, cos c·cos τ, −sin c] */
function hubAxis({ jets, number }: DesignInputs): JetVector {
  const camber = jets.scale(number('hub.camber'), RADIANS_PER_DEGREE);
  const toe = jets.scale(number('hub.toe'), RADIANS_PER_DEGREE);
  const flat = jets.cosine(camber);
  return [
    jets.multiply(flat, jets.sine(toe)),
    jets.multiply(flat, jets.cosine(toe)),
    jets.scale(jets.sine(camber), -1),
  ];
}

/** A pivot with its settings; a cam's throw shifts it by sin(angle) along the slot. */
function pivot(
  { jets, point, number }: DesignInputs,
  path: string,
  shift: Vector3,
  cam: Cam | undefined,
): JetVector {
  const standing = sum(jets, point(path), constantVector(jets, shift));
  if (cam === undefined) return standing;
  const change = jets.subtract(
    number(path.replace('Pivot', 'Cam.throw')),
    jets.constant(cam.throw),
  );
  const slot = scale(unit(camSlot(cam)), Math.sin(radians(camAngle(cam))));
  return sum(jets, standing, times(jets, change, constantVector(jets, slot)));
}

function pivotsOf(
  design: DesignInputs,
  arm: 'lowerArm' | 'upperArm',
  front: Vector3,
  rear: Vector3,
): readonly [JetVector, JetVector] {
  const { frontCam, rearCam } = design.model[arm];
  return [
    pivot(design, `${arm}.frontPivot`, front, frontCam),
    pivot(design, `${arm}.rearPivot`, rear, rearCam),
  ];
}

/** Square of the tie rod's length, its turns applied. */
function rodSquare({ model, jets, point, number }: DesignInputs, settings: Settings): Jet {
  const designed = size(jets, difference(jets, point('tieRod.inner'), point('tieRod.outer')));
  let rod = jets.add(designed, jets.constant(settings.rod));
  const { pitch, turns } = model.tieRod;
  if (pitch !== undefined && turns !== undefined) {
    const change = jets.subtract(number('tieRod.pitch'), jets.constant(pitch));
    rod = jets.add(rod, jets.scale(change, turns));
  }
  return jets.multiply(rod, rod);
}

/** Pairs of points that keep their design distance, in the order of motion.ts; the tie rod comes last. */
const KEPT = [
  ['lowerArm.ballJoint', 'lowerArm.frontPivot'],
  ['lowerArm.ballJoint', 'lowerArm.rearPivot'],
  ['upperArm.ballJoint', 'upperArm.frontPivot'],
  ['upperArm.ballJoint', 'upperArm.rearPivot'],
  ['upperArm.ballJoint', 'lowerArm.ballJoint'],
  ['tieRod.outer', 'lowerArm.ballJoint'],
  ['tieRod.outer', 'upperArm.ballJoint'],
] as const;

export function constantsOf(design: DesignInputs): Constants {
  const { model, jets, point, number } = design;
  const settings = settingsOf(model);
  const lower = point('lowerArm.ballJoint');
  const axes = knuckleAxes(jets, lower, point('upperArm.ballJoint'), point('tieRod.outer'));
  const hub = hubAxis(design);
  const out = jets.subtract(number('wheel.spacer'), number('wheel.offset'));
  const centre = sum(jets, point('hub.face'), times(jets, out, hub));
  const squares = KEPT.map(([a, b]) => {
    const between = difference(jets, point(a), point(b));
    return dotProduct(jets, between, between);
  });
  return {
    lowerPivots: pivotsOf(design, 'lowerArm', settings.lowerFront, settings.lowerRear),
    upperPivots: pivotsOf(design, 'upperArm', settings.upperFront, settings.upperRear),
    squares: [...squares, rodSquare(design, settings)],
    rackOrigin: scaled(jets, 1, point('tieRod.inner')),
    rackDirection: unit(steeringDirection(model.steering)),
    designHeight: centre[2],
    centreAt: obliquely(jets, axes, difference(jets, centre, lower)),
    hubAt: obliquely(jets, axes, hub),
  };
}
