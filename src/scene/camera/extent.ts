/** How much room a corner takes: what the viewpoints frame, over its whole travel, and the height of its ground. */
import {
  type Corner,
  createPose,
  placeParts,
  Slot,
  solve,
  tyreSections,
} from '../../../solver/index.ts';
import { rackRange, rideTravel } from '../../../solver/model/defaults.ts';
import { travelRange } from '../../state/inputs.ts';
import { hardPoints } from '../../state/points.ts';
import { barShape } from '../geometry/antiRollBar.ts';
import { rackShape } from '../geometry/rack.ts';

/** Half the width and the radius of the tyre as a drum, mm. */
export interface Drum {
  readonly half: number;
  readonly radius: number;
}

export function tyreDrum(corner: Corner): Drum {
  let half = 0;
  let radius = 0;
  for (const { line } of tyreSections(corner.model)) {
    for (let at = 0; at + 1 < line.length; at += 2) {
      half = Math.max(half, Math.abs(line[at]!));
      radius = Math.max(radius, line[at + 1]!);
    }
  }
  return { half, radius };
}

/** Box in vehicle axes, mm: least and greatest corner. */
export interface Box {
  readonly min: readonly [number, number, number];
  readonly max: readonly [number, number, number];
}

export interface Extent {
  /** Of all the points. */
  readonly box: Box;
  /** What a picture of the corner must show, three numbers a point: `still`, and what moves over the whole travel. */
  readonly points: Float64Array;
  /** What belongs to the corner and stands on the body, and the design pose's hard points. */
  readonly still: Float64Array;
  /** Height of the contact point in the set pose (of the last reachable pose towards it), mm. */
  readonly ground: number;
  readonly drum: Drum;
}

/** Points around each edge of the tyre's drum. */
const AROUND = 24;
/** Places in a pose of what stands out beside the tyre. */
const MOVING = [Slot.lower, Slot.upper, Slot.outer, Slot.inner] as const;
/** Points that `writeMoving` writes. */
export const MOVING_POINTS = 2 * AROUND + MOVING.length;

/** Writes the tyre's two edges and the moving joints of a pose into `out`, from a place on. Allocates nothing. */
export function writeMoving(
  out: Float64Array,
  from: number,
  pose: Float64Array,
  { half, radius }: Drum,
): void {
  const a = Slot.hubAxis;
  const u = Slot.wheelUp;
  let place = from;
  for (let step = 0; step < AROUND; step += 1) {
    const c = radius * Math.cos((2 * Math.PI * step) / AROUND);
    const s = radius * Math.sin((2 * Math.PI * step) / AROUND);
    for (let edge = 0; edge < 2; edge += 1) {
      const side = edge === 0 ? -half : half;
      for (let i = 0; i < 3; i += 1) {
        const j = (i + 1) % 3;
        const k = (i + 2) % 3;
        // The third direction of the wheel: its axis × its up.
        const v = pose[a + j]! * pose[u + k]! - pose[a + k]! * pose[u + j]!;
        out[place] = pose[Slot.centre + i]! + side * pose[a + i]! + c * pose[u + i]! + s * v;
        place += 1;
      }
    }
  }
  for (const slot of MOVING) {
    for (let i = 0; i < 3; i += 1) {
      out[place] = pose[slot + i]!;
      place += 1;
    }
  }
}

function boxOf(points: Float64Array): Box {
  const min: [number, number, number] = [points[0]!, points[1]!, points[2]!];
  const max: [number, number, number] = [...min];
  points.forEach((part, place) => {
    const i = place % 3;
    min[i] = Math.min(min[i]!, part);
    max[i] = Math.max(max[i]!, part);
  });
  return { min, max };
}

/** How far two extents' boxes lie apart at most, as a part of the larger side of the first. */
export function boxChange({ box: one }: Extent, { box: other }: Extent): number {
  let side = 0;
  let apart = 0;
  for (let i = 0; i < 3; i += 1) {
    side = Math.max(side, one.max[i]! - one.min[i]!);
    apart = Math.max(
      apart,
      Math.abs(one.min[i]! - other.min[i]!),
      Math.abs(one.max[i]! - other.max[i]!),
    );
  }
  return apart / side;
}

/** The hard points on this side of the vehicle but the surroundings', and where rack and bar are cut. */
function stillPoints(corner: Corner): Float64Array {
  const { model } = corner;
  const list: number[] = [];
  for (const point of hardPoints(model)) {
    if (point.group === 'obstacles' || point.path.startsWith('antiRollBar.axis')) continue;
    list.push(...point.get(model));
  }
  list.push(...rackShape(model).middle.toArray());
  const bar = barShape(model);
  if (bar !== null) list.push(...bar.end.toArray(), ...bar.middle.toArray());
  return Float64Array.from(list);
}

/** The poses whose room is framed: travel and rack, the set pose first. */
function framedPoses({ model }: Corner): readonly (readonly [number, number])[] {
  const ride = rideTravel(model.travel);
  const [droop, bump] = travelRange(model);
  const [right, left] = rackRange(model.steering);
  return [
    [ride, 0],
    [droop, 0],
    [bump, 0],
    [ride, right],
    [ride, left],
  ];
}

/** The room of the whole swept travel, and of both locks at the set pose. */
export function extentOf(corner: Corner): Extent {
  const pose = createPose();
  const drum = tyreDrum(corner);
  const still = stillPoints(corner);
  const poses = framedPoses(corner);
  const points = new Float64Array(still.length + poses.length * 3 * MOVING_POINTS);
  points.set(still);
  let ground = Number.NaN;
  poses.forEach(([travel, rack], place) => {
    solve(corner, pose, travel, rack);
    placeParts(corner, pose.data);
    if (place === 0) ground = pose.data[Slot.contact + 2]!;
    writeMoving(points, still.length + place * 3 * MOVING_POINTS, pose.data, drum);
  });
  return { box: boxOf(points), points, still, ground, drum };
}
