/** What stops the wheel along a ray: every limit in the order in which it is met. */
import type { Keys } from '../certify/bounder.ts';
import type { Failure } from '../linkage/linkage.ts';
import {
  comesBack,
  firstCrossing,
  MET,
  nearer,
  type Stretch,
  valueAt,
  type Watch,
} from './crossing.ts';
import { createLine, type Line, type LineReach, reachOf } from './line.ts';
import type { Margin } from './margin.ts';
import type { Margins } from './margins.ts';
import type { Ray, RayStops, Stop } from './results.ts';
import { allSteps, type Steps } from './steps.ts';
import { watchOf } from './watch.ts';

/** Past the start by so much a margin that is 0 there shows which way it goes, mm. */
const FIRST_STEP = 0.01;

/** Where a margin is met. */
export interface Met {
  readonly at: number;
  readonly isOutsideAtStart: boolean;
}

/** Where a margin is met in the stretch, and up to where that is proven. */
export function meet(
  line: Line,
  watch: Watch,
  stretch: Stretch,
): { readonly met: Met | null; readonly provenTo: number } {
  const { from, to } = stretch;
  const atStart = valueAt(line, watch, from);
  if (atStart < -MET) return { met: { at: from, isOutsideAtStart: true }, provenTo: to };
  if (watch.elements.length === 0) return { met: null, provenTo: to };
  let begin = from;
  if (atStart <= MET) {
    begin = from + line.sign * FIRST_STEP;
    if (valueAt(line, watch, begin) <= MET) {
      return { met: { at: from, isOutsideAtStart: false }, provenTo: to };
    }
  }
  const { at, provenTo } = firstCrossing(line, watch, { from: begin, to });
  return { met: at === null ? null : { at, isOutsideAtStart: false }, provenTo };
}

function isBeyond({ rangeEnd, sign }: Line, at: number): boolean {
  return rangeEnd !== null && sign * (at - rangeEnd) > MET;
}

/** A margin's meeting as a stop. */
export function stopOf(
  line: Line,
  margins: Margins,
  index: number,
  { at, isOutsideAtStart }: Met,
  until: number | null,
  fails: Failure | null,
): Stop {
  const margin = margins.list[index];
  if (margin === undefined) throw new RangeError(`No margin ${index}`);
  return { margin, at, isOutsideAtStart, until, isBeyondRange: isBeyond(line, at), fails };
}

/** The linkage's own reach as a stop, the last of all; none where the line is reached to its end. */
export function reachStop(line: Line, margins: Margins, { end, fails }: LineReach): Stop[] {
  if (fails === null) return [];
  const met: Met = { at: end, isOutsideAtStart: end === line.start };
  return [stopOf(line, margins, margins.list.length - 1, met, null, fails)];
}

/**
 * Finds the stops of a ray step by step, yielding the share done; the answer is what it returns. `only` leaves limits out.
 *
 * Guaranteed: no margin that dips below 0 by more than 1e-4 (mm or degrees) is missed, and every stop is where its margin
 * first does, to 1e-6 where it crosses 0 once within 0.04 mm. This rests on enclosures of the motion over whole cells,
 * not on samples; beyond `provenTo` (next to the end of the linkage's reach) none could be
 * made, and samples no farther apart than 0.25 mm stand in.
 */
export function* firstStopsInSteps(
  margins: Margins,
  ray: Ray,
  only: (margin: Margin) => boolean = () => true,
): Steps<RayStops> {
  const line = createLine(margins.corner, ray);
  const keys: Keys = { next: 0 };
  const reach = reachOf(line);
  const stretch: Stretch = { from: line.start, to: reach.end };
  const stops: Stop[] = [];
  let { provenTo } = reach;
  const count = margins.list.length - 1;
  for (let index = 0; index < count && reach.end !== line.start; index += 1) {
    const margin = margins.list[index];
    if (margin === undefined || !only(margin)) continue;
    const watch = watchOf(line, margins, index, keys);
    const { met, provenTo: proven } = meet(line, watch, stretch);
    provenTo = nearer(line, provenTo, proven);
    if (met !== null) {
      const until = comesBack(line, watch, { from: met.at, to: reach.end });
      stops.push(stopOf(line, margins, index, met, until, null));
    }
    yield (index + 1) / count;
  }
  stops.sort(
    (a, b) => line.sign * (a.at - b.at) || Number(b.isOutsideAtStart) - Number(a.isOutsideAtStart),
  );
  stops.push(...reachStop(line, margins, reach));
  return {
    ray,
    start: line.start,
    rangeEnd: line.rangeEnd,
    lookedTo: reach.end,
    stops,
    first: stops.find(({ isOutsideAtStart }) => !isOutsideAtStart) ?? null,
    provenTo,
  };
}

/** Every limit met along a ray, at once: see `firstStopsInSteps`. */
export function firstStops(
  margins: Margins,
  ray: Ray,
  only?: (margin: Margin) => boolean,
): RayStops {
  return allSteps(firstStopsInSteps(margins, ray, only));
}
