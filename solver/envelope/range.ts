/** Over which poses the tyre is swept. */
import { type CertifiedRange, certifiedRange } from '../certify/range.ts';
import type { Model } from '../model/model.ts';

/** The whole travel of the model, or only what its stops let through. */
export type SweptRange = 'whole' | 'stops';

function clamp(value: number, [least, most]: readonly [number, number]): number {
  return Math.min(most, Math.max(least, value));
}

/** True where the model states a stop that shortens its travel: only then the two ranges differ. */
export function stopsShorten(model: Model): boolean {
  const { travel } = certifiedRange(model);
  const [least, most] = sweptRange(model, 'stops').travel;
  return least > travel[0] || most < travel[1];
}

/** Travel and rack over which the tyre is swept, mm. */
export function sweptRange(model: Model, which: SweptRange): CertifiedRange {
  const whole = certifiedRange(model);
  if (which === 'whole') return whole;
  const { bump, droop } = model.stops ?? {};
  return {
    travel: [
      droop === undefined ? whole.travel[0] : clamp(-droop, whole.travel),
      bump === undefined ? whole.travel[1] : clamp(bump, whole.travel),
    ],
    rack: whole.rack,
  };
}
