/** How much room a corner takes at its set pose: the box the viewpoints frame, and the height of its ground. */
import {
  type Corner,
  createPose,
  placeParts,
  Slot,
  solve,
  tyreSections,
} from '../../../solver/index.ts';
import { rideTravel } from '../../../solver/model/defaults.ts';
import { travelRange } from '../../state/inputs.ts';
import { hardPoints } from '../../state/points.ts';

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
  readonly box: Box;
  /** What a picture of the corner must show, three numbers a point: hard points and the tyre's outline. */
  readonly points: Float64Array;
  /** Height of the contact point in the set pose (of the last reachable pose towards it), mm. */
  readonly ground: number;
  readonly drum: Drum;
}

/** Points around both edges of the tyre's drum. */
const AROUND = 24;

function pushTyre(points: number[], pose: Float64Array, { half, radius }: Drum): void {
  const a = Slot.hubAxis;
  const u = Slot.wheelUp;
  const at = (i: number): number => pose[i]!;
  const v = [
    at(a + 1) * at(u + 2) - at(a + 2) * at(u + 1),
    at(a + 2) * at(u) - at(a) * at(u + 2),
    at(a) * at(u + 1) - at(a + 1) * at(u),
  ];
  for (let step = 0; step < AROUND; step += 1) {
    const c = radius * Math.cos((2 * Math.PI * step) / AROUND);
    const s = radius * Math.sin((2 * Math.PI * step) / AROUND);
    for (const side of [-half, half]) {
      for (let i = 0; i < 3; i += 1) {
        points.push(at(Slot.centre + i) + side * at(a + i) + c * at(u + i) + s * v[i]!);
      }
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

/** Part of bump and droop that is framed: most of it, without making the corner small. */
const FRAMED_TRAVEL = 0.6;

/** The set pose's extent, with most of the tyre's travel: every hard point on this side of the vehicle but the surroundings, and the tyre. */
export function extentOf(corner: Corner): Extent {
  const { model } = corner;
  const pose = createPose();
  solve(corner, pose, rideTravel(model.travel), 0);
  placeParts(corner, pose.data);
  const drum = tyreDrum(corner);
  const list: number[] = [];
  pushTyre(list, pose.data, drum);
  const ground = pose.data[Slot.contact + 2]!;
  for (const travel of travelRange(model)) {
    solve(corner, pose, travel * FRAMED_TRAVEL, 0);
    placeParts(corner, pose.data);
    pushTyre(list, pose.data, drum);
  }
  for (const point of hardPoints(model)) {
    if (point.group === 'obstacles' || point.path === 'antiRollBar.axis.1') continue;
    list.push(...point.get(model));
  }
  const points = Float64Array.from(list);
  return { box: boxOf(points), points, ground, drum };
}
