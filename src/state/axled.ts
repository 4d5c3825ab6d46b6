/** Both front wheels of the present model at the present inputs: solved by the first to ask in a frame. */
import { AXLE_KEYS, type Axle, axleInto, type Corner, createAxle } from '../../solver/index.ts';
import { inputs, posed } from './bench.ts';

interface Axled {
  readonly corner: Corner;
  readonly axle: Axle;
  readonly measures: Float64Array;
  version: number;
}

function axledOf(corner: Corner): Axled {
  return {
    corner,
    axle: createAxle(corner),
    measures: new Float64Array(AXLE_KEYS.length),
    version: -1,
  };
}

let present: Axled | null = null;
let held: Axled | null = null;

function refreshed(axled: Axled): Float64Array {
  if (axled.version !== posed.version()) {
    axled.version = posed.version();
    const { travel, rack } = inputs.getState();
    axleInto(axled.axle, travel, rack, axled.measures);
  }
  return axled.measures;
}

/** Axle measures (see `AxleMeasure`) of the present design. */
export function currentAxle(): Float64Array {
  const { corner } = posed.current();
  if (present?.corner !== corner) present = axledOf(corner);
  return refreshed(present);
}

/** Axle measures of the held design at the same inputs, or null: the design pose has no turn to compare with. */
export function heldAxle(): Float64Array | null {
  const design = posed.held();
  if (design === null) return null;
  if (held?.corner !== design.corner) held = axledOf(design.corner);
  return refreshed(held);
}
