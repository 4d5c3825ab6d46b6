/** The points that are most probable given where they were measured and what was read: weighted least squares. */
import type { Steps } from '../stops/steps.ts';
import { mostProbableStep, type Posterior, posteriorOf } from './posterior.ts';
import { scaled } from './progress.ts';
import type { Reading } from './reading.ts';
import { modelAt, type Reader, slopesInSteps, type Unknowns } from './unknowns.ts';

/** Readings to be met by moving the unknowns. */
export interface FitProblem {
  readonly unknowns: Unknowns;
  readonly readings: readonly Reading[];
  /** What a model gives for each reading, in order. */
  readonly reader: Reader;
}

/** A place of the unknowns with all that is known there. */
export interface FitPlace {
  readonly x: Float64Array;
  /** What would be read there. */
  readonly values: Float64Array;
  /** d(values)/dx, one row a reading. */
  readonly slopes: Float64Array;
}

export interface Fitted extends FitPlace {
  /** Sums of squares, in units of ±: of what the readings are off, and of what the points moved. */
  readonly readingsPart: number;
  readonly pointsPart: number;
  /** Of the readings that were used. */
  readonly posterior: Posterior;
  /** How far the next step would have moved an unknown, in its ±: near 0 where the search has settled. */
  readonly left: number;
}

/** Shares of a step that are tried, the whole one first; a step that helps at no share ends the search. */
const SHARES = [1, 0.5, 0.25, 0.1, 0.03, 0.01];
const MOST_STEPS = 40;

function offOf({ readings }: FitProblem, values: Float64Array, used: readonly number[]) {
  return Float64Array.from(used, (i) => (values[i]! - readings[i]!.value) / readings[i]!.plusMinus);
}

function squares(x: Float64Array): number {
  return x.reduce((sum, value) => sum + value * value, 0);
}

function posteriorAt(problem: FitProblem, slopes: Float64Array, used: readonly number[]) {
  const columns = problem.unknowns.inputs.length;
  const scaled = new Float64Array(used.length * columns);
  used.forEach((i, row) => {
    const { plusMinus } = problem.readings[i]!;
    for (let k = 0; k < columns; k += 1) {
      scaled[row * columns + k] = slopes[i * columns + k]! / plusMinus;
    }
  });
  return posteriorOf(scaled, used.length, columns);
}

/** The unknowns at 0 with their values and slopes; null where the model cannot be read. */
export function* startInSteps(problem: FitProblem): Steps<FitPlace | null> {
  const { unknowns, reader } = problem;
  const x = new Float64Array(unknowns.inputs.length);
  return yield* placeInSteps(problem, x, new Float64Array(reader.size));
}

function* placeInSteps(
  { unknowns, reader }: FitProblem,
  x: Float64Array,
  values: Float64Array,
): Steps<FitPlace | null> {
  if (!reader.into(modelAt(unknowns, x), values)) return null;
  const slopes = new Float64Array(reader.size * x.length);
  return (yield* slopesInSteps(unknowns, x, reader, slopes)) ? { x, values, slopes } : null;
}

/** The same place of a problem with fewer unknowns, those at `columns`: no slopes need be worked out again. */
export function narrowed(place: FitPlace, columns: readonly number[]): FitPlace {
  const wide = place.x.length;
  const rows = place.values.length;
  const slopes = new Float64Array(rows * columns.length);
  for (let row = 0; row < rows; row += 1) {
    columns.forEach((column, k) => {
      slopes[row * columns.length + k] = place.slopes[row * wide + column]!;
    });
  }
  return {
    x: Float64Array.from(columns, (column) => place.x[column]!),
    values: place.values,
    slopes,
  };
}

/** The first share of the way from `place` to `goal` that lowers the sum of squares; null where none does. */
function better(problem: FitProblem, place: FitPlace, goal: Float64Array, used: readonly number[]) {
  const { unknowns, reader } = problem;
  const cost = (x: Float64Array, values: Float64Array): number =>
    squares(offOf(problem, values, used)) + squares(x);
  const present = cost(place.x, place.values);
  const values = new Float64Array(reader.size);
  for (const share of SHARES) {
    const x = place.x.map((value, i) => value + share * (goal[i]! - value));
    if (reader.into(modelAt(unknowns, x), values) && cost(x, values) < present)
      return { x, values };
  }
  return null;
}

/** How closely a fit is settled, in ± of any point. */
export interface Closeness {
  /** It ends where no unknown would move by more. */
  readonly step: number;
  /** It ends only where the slopes were worked out no farther away than this. */
  readonly stale: number;
}

/** After a move as large as this, in ±, old slopes are no longer worth a step. */
const FAR = 0.5;

function farthest(a: Float64Array, b: Float64Array): number {
  return a.reduce((most, value, i) => Math.max(most, Math.abs(value - b[i]!)), 0);
}

/**
 * Gauss–Newton with a shortened step where the whole one does not help, from `from`, over the readings whose indices
 * are `used`. Slopes are costly and change slowly: they are worked out anew after a large move and before the end.
 * Ends as close as `close` says, or where the sum of squares can be lowered no more. Null where no step can be worked out.
 */
export function* mostProbableInSteps(
  problem: FitProblem,
  from: FitPlace,
  used: readonly number[],
  close: Closeness,
): Steps<Fitted | null> {
  let place = from;
  let sloped = from.x;
  let left = 0;
  let posterior = posteriorAt(problem, place.slopes, used);
  for (let count = 0; count < MOST_STEPS && posterior !== null; count += 1) {
    const goal = mostProbableStep(posterior, place.x, offOf(problem, place.values, used));
    left = farthest(goal, place.x);
    const next = better(problem, place, goal, used);
    if (next !== null) place = { ...place, ...next };
    const isEnd = next === null || left < close.step;
    const stale = farthest(place.x, sloped);
    if (isEnd && stale <= close.stale) break;
    if (!isEnd && stale <= FAR) continue;
    const known: FitPlace | null = yield* scaled(
      placeInSteps(problem, place.x, place.values.slice()),
      count / (count + 2),
      (count + 1) / (count + 3),
    );
    if (known === null) return null;
    place = known;
    sloped = known.x;
    posterior = posteriorAt(problem, place.slopes, used);
  }
  if (posterior === null) return null;
  const readingsPart = squares(offOf(problem, place.values, used));
  return { ...place, readingsPart, pointsPart: squares(place.x), posterior, left };
}
