/**
 * Where a hard point of the design stands in a solved pose, and how a drag there leads back to the design. A point
 * keeps its place in the body that carries it, so a shift d made in the pose is the shift F₀·Fᵀ·d of the design, with
 * F₀ and F that body's frame in the design and in the pose. The bench stays where it is: the rod can be bent away from
 * the lip at full lock, where it matters.
 */
import { type Corner, type Model, type Pose, Slot, type Vector3 } from '../../../solver/index.ts';
import { type Frame, frameFrom } from '../../../solver/linkage/frames.ts';
import { subtract, unit } from '../../../solver/math/vec3.ts';
import { steeringDirection, tieRodStudAxis } from '../../../solver/model/defaults.ts';
import { turnedBox } from '../../mesh/axes.ts';
import { placingOf } from '../../mesh/placing.ts';
import { type MeshesState, meshKey } from '../../state/meshes.ts';
import type { HardPoint, PointBody } from '../../state/points.ts';

/** The body's frame in the design, or null for what does not turn. */
function designFrame(corner: Corner, body: PointBody): Frame | null {
  const { linkage, model } = corner;
  if (body === 'knuckle') return linkage.knuckle;
  if (body === 'lowerArm') return linkage.lowerArm;
  if (body === 'upperArm') return linkage.upperArm;
  if (body !== 'tieRod') return null;
  const { inner, outer } = model.tieRod;
  return frameFrom(outer, subtract(outer, inner), unit(tieRodStudAxis(model.tieRod)));
}

const PLACES: Readonly<Partial<Record<PointBody, readonly [origin: number, frame: number]>>> = {
  knuckle: [Slot.lower, Slot.frame],
  lowerArm: [Slot.lower, Slot.lowerFrame],
  upperArm: [Slot.upper, Slot.upperFrame],
  tieRod: [Slot.outer, Slot.rodFrame],
};

/** One hard point made ready for a corner: everything that no pose changes. */
export interface Carried {
  readonly point: HardPoint;
  /** The design place, mm. */
  readonly design: Vector3;
  readonly frame: Frame | null;
  /** What is added where the body does not turn: a cam's shift of its pivot, or from a mesh's origin to its middle. */
  readonly shift: Vector3;
  /** Unit direction of the rack, for the point that rides on it. */
  readonly rack: Vector3 | null;
  /** The bar's axis: a point and a unit direction, for the point that turns with it. */
  readonly bar: { readonly on: Vector3; readonly axis: Vector3 } | null;
}

function camShift(corner: Corner, path: string): Vector3 {
  const { pivots } = corner.linkage;
  const { lowerArm, upperArm } = corner.model;
  if (path === 'lowerArm.frontPivot') return subtract(pivots.lowerFront, lowerArm.frontPivot);
  if (path === 'lowerArm.rearPivot') return subtract(pivots.lowerRear, lowerArm.rearPivot);
  if (path === 'upperArm.frontPivot') return subtract(pivots.upperFront, upperArm.frontPivot);
  if (path === 'upperArm.rearPivot') return subtract(pivots.upperRear, upperArm.rearPivot);
  return [0, 0, 0];
}

/** Where a mesh obstacle is held: at its middle, which its origin may be far from. */
function meshShift(model: Model, path: string, meshes?: MeshesState): Vector3 | null {
  const [group, place, key] = path.split('.');
  if (group !== 'obstacles' || key !== 'position') return null;
  const mesh = model.obstacles?.[Number(place)];
  if (mesh?.shape !== 'mesh') return null;
  const status = meshes?.files.get(meshKey(mesh));
  if (status?.state !== 'ready') return null;
  const { min, max } = turnedBox(status.mesh.box, placingOf({ ...mesh, position: [0, 0, 0] }));
  return [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2, (min[2] + max[2]) / 2];
}

/** Makes a hard point ready to be placed in poses of this corner. */
export function carry(corner: Corner, point: HardPoint, meshes?: MeshesState): Carried {
  const { model, lever } = corner;
  const circle = lever?.circle;
  return {
    point,
    design: point.get(model),
    frame: designFrame(corner, point.body),
    shift: meshShift(model, point.path, meshes) ?? camShift(corner, point.path),
    rack: point.body === 'rack' ? unit(steeringDirection(model.steering)) : null,
    bar:
      point.body === 'antiRollBar' && circle !== undefined
        ? {
            on: [circle[0]!, circle[1]!, circle[2]!],
            axis: [circle[9]!, circle[10]!, circle[11]!],
          }
        : null,
  };
}

/** Turns v by the bar's angle about its axis: v·cos + (a × v)·sin + a(a·v)(1 − cos). */
function turn(axis: Vector3, cos: number, sin: number, v: Float64Array): void {
  const [ax, ay, az] = axis;
  const x = v[0]!;
  const y = v[1]!;
  const z = v[2]!;
  const along = (ax * x + ay * y + az * z) * (1 - cos);
  v[0] = x * cos + (ay * z - az * y) * sin + ax * along;
  v[1] = y * cos + (az * x - ax * z) * sin + ay * along;
  v[2] = z * cos + (ax * y - ay * x) * sin + az * along;
}

const _turned = new Float64Array(3);

/** Turns a design direction into the pose, in place of `out`. */
export function directionNow(
  carried: Carried,
  pose: Pose,
  from: ArrayLike<number>,
  out: Float64Array,
): void {
  const { frame, bar } = carried;
  const places = PLACES[carried.point.body];
  for (let i = 0; i < 3; i += 1) _turned[i] = from[i]!;
  if (frame !== null && places !== undefined) {
    const at = places[1];
    const [e1, e2, e3] = frame.axes;
    const a = e1[0] * _turned[0]! + e1[1] * _turned[1]! + e1[2] * _turned[2]!;
    const b = e2[0] * _turned[0]! + e2[1] * _turned[1]! + e2[2] * _turned[2]!;
    const c = e3[0] * _turned[0]! + e3[1] * _turned[1]! + e3[2] * _turned[2]!;
    for (let i = 0; i < 3; i += 1) {
      _turned[i] = a * pose.data[at + i]! + b * pose.data[at + 3 + i]! + c * pose.data[at + 6 + i]!;
    }
  } else if (bar !== null) {
    turn(bar.axis, pose.data[Slot.leverCos]!, pose.data[Slot.leverSin]!, _turned);
  }
  out.set(_turned);
}

/** Turns a direction of the pose back into the design, in place of `out`. */
export function directionBack(
  carried: Carried,
  pose: Pose,
  from: ArrayLike<number>,
  out: Float64Array,
): void {
  const { frame, bar } = carried;
  const places = PLACES[carried.point.body];
  for (let i = 0; i < 3; i += 1) _turned[i] = from[i]!;
  if (frame !== null && places !== undefined) {
    const at = places[1];
    const [e1, e2, e3] = frame.axes;
    const { data } = pose;
    const part = (k: number): number =>
      data[at + k]! * from[0]! + data[at + k + 1]! * from[1]! + data[at + k + 2]! * from[2]!;
    const a = part(0);
    const b = part(3);
    const c = part(6);
    for (let i = 0; i < 3; i += 1) _turned[i] = a * e1[i]! + b * e2[i]! + c * e3[i]!;
  } else if (bar !== null) {
    turn(bar.axis, pose.data[Slot.leverCos]!, -pose.data[Slot.leverSin]!, _turned);
  }
  out.set(_turned);
}

const _arm = new Float64Array(3);

/** Writes where the point stands in the pose, vehicle axes, mm. */
export function placeNow(carried: Carried, pose: Pose, out: Float64Array): void {
  const { design, frame, shift, rack, bar } = carried;
  const places = PLACES[carried.point.body];
  const { data } = pose;
  if (frame !== null && places !== undefined) {
    for (let i = 0; i < 3; i += 1) _arm[i] = design[i]! - frame.origin[i]!;
    directionNow(carried, pose, _arm, out);
    for (let i = 0; i < 3; i += 1) out[i]! += data[places[0] + i]!;
    return;
  }
  if (bar !== null) {
    for (let i = 0; i < 3; i += 1) _arm[i] = design[i]! - bar.on[i]!;
    directionNow(carried, pose, _arm, out);
    for (let i = 0; i < 3; i += 1) out[i]! += bar.on[i]!;
    return;
  }
  for (let i = 0; i < 3; i += 1) {
    out[i] = design[i]! + shift[i]! + (rack === null ? 0 : rack[i]! * data[Slot.rack]!);
  }
}
