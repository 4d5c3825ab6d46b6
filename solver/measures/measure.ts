/** All measures of one pose into one buffer, without allocation. */
import type { Corner } from '../corner.ts';
import { poseBends } from '../linkage/bends.ts';
import { Slot } from '../linkage/slots.ts';
import type { Pose } from '../linkage/solve.ts';
import { measureAlignment, measureRates } from './alignment.ts';
import { measureCentres } from './centres.ts';
import { measureJoints, measureShaft } from './joints.ts';
import { Measure } from './keys.ts';
import { measureLength, placeWithRates } from './parts.ts';
import { measureBar, measureCoilover } from './springing.ts';

/**
 * Fills `out` (made by `createMeasures`) with every measure of the pose in the buffer, reached or last reachable, and
 * leaves all carried points placed. A measure whose parts the model lacks keeps its NaN.
 */
export function measureInto(corner: Corner, pose: Pose, out: Float64Array): void {
  const { data } = pose;
  placeWithRates(corner, data);
  measureAlignment(corner, data, out);
  measureRates(corner, data, out);
  measureCentres(corner, data, out);
  measureJoints(corner, data, out);
  const { coilover, strap, lever, shaft } = corner;
  if (coilover !== null) {
    poseBends(corner.linkage.fixed, data);
    measureCoilover(corner, coilover, data, out);
  }
  if (strap !== null) measureLength(strap, data, Slot.strapBottom, out, Measure.strapLength);
  if (lever !== null) measureBar(lever, data, out);
  if (shaft !== null) measureShaft(shaft, data, out);
}
