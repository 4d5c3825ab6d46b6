/** The first stop in bump and in droop over the rack: how far the wheel can really go at every lock. */
import type { Keys } from '../certify/bounder.ts';
import { fillAxis } from '../map.ts';
import { rackRange } from '../model/defaults.ts';
import { meet, reachStop, stopOf } from './firstStops.ts';
import { createLine, reachOf } from './line.ts';
import { type Margins, outsideAtSet } from './margins.ts';
import type { Ray, Stop, StopColumn } from './results.ts';
import { allSteps, type Steps } from './steps.ts';
import { watchOf } from './watch.ts';

/**
 * The first stop of a ray within the model's own range, found as `firstStops` finds it; null where there is none. Once a
 * stop is known, other limits are only looked for before it. `leftOut` holds indices of margins that are not looked at.
 */
export function firstStop(
  margins: Margins,
  ray: Ray,
  leftOut: readonly number[] = [],
): Stop | null {
  const line = createLine(margins.corner, ray, 1);
  const keys: Keys = { next: 0 };
  const reach = reachOf(line);
  let first: Stop | null = reachStop(line, margins, reach)[0] ?? null;
  const count = margins.list.length - 1;
  for (let index = 0; index < count && first?.at !== line.start; index += 1) {
    if (leftOut.includes(index)) continue;
    const stretch = { from: line.start, to: first?.at ?? reach.end };
    const { met } = meet(line, watchOf(line, margins, index, keys), stretch);
    if (met !== null) first = stopOf(line, margins, index, met, null, null);
  }
  return first;
}

/** Racks of a curve where none are given, both ends and 0 among them; one where the model states no steering limit. */
const RACKS = 31;

function racksOf(margins: Margins): Float64Array {
  const range = rackRange(margins.corner.model.steering);
  const racks = new Float64Array(range[0] === range[1] ? 1 : RACKS);
  fillAxis(racks, range);
  return racks;
}

/** Finds the first bump and droop stop rack by rack, yielding the share done. Racks ascend, mm. */
export function* stopCurveInSteps(
  margins: Margins,
  racks: Float64Array = racksOf(margins),
): Steps<StopColumn[]> {
  const columns: StopColumn[] = [];
  const leftOut = outsideAtSet(margins);
  for (const rack of racks) {
    const bump = firstStop(margins, { way: 'bump', held: rack }, leftOut);
    yield (columns.length + 0.5) / racks.length;
    columns.push({ rack, bump, droop: firstStop(margins, { way: 'droop', held: rack }, leftOut) });
    yield columns.length / racks.length;
  }
  return columns;
}

/** The first bump and droop stop at every rack, at once: see `stopCurveInSteps`. */
export function stopCurve(margins: Margins, racks?: Float64Array): StopColumn[] {
  return allSteps(stopCurveInSteps(margins, racks));
}
