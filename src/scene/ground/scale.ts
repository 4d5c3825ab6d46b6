/** The lengths written on the grid: how far its bold lines lie apart, from the vehicle's centreline outwards. */

import { view } from '../../state/bench.ts';
import { length } from '../../words/format.ts';
import type { Extent } from '../camera/extent.ts';
import type { Pen } from '../drawings/pen.ts';
import type { Words } from '../labels/labels.ts';
import { gridSteps } from './grid.ts';

const FROM_CENTRE: Words = (value, unit) => (value === 0 ? 'centreline' : length(value, unit, 0));

/** Labels on the bold lines beside the vehicle's centreline, in front of the corner. */
export function gridWords(pen: Pen, extent: Extent): void {
  const [, bold] = gridSteps(view.getState().unit);
  const x = Math.ceil(extent.box.max[0] / bold) * bold;
  for (let line = 0; line * bold <= extent.box.max[1] + bold; line += 1) {
    pen.label(x, line * bold, extent.ground, 'soft', FROM_CENTRE, line * bold);
  }
}
