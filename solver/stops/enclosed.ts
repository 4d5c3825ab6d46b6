/** The quantities that limits hold, enclosed over a cell of travel × rack. Lengths mm, angles degrees. */
import type { Cell } from '../certify/cells.ts';
import { carriedPoint, carriedVector, type Motion } from '../certify/motion.ts';
import { rodAxesOver } from '../certify/seen.ts';
import {
  cross,
  difference,
  dot,
  inverse,
  plus,
  product,
  root,
  scaled,
  still,
  sum,
  swingOf,
  type Taylor,
  type TaylorVector,
  type Triple,
  times,
  tripleAt,
} from '../certify/taylor.ts';
import type { Corner, Damper, Joint, Lever, Shaft } from '../corner.ts';
import { CIRCLE_AXIS, RADIUS, SPHERE } from '../linkage/circle.ts';
import { Fixed, Slot } from '../linkage/slots.ts';
import { carrier } from '../model/defaults.ts';
import type { Carrier, Vector3 } from '../model/model.ts';
import { degrees } from '../units.ts';
import type { QuantityKey } from './quantity.ts';

/** Between which values a quantity stays. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** A cell of which the motion is enclosed. */
export type EnclosedCell = Cell & { readonly motion: Motion };

function triple([x, y, z]: Vector3): Triple {
  return { x, y, z };
}

function intervalOf(value: Taylor | null): Interval | null {
  if (value === null) return null;
  const swing = swingOf(value);
  return { low: value.mid - swing, high: value.mid + swing };
}

function lengthOver(from: Vector3, to: TaylorVector): Taylor | null {
  const line = difference(to, still(triple(from)));
  return root(dot(line, line));
}

function damperOver(
  damper: Damper,
  on: Carrier,
  cell: EnclosedCell,
  slot: number,
): Interval | null {
  return intervalOf(
    lengthOver(damper.top, carriedPoint(cell.motion[on], tripleAt(cell.pose, slot))),
  );
}

/** cos² up to which, an angle of 45°, the angle is read from its cosine; beyond from its sine. */
const HALF = 0.5;

function arc(value: number): number {
  return degrees(Math.acos(Math.min(1, Math.max(0, value))));
}

function arcOfSquare(value: number): number {
  return degrees(Math.asin(Math.sqrt(Math.min(1, Math.max(0, value)))));
}

/** Angle between two lines along unit vectors: by its cosine where that is steep, else by the square of its sine. */
function angleOver(v: TaylorVector, w: TaylorVector): Interval {
  const cosine = dot(v, w);
  const swing = swingOf(cosine);
  if (cosine.mid * cosine.mid < HALF) {
    const size = Math.abs(cosine.mid);
    return { low: arc(size + swing), high: arc(Math.max(0, size - swing)) };
  }
  const across = cross(v, w);
  const sine = dot(across, across);
  return {
    low: arcOfSquare(sine.mid - swingOf(sine)),
    high: arcOfSquare(sine.mid + swingOf(sine)),
  };
}

/** A direction by its components in a frame of the centre's pose, as it stands there. */
function directionAt(components: Float64Array, pose: Float64Array, frame: number): Triple {
  const at = (i: number): number =>
    components[0]! * pose[frame + i]! +
    components[1]! * pose[frame + 3 + i]! +
    components[2]! * pose[frame + 6 + i]!;
  return { x: at(0), y: at(1), z: at(2) };
}

function ballJointOver(
  joint: Joint,
  cell: EnclosedCell,
  arm: 'lowerArm' | 'upperArm',
  frame: number,
): Interval {
  const { motion, pose } = cell;
  const stud = carriedVector(motion.knuckle, directionAt(joint.stud, pose, Slot.frame));
  return angleOver(stud, carriedVector(motion[arm], directionAt(joint.housing, pose, frame)));
}

function rodOuterOver(corner: Corner, { motion, pose }: EnclosedCell): Interval | null {
  const { stud, housing } = corner.joints.rod;
  const studAxis = directionAt(stud, pose, Slot.frame);
  const axes = rodAxesOver(motion, studAxis);
  if (axes === null) return null;
  const seat = sum(
    sum(scaled(housing[0]!, axes[0]), scaled(housing[1]!, axes[1])),
    scaled(housing[2]!, axes[2]),
  );
  return angleOver(carriedVector(motion.knuckle, studAxis), seat);
}

/** The unit vector along a vector; null where that may be 0. */
function unitOver(v: TaylorVector): TaylorVector | null {
  const length = root(dot(v, v));
  const shrink = length === null ? null : inverse(length);
  return shrink === null ? null : times(shrink, v);
}

function lineAngleOver(line: TaylorVector, axis: TaylorVector): Interval | null {
  const along = unitOver(line);
  return along === null ? null : angleOver(along, axis);
}

function rodInnerOver({ linkage }: Corner, { motion }: EnclosedCell): Interval | null {
  const direction = still(tripleAt(linkage.fixed, Fixed.rackDirection));
  return lineAngleOver(difference(motion.outer, motion.inner), direction);
}

function shaftLine(shaft: Shaft, { motion, pose }: EnclosedCell): TaylorVector {
  const outer = carriedPoint(motion.knuckle, tripleAt(pose, Slot.shaftOuter));
  return difference(outer, still(triple(shaft.inner)));
}

function plungeOver(shaft: Shaft, cell: EnclosedCell): Interval | null {
  const line = shaftLine(shaft, cell);
  const length = intervalOf(root(dot(line, line)));
  if (length === null) return null;
  return { low: shaft.designLength - length.high, high: shaft.designLength - length.low };
}

function shaftOver(shaft: Shaft, key: QuantityKey, cell: EnclosedCell): Interval | null {
  if (key === 'plunge') return plungeOver(shaft, cell);
  const line = shaftLine(shaft, cell);
  if (key === 'innerAngle') return lineAngleOver(line, still(triple(shaft.innerAxis)));
  return lineAngleOver(line, carriedVector(cell.motion.knuckle, tripleAt(cell.pose, Slot.hubAxis)));
}

/** √(h² + (d ± ρ)²) over the cell. */
function reachOver(along: Taylor, off: Taylor, radius: number): Interval | null {
  const aside = plus(off, { mid: radius, a: 0, b: 0, rest: 0 });
  return intervalOf(root(plus(product(along, along), product(aside, aside))));
}

function linkOver({ circle }: Lever, on: Carrier, cell: EnclosedCell): Interval | null {
  const link = carriedPoint(cell.motion[on], tripleAt(cell.pose, Slot.link));
  const from = difference(link, still(tripleAt(circle, 0)));
  const axis = still(tripleAt(circle, CIRCLE_AXIS));
  const along = dot(from, axis);
  const across = difference(from, times(along, axis));
  const off = root(dot(across, across));
  if (off === null) return null;
  const near = reachOver(along, off, -circle[RADIUS]!);
  const far = reachOver(along, off, circle[RADIUS]!);
  if (near === null || far === null) return null;
  const length = Math.sqrt(circle[SPHERE]!);
  return {
    low: Math.min(length - near.high, far.low - length),
    high: Math.min(length - near.low, far.high - length),
  };
}

function partOver(corner: Corner, key: QuantityKey, cell: EnclosedCell): Interval | null {
  const { coilover, lever, model, shaft, strap } = corner;
  if (key === 'damperLength' && coilover !== null && model.coilover !== undefined) {
    return damperOver(coilover, carrier(model.coilover), cell, Slot.damperBottom);
  }
  if (key === 'strapLength' && strap !== null && model.strap !== undefined) {
    return damperOver(strap, carrier(model.strap), cell, Slot.strapBottom);
  }
  if (key === 'dropLink' && lever !== null && model.antiRollBar !== undefined) {
    return linkOver(lever, carrier(model.antiRollBar), cell);
  }
  return shaft === null ? null : shaftOver(shaft, key, cell);
}

/** Encloses a quantity over a cell; null where that cannot be told, or the corner lacks the part. */
export function quantityOver(
  corner: Corner,
  key: QuantityKey,
  cell: EnclosedCell,
): Interval | null {
  const { half } = cell;
  switch (key) {
    case 'travel':
      return { low: cell.travel - half.travel, high: cell.travel + half.travel };
    case 'rack':
      return { low: cell.rack - half.rack, high: cell.rack + half.rack };
    case 'lowerBallJoint':
      return ballJointOver(corner.joints.lower, cell, 'lowerArm', Slot.lowerFrame);
    case 'upperBallJoint':
      return ballJointOver(corner.joints.upper, cell, 'upperArm', Slot.upperFrame);
    case 'tieRodOuter':
      return rodOuterOver(corner, cell);
    case 'tieRodInner':
      return rodInnerOver(corner, cell);
    default:
      return partOver(corner, key, cell);
  }
}
