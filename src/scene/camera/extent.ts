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
import { hardPoints } from '../../state/points.ts';
import type { Box } from './framing.ts';

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

export interface Extent {
  readonly box: Box;
  /** Height of the contact point in the set pose (of the last reachable pose towards it), mm. */
  readonly ground: number;
  readonly drum: Drum;
}

/** What is framed: every hard point on this side of the vehicle but the surroundings, and the tyre; down to the ground. */
export function extentOf(corner: Corner): Extent {
  const { model } = corner;
  const pose = createPose();
  solve(corner, pose, rideTravel(model.travel), 0);
  placeParts(corner, pose.data);
  const drum = tyreDrum(corner);
  const min: [number, number, number] = [0, 0, 0];
  const max: [number, number, number] = [0, 0, 0];
  for (let i = 0; i < 3; i += 1) {
    const centre = pose.data[Slot.centre + i]!;
    const a = Math.min(1, Math.abs(pose.data[Slot.hubAxis + i]!));
    const reach = drum.half * a + drum.radius * Math.sqrt(1 - a * a);
    min[i] = centre - reach;
    max[i] = centre + reach;
  }
  const ground = pose.data[Slot.contact + 2]!;
  for (const point of hardPoints(model)) {
    if (point.group === 'obstacles' || point.path === 'antiRollBar.axis.1') continue;
    const at = point.get(model);
    for (let i = 0; i < 3; i += 1) {
      min[i] = Math.min(min[i]!, at[i]!);
      max[i] = Math.max(max[i]!, at[i]!);
    }
  }
  min[2] = Math.min(ground, min[2]);
  return { box: { min, max }, ground, drum };
}
