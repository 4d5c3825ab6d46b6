/** What other settings do to every other measure of the set pose. */
import { assemble, solve } from '../corner.ts';
import { createPose } from '../linkage/solve.ts';
import { createMeasures, MEASURE_KEYS, Measure, type MeasureKey } from '../measures/keys.ts';
import { measureInto } from '../measures/measure.ts';
import { rideTravel } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { type Settings, withSettings } from './hardware.ts';

/** A measure before and after, in its own unit: see the table of measures. */
export interface MovedMeasure {
  readonly key: MeasureKey;
  readonly before: number;
  readonly after: number;
}

function measured(model: Model): Float64Array | null {
  const corner = assemble(model);
  const pose = createPose();
  if (solve(corner, pose, rideTravel(model.travel), 0) !== 'reached') return null;
  const measures = createMeasures();
  measureInto(corner, pose, measures);
  return measures;
}

/**
 * Every measure of the set pose that a model has, before and with the settings, in the order of the measures; none where either
 * cannot stand.
 */
export function movedBySettings(model: Model, settings: Settings): readonly MovedMeasure[] {
  const [was, now] = [measured(model), measured(withSettings(model, settings))];
  if (was === null || now === null) return [];
  return MEASURE_KEYS.flatMap((key) => {
    const [before, after] = [was[Measure[key]]!, now[Measure[key]]!];
    return Number.isFinite(before) && Number.isFinite(after) ? [{ key, before, after }] : [];
  });
}
