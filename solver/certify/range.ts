/** The range over which a minimum is certified. */
import { rackRange } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';

/** [least, greatest] of travel and of rack, mm. */
export interface CertifiedRange {
  readonly travel: readonly [number, number];
  readonly rack: readonly [number, number];
}

/** Travel −droop to bump, not cut by stops, and the steering limit; rack 0 only where none is stated. */
export function certifiedRange(model: Model): CertifiedRange {
  return { travel: [-model.travel.droop, model.travel.bump], rack: rackRange(model.steering) };
}
