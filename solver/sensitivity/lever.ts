/** The anti-roll bar's lever: three equations in its end, |E − bearing|² (2) and |E − link|² kept, solved as in motion.ts. */
import type { Corner } from '../corner.ts';
import { Slot } from '../linkage/slots.ts';
import { carrier } from '../model/defaults.ts';
import type { Carrier } from '../model/model.ts';
import type { Body } from './carried.ts';
import type { DesignInputs } from './design.ts';
import { invert } from './invert.ts';
import type { Jet, Jets } from './jets.ts';
import type { Motion } from './motion.ts';
import type { Writer } from './parts.ts';
import {
  constantVector,
  crossProduct,
  difference,
  dotProduct,
  each,
  type JetVector,
  times,
  unitVector,
} from './vectors.ts';
import type { Write } from './write.ts';

const _derivative = new Float64Array(9);
const _inverse = new Float64Array(9);

/** The lever's end along the motion; null where the link is stretched and it has no derivative. */
function endOf(
  jets: Jets,
  start: JetVector,
  centres: readonly JetVector[],
  squares: readonly Jet[],
): JetVector | null {
  centres.forEach((centre, row) => {
    for (let i = 0; i < 3; i += 1) {
      _derivative[3 * row + i] = 2 * (jets.value(start[i]!) - jets.value(centre[i]!));
    }
  });
  if (!invert(_derivative, _inverse, 3)) return null;
  for (let i = 0; i < 9; i += 1) _inverse[i] = -_inverse[i]!;
  let end = start;
  for (let step = 0; step <= jets.order; step += 1) {
    const lacking = centres.map((centre, row) => {
      const span = difference(jets, end, centre);
      return jets.subtract(dotProduct(jets, span, span), squares[row]!);
    });
    const [x, y, z] = jets.stepBy(end, _inverse, lacking);
    end = [x!, y!, z!];
  }
  return end;
}

/** Speed of the lever's end about the bar, signed by the bar's sense: E′·(axis × radius)/|radius|. */
function speedOf(jets: Jets, end: JetVector, axis: JetVector, bearing: JetVector): Jet {
  const now = each(end, (jet) => jets.now(jet));
  const from = difference(jets, now, bearing);
  const radial = difference(jets, from, times(jets, dotProduct(jets, from, axis), axis));
  const tangent = crossProduct(jets, axis, unitVector(jets, radial));
  return dotProduct(
    jets,
    each(end, (jet) => jets.rate(jet)),
    tangent,
  );
}

/** Writes the bar's motion ratio, its sign as in measures/springing.ts. */
export function leverOf(
  { model, jets, point }: DesignInputs,
  bodies: Readonly<Record<Carrier, Body>>,
  corner: Corner,
): Writer {
  const raising = corner.lever?.raising ?? 0;
  const [first, second] = [point('antiRollBar.axis.0'), point('antiRollBar.axis.1')];
  const designed = point('antiRollBar.leverEnd');
  const axis = unitVector(jets, difference(jets, first, second));
  const linkIn = bodies[carrier(model.antiRollBar!)].point(point('antiRollBar.link'));
  const squares = [first, second, point('antiRollBar.link')].map((centre) => {
    const span = difference(jets, designed, centre);
    return dotProduct(jets, span, span);
  });
  const measure = (motion: Motion, data: Float64Array, write: Write): void => {
    if (!(data[Slot.leverRoom]! > 0)) return;
    const at = Slot.leverEnd;
    const start = constantVector(jets, [data[at]!, data[at + 1]!, data[at + 2]!]);
    const end = endOf(jets, start, [first, second, linkIn(motion)], squares);
    if (end === null) return;
    const speed = speedOf(jets, end, axis, first);
    write('barMotionRatio', speed, raising === 0 ? Math.sign(jets.value(speed)) : raising);
  };
  return { order: 1, write: measure };
}
