/**
 * The view along the tie rod: from the rack's end outwards, down the line of its joints, so that the rod is seen end-on
 * against the rim's lip. It follows the rod as the bench moves.
 */
import { Slot } from '../../../solver/index.ts';
import type { Insets } from '../../state/view.ts';
import { freeSize, ROD_LENS, type Shot } from './framing.ts';

/** Room around the tyre's radius shown. */
const SPAN = 0.86;

/** Fills `shot` from the pose in `data`; the distance fits the wheel's rim into the free rectangle. */
export function frameRod(
  shot: Shot,
  data: Float64Array,
  tyreRadius: number,
  width: number,
  height: number,
  insets: Insets,
): void {
  let size = 0;
  let along = 0;
  for (let i = 0; i < 3; i += 1) {
    const part = data[Slot.inner + i]! - data[Slot.outer + i]!;
    shot.direction[i] = part;
    size += part * part;
  }
  const inverse = 1 / Math.sqrt(size);
  for (let i = 0; i < 3; i += 1) {
    shot.direction[i]! *= inverse;
    along += (data[Slot.outer + i]! - data[Slot.centre + i]!) * shot.direction[i]!;
  }
  // The wheel's middle, brought to the depth of the rod's outer joint.
  for (let i = 0; i < 3; i += 1) {
    shot.target[i] = data[Slot.centre + i]! + along * shot.direction[i]!;
  }
  const [across, upward] = freeSize(width, height, insets);
  const half = SPAN * tyreRadius;
  shot.fov = ROD_LENS;
  shot.distance = half / (Math.tan((ROD_LENS * Math.PI) / 360) * Math.min(across, upward));
}
