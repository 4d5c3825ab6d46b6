/** Shims between a pivot's bracket and the body, one plate each, as thick as they are. */
import { Matrix4 } from 'three';
import type { Shim } from '../../../solver/index.ts';
import { shimDirection, shimThickness } from '../../../solver/model/defaults.ts';
import { addPlate, block } from './plate.ts';
import type { Solid } from './solid.ts';
import { toVector } from './solid.ts';

/** Half the thickness of a bracket's back plate, mm; how much every second shim is shorter, so that they can be counted. */
const BACK = 3;
const SHORTER = 3;
/** Part of its thickness that a shim's edges are broken by. */
const CUT = 0.1;

/** Whole shims of the step that is stated; one plate where it is not, or where they do not make the thickness. */
export function shimCount(shim: Shim): number {
  const thickness = shimThickness(shim);
  if (thickness === 0) return 0;
  const count = Math.round(thickness / (shim.step ?? thickness));
  return Math.max(1, count);
}

/**
 * Adds the shims behind a bracket whose frame has the way to the body along local x and the pivots' axis along local z. They
 * stand on the side they push the bracket away from.
 */
export function addShims(
  solid: Solid,
  frame: Matrix4,
  shim: Shim,
  reach: number,
  height: number,
  width: number,
): void {
  const count = shimCount(shim);
  const each = shimThickness(shim) / count;
  const toBody = toVector([frame.elements[0]!, frame.elements[1]!, frame.elements[2]!]);
  const side = toVector(shimDirection(shim)).dot(toBody) > 0 ? -1 : 1;
  for (let place = 0; place < count; place += 1) {
    const x = reach + side * (BACK + (place + 0.5) * each);
    const at = frame.clone().multiply(new Matrix4().makeTranslation(x, 0, 0));
    const half = width / 2 - (place % 2) * SHORTER;
    addPlate(solid, at, block(each, height - (place % 2) * SHORTER, CUT * each), -half, half);
  }
}
