/** Heights are read too: how well they are known makes a reading's ± larger, by as much as the reading depends on them. */
import type { Model } from '../model/model.ts';
import { expectedInto, planReadings } from './expected.ts';
import type { Reading } from './reading.ts';

/** Half the stretch of travel over which a reading's slope is taken, mm. */
const REACH = 0.5;

function shifted(readings: readonly Reading[], by: number): readonly Reading[] {
  return readings.map((reading) => ({ ...reading, travel: reading.travel + by }));
}

function expected(model: Model, readings: readonly Reading[]): Float64Array {
  const out = new Float64Array(readings.length);
  expectedInto(planReadings(readings), model, out);
  return out;
}

/**
 * The readings with the ± that they have where each height is known to `plusMinus` mm (one standard uncertainty, 0:
 * exactly), combined by the law of propagation (JCGM 100:2008, 5.1.2) from the slope over travel in the model. Heights
 * are taken as independent of each other. What does not change with travel keeps its own ±.
 */
export function withHeights(
  model: Model,
  readings: readonly Reading[],
  plusMinus: number,
): readonly Reading[] {
  if (!(plusMinus > 0)) return readings;
  const here = expected(model, readings);
  const above = expected(model, shifted(readings, REACH));
  const below = expected(model, shifted(readings, -REACH));
  return readings.map((reading, i) => {
    const high = Number.isFinite(above[i]) ? above[i]! : here[i]!;
    const low = Number.isFinite(below[i]) ? below[i]! : here[i]!;
    const run = (high === here[i] ? 0 : REACH) + (low === here[i] ? 0 : REACH);
    const slope = run === 0 ? 0 : (high - low) / run;
    return { ...reading, plusMinus: Math.hypot(reading.plusMinus, slope * plusMinus) };
  });
}
