/**
 * The view along the tie rod: from the rack's end outwards, down the line of its joints, so that the rod is seen end-on
 * against the rim's lip. It follows the rod as the bench moves, and shows the whole wheel.
 */
import { Slot } from '../../../solver/index.ts';
import type { Insets } from '../../state/view.ts';
import { type Drum, MOVING_POINTS, writeMoving } from './extent.ts';
import { fitPoints, ROD_LENS, type Shot } from './framing.ts';

const _points = new Float64Array(3 * MOVING_POINTS);

/** Fills `shot` from the pose in `data`; wheel, tyre and joints fit into the free rectangle. Allocates nothing. */
export function frameRod(
  shot: Shot,
  data: Float64Array,
  drum: Drum,
  width: number,
  height: number,
  insets: Insets,
): void {
  let size = 0;
  for (let i = 0; i < 3; i += 1) {
    const part = data[Slot.inner + i]! - data[Slot.outer + i]!;
    shot.direction[i] = part;
    size += part * part;
  }
  const inverse = 1 / Math.sqrt(size);
  for (let i = 0; i < 3; i += 1) shot.direction[i]! *= inverse;
  shot.fov = ROD_LENS;
  writeMoving(_points, 0, data, drum);
  fitPoints(shot, _points, width, height, insets);
}
