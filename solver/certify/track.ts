/** The break points of a chain over a cell, from where they are in the pose at its centre and what carries them. */
import type { Corner } from '../corner.ts';
import { Slot } from '../linkage/slots.ts';
import type { Vector3 } from '../math/vec3.ts';
import { carrier } from '../model/defaults.ts';
import type { Carrier } from '../model/model.ts';
import type { Cell } from './cells.ts';
import { leverEndOver, NOWHERE } from './leverEnd.ts';
import { type Motion, turnedBack } from './motion.ts';
import { type Frame, rodAxesOver, seenCarried, seenGround, seenMoving } from './seen.ts';
import { POINT } from './separation.ts';
import { scaled, sum, type TaylorVector, type Triple, tripleAt } from './taylor.ts';

/** What carries a chain: a rigid body, or the line between two moving points of a part with two ends. */
export type TrackBody = Frame | 'tieRod' | 'coilover' | 'link' | 'shaft';

/** A cell that is enclosed. */
type Enclosed = Cell & { readonly motion: Motion };

/** The two ends of a part with two ends, as they are seen, and where they are in the centre's pose. */
interface Ends {
  readonly first: TaylorVector;
  readonly last: TaylorVector;
  readonly from: Triple;
  readonly to: Triple;
}

function tripleOf([x, y, z]: Vector3): Triple {
  return { x, y, z };
}

function coiloverEnds(corner: Corner, cell: Enclosed, frame: Frame): Ends | null {
  const { coilover, model } = corner;
  if (coilover === null || model.coilover === undefined) return null;
  const from = tripleOf(coilover.top);
  const to = tripleAt(cell.pose, Slot.damperBottom);
  return {
    first: seenGround(cell.motion, from, frame),
    last: seenCarried(cell, carrier(model.coilover), to, frame),
    from,
    to,
  };
}

function shaftEnds({ shaft }: Corner, cell: Enclosed, frame: Frame): Ends | null {
  if (shaft === null) return null;
  const from = tripleOf(shaft.inner);
  const to = tripleAt(cell.pose, Slot.shaftOuter);
  return {
    first: seenGround(cell.motion, from, frame),
    last: seenCarried(cell, 'knuckle', to, frame),
    from,
    to,
  };
}

const LEVER = { angle: Slot.leverCos, end: Slot.leverEnd, room: Slot.leverRoom };

function linkEnds(corner: Corner, cell: Enclosed, frame: Frame): Ends | typeof NOWHERE | null {
  const { lever, model } = corner;
  if (lever === null || model.antiRollBar === undefined) return null;
  const on = carrier(model.antiRollBar);
  const to = tripleAt(cell.pose, Slot.link);
  const end = leverEndOver(lever.circle, cell.pose, LEVER, seenCarried(cell, on, to, 'ground'));
  if (end === null || end === NOWHERE) return end;
  return {
    first: seenMoving(cell.motion, end, frame),
    last: seenCarried(cell, on, to, frame),
    from: tripleAt(cell.pose, Slot.leverEnd),
    to,
  };
}

function rodEnds(cell: Enclosed, frame: Frame): Ends {
  const from = tripleAt(cell.pose, Slot.outer);
  return {
    first: seenCarried(cell, 'knuckle', from, frame),
    last: seenMoving(cell.motion, cell.motion.inner, frame),
    from,
    to: tripleAt(cell.pose, Slot.inner),
  };
}

/** Share of the way from one end to the other at which the foot of a point lies. */
function shareOf({ from, to }: Ends, x: number, y: number, z: number): number {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const dz = to.z - from.z;
  const squared = dx * dx + dy * dy + dz * dz;
  return ((x - from.x) * dx + (y - from.y) * dy + (z - from.z) * dz) / squared;
}

/** Offsets from the line between the rod's joints below this count as none, mm. */
const STRAIGHT = 1e-9;

/** Stud axis of the tie rod in the centre's pose. */
function studAt({ joints }: Corner, pose: Float64Array): Triple {
  const { stud } = joints.rod;
  const at = (i: number): number =>
    stud[0]! * pose[Slot.frame + i]! +
    stud[1]! * pose[Slot.frame + 3 + i]! +
    stud[2]! * pose[Slot.frame + 6 + i]!;
  return { x: at(0), y: at(1), z: at(2) };
}

function componentAt(pose: Float64Array, axis: number, offset: Triple): number {
  return pose[axis]! * offset.x + pose[axis + 1]! * offset.y + pose[axis + 2]! * offset.z;
}

/** A point of the tie rod: on the line between its joints, and aside of it where the rod is bent. */
function rodPoint(
  corner: Corner,
  cell: Enclosed,
  frame: Frame,
  ends: Ends,
  point: Triple,
): TaylorVector | null {
  const share = shareOf(ends, point.x, point.y, point.z);
  const onLine = mixed(ends, share);
  const offset = {
    x: point.x - ends.from.x,
    y: point.y - ends.from.y,
    z: point.z - ends.from.z,
  };
  const second = componentAt(cell.pose, Slot.rodFrame + 3, offset);
  const third = componentAt(cell.pose, Slot.rodFrame + 6, offset);
  if (Math.abs(second) < STRAIGHT && Math.abs(third) < STRAIGHT) return onLine;
  const axes = rodAxesOver(cell.motion, studAt(corner, cell.pose));
  if (axes === null) return null;
  const aside = sum(scaled(second, axes[1]), scaled(third, axes[2]));
  return sum(onLine, frame === 'ground' ? aside : turnedBack(cell.motion[frame], aside));
}

function mixed({ first, last }: Ends, share: number): TaylorVector {
  return sum(scaled(1 - share, first), scaled(share, last));
}

const NO_POINTS = new Float64Array(0);

/** A way to see any point of a body in one cell; null where it cannot be told. */
type Sight = (point: Triple) => TaylorVector | null;

function sightOf(
  corner: Corner,
  body: TrackBody,
  cell: Enclosed,
  frame: Frame,
): Sight | typeof NOWHERE | null {
  if (body === 'ground') return (point) => seenGround(cell.motion, point, frame);
  if (body === 'tieRod') {
    const ends = rodEnds(cell, frame);
    return (point) => rodPoint(corner, cell, frame, ends, point);
  }
  if (body === 'lowerArm' || body === 'upperArm' || body === 'knuckle') {
    const on: Carrier = body;
    return (point) => seenCarried(cell, on, point, frame);
  }
  const ends = {
    coilover: () => coiloverEnds(corner, cell, frame),
    shaft: () => shaftEnds(corner, cell, frame),
    link: () => linkEnds(corner, cell, frame),
  }[body]();
  if (ends === null || ends === NOWHERE) return ends;
  return ({ x, y, z }) => mixed(ends, shareOf(ends, x, y, z));
}

/**
 * Encloses the break points of a chain over a cell as seen from a frame; `points` holds where they are in the centre's
 * pose, vehicle axes, three numbers each. Null where that cannot be told, empty where the part has no place.
 */
export function trackOver(
  corner: Corner,
  body: TrackBody,
  points: Float64Array,
  cell: Cell,
  frame: Frame,
): Float64Array | null {
  const { motion } = cell;
  if (motion === null) return null;
  const sight = sightOf(corner, body, { ...cell, motion }, frame);
  if (sight === null) return null;
  if (sight === NOWHERE) return NO_POINTS;
  const track = new Float64Array((points.length / 3) * POINT);
  for (let i = 0; 3 * i < points.length; i += 1) {
    const seen = sight(tripleAt(points, 3 * i));
    if (seen === null) return null;
    const { x, y, z, ax, ay, az, bx, by, bz, rest } = seen;
    track.set([x, y, z, ax, ay, az, bx, by, bz, rest], i * POINT);
  }
  return track;
}

/** The rigid body a chain is part of; a part with two ends is part of none. */
function rigidBody(body: TrackBody): Frame | null {
  return body === 'tieRod' || body === 'coilover' || body === 'link' || body === 'shaft'
    ? null
    : body;
}

/** The frame from which two chains move least against each other. */
export function frameOf(first: TrackBody, second: TrackBody): Frame {
  const a = rigidBody(first);
  const b = rigidBody(second);
  // The knuckle turns most: seen from it others move more than it does seen from them.
  if (a !== null && a !== 'knuckle') return a;
  if (b !== null && b !== 'knuckle') return b;
  return a ?? b ?? 'ground';
}
