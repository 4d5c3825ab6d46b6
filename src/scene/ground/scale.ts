/** The lengths written on the grid: how far its bold lines lie apart, from the vehicle's centreline outwards. */

import { view } from '../../state/bench.ts';
import { length } from '../../words/format.ts';
import type { Extent } from '../camera/extent.ts';
import type { Pen } from '../drawings/pen.ts';
import type { Words } from '../labels/labels.ts';
import { gridSteps } from './grid.ts';

const ACROSS: Words = (value, unit) => (value === 0 ? 'centreline' : length(value, unit, 0));
const ALONG: Words = (value, unit) => `x ${length(value, unit, 0)}`;

const RAISED: Words = (value, unit) =>
  `body ${length(Math.abs(value), unit, 0)} ${value < 0 ? 'higher' : 'lower'} than at ride height`;
/** Not worth a word, mm. */
const SLIGHT = 0.5;

/**
 * Labels on the bold lines: across the vehicle in front of the corner, or, seen from the side, along it. `isAcross` says
 * which of the two the picture shows. The ground lies at the height `ground`; how far the body stands from where it
 * stands at ride height is said beside it, since it is the ground that moves in the picture.
 */
export function gridWords(pen: Pen, extent: Extent, ground: number, isAcross: boolean): void {
  const { box } = extent;
  const moved = ground - extent.ground;
  if (Math.abs(moved) >= SLIGHT) {
    pen.label(box.max[0], box.min[1], ground, 'soft', RAISED, moved);
  }
  const [, bold] = gridSteps(view.getState().unit);
  if (isAcross) {
    const x = Math.ceil(box.max[0] / bold) * bold;
    for (let line = 0; line * bold <= box.max[1] + bold; line += 1) {
      pen.label(x, line * bold, ground, 'soft', ACROSS, line * bold);
    }
    return;
  }
  const y = Math.ceil(box.max[1] / bold) * bold;
  for (let line = Math.floor(box.min[0] / bold); line * bold <= box.max[0] + bold; line += 1) {
    pen.label(line * bold, y, ground, 'soft', ALONG, line * bold);
  }
}
