/** Places and measures what rides on the linkage: wheel, coilover, strap, anti-roll bar, half-shaft, tie rod. */
import type { Corner, Damper, Lever } from '../corner.ts';
import { placeFrames, placeRodFrame, placeSeat, placeSpins } from '../linkage/bodies.ts';
import { circleMeetsSphere } from '../linkage/circle.ts';
import { poseRates } from '../linkage/rates.ts';
import { Slot } from '../linkage/slots.ts';

/** u = unit(z − a·a_z), C = W − u·loadedRadius. */
function placeContact(corner: Corner, pose: Float64Array): void {
  const x = pose[Slot.hubAxis]!;
  const y = pose[Slot.hubAxis + 1]!;
  const z = pose[Slot.hubAxis + 2]!;
  const flat = Math.sqrt(1 - z * z);
  pose[Slot.wheelUp] = (-x * z) / flat;
  pose[Slot.wheelUp + 1] = (-y * z) / flat;
  pose[Slot.wheelUp + 2] = flat;
  for (let i = 0; i < 3; i += 1) {
    pose[Slot.contact + i] = pose[Slot.centre + i]! - corner.loadedRadius * pose[Slot.wheelUp + i]!;
  }
}

/** Lever end on its circle at the drop link's length from the carried link; its room goes negative out of reach. */
function placeLever(lever: Lever, pose: Float64Array): void {
  placeSeat(lever.seat.at, lever.seat.body, pose, Slot.link);
  circleMeetsSphere(lever.circle, 0, pose, Slot.link, Slot.leverEnd, Slot.leverCos, Slot.leverRoom);
}

/** Places every carried point of a solved pose; no derivatives needed. */
export function placeParts(corner: Corner, pose: Float64Array): void {
  placeFrames(corner.linkage.fixed, pose);
  placeRodFrame(corner.joints.rod.stud, pose);
  placeContact(corner, pose);
  const { coilover, strap, lever, shaft } = corner;
  if (coilover !== null) placeSeat(coilover.seat.at, coilover.seat.body, pose, Slot.damperBottom);
  if (strap !== null) placeSeat(strap.seat.at, strap.seat.body, pose, Slot.strapBottom);
  if (lever !== null) placeLever(lever, pose);
  if (shaft !== null) placeSeat(shaft.seat.at, shaft.seat.body, pose, Slot.shaftOuter);
}

/** Places parts, and writes first derivatives and the arms' spins: what every measure needs. */
export function placeWithRates(corner: Corner, pose: Float64Array): void {
  poseRates(corner.linkage.fixed, pose);
  placeParts(corner, pose);
  placeSpins(pose);
}

/** Writes |top − bottom|, the bottom read from the pose buffer, mm. */
export function measureLength(
  damper: Damper,
  pose: Float64Array,
  bottom: number,
  out: Float64Array,
  to: number,
): void {
  const x = pose[bottom]! - damper.top[0];
  const y = pose[bottom + 1]! - damper.top[1];
  const z = pose[bottom + 2]! - damper.top[2];
  out[to] = Math.sqrt(x * x + y * y + z * z);
}

/** Number of points of the tie rod's centreline: both joints and the bends. */
export function rodPointCount(corner: Corner): number {
  return corner.rodBends.length / 3 + 2;
}

/** Writes the tie rod's centreline, inner joint first, three numbers a point, into `out`; needs the rod's frame. */
export function placeRod(corner: Corner, pose: Float64Array, out: Float64Array): void {
  const { rodBends } = corner;
  const f = Slot.rodFrame;
  const last = rodBends.length + 3;
  for (let i = 0; i < 3; i += 1) {
    out[i] = pose[Slot.inner + i]!;
    out[last + i] = pose[Slot.outer + i]!;
  }
  for (let at = 0; at < rodBends.length; at += 3) {
    for (let i = 0; i < 3; i += 1) {
      out[at + 3 + i] =
        pose[Slot.outer + i]! +
        rodBends[at]! * pose[f + i]! +
        rodBends[at + 1]! * pose[f + 3 + i]! +
        rodBends[at + 2]! * pose[f + 6 + i]!;
    }
  }
}
