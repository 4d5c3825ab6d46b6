/** One line of poses through a corner's range: every measure and both gaps of the tie rod, into buffers made once. */
import { createRodGap, type RodGap, rodGapInto } from './clearance/rodGap.ts';
import { type Corner, solve } from './corner.ts';
import { createPose, type Outcome, type Pose } from './linkage/solve.ts';
import { createMeasures, MEASURE_KEYS, type MeasureKey } from './measures/keys.ts';
import { measureInto } from './measures/measure.ts';

/** A measure, or the tie rod's gap to its wheel or its tyre. */
export type SweepKey = MeasureKey | 'wheelGap' | 'tyreGap';

export const SWEEP_KEYS: readonly SweepKey[] = [...MEASURE_KEYS, 'wheelGap', 'tyreGap'];

/** A line of poses, refilled by `sweepInto`. */
export interface Sweep {
  /** What changes along the line: travel or rack, mm. */
  readonly axis: Float64Array;
  /** One column a key; NaN out of reach, and where the model lacks the parts or the number does not exist. */
  readonly columns: Readonly<Record<SweepKey, Float64Array>>;
  /** 1 where the pose is reached. */
  readonly reached: Uint8Array;
  readonly pose: Pose;
  readonly measures: Float64Array;
}

/** Makes a sweep of `count` poses. */
export function createSweep(count: number): Sweep {
  return {
    axis: new Float64Array(count),
    columns: Object.fromEntries(
      SWEEP_KEYS.map((key) => [key, new Float64Array(count).fill(Number.NaN)]),
    ) as Record<SweepKey, Float64Array>,
    reached: new Uint8Array(count),
    pose: createPose(),
    measures: createMeasures(),
  };
}

/** The two gaps of a corner's tie rod, made once for each corner. */
export interface RodGaps {
  readonly wheel: RodGap;
  readonly tyre: RodGap;
}

export function createRodGaps(corner: Corner): RodGaps {
  return { wheel: createRodGap(corner, 'wheel'), tyre: createRodGap(corner, 'tyre') };
}

function solveAt(
  corner: Corner,
  pose: Pose,
  along: 'travel' | 'rack',
  place: number,
  at: number,
): Outcome {
  return along === 'travel' ? solve(corner, pose, place, at) : solve(corner, pose, at, place);
}

function writeRow(corner: Corner, gaps: RodGaps | null, sweep: Sweep, row: number): void {
  const { columns, measures, pose } = sweep;
  measures.fill(Number.NaN);
  measureInto(corner, pose, measures);
  for (let i = 0; i < MEASURE_KEYS.length; i += 1) {
    const value = measures[i]!;
    columns[MEASURE_KEYS[i]!][row] = Number.isFinite(value) ? value : Number.NaN;
  }
  if (gaps === null) return;
  rodGapInto(gaps.wheel, pose);
  rodGapInto(gaps.tyre, pose);
  columns.wheelGap[row] = gaps.wheel.gap;
  columns.tyreGap[row] = gaps.tyre.gap;
}

/** Rounding of an evenly parted range, mm. */
const ROUNDING = 1e-9;

const EVERYWHERE: readonly [number, number] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];

/**
 * Fills `sweep` over [least, most] mm of travel or of rack, evenly, ends included, while the other stays at `at`. Places
 * outside of `within` are not solved and read as not reached: a design's own range may be shorter than the sweep.
 * Without `gaps` the two gap columns are left as they are. Allocates nothing while the rod stays out of the tyre.
 */
export function sweepInto(
  corner: Corner,
  gaps: RodGaps | null,
  sweep: Sweep,
  along: 'travel' | 'rack',
  [least, most]: readonly [number, number],
  at: number,
  [from, to]: readonly [number, number] = EVERYWHERE,
): void {
  const { axis, columns, pose, reached } = sweep;
  const last = axis.length - 1;
  for (let row = 0; row <= last; row += 1) {
    const place = row === last ? most : least + ((most - least) * row) / last;
    axis[row] = place;
    const isWithin = place >= from - ROUNDING && place <= to + ROUNDING;
    const isReached = isWithin && solveAt(corner, pose, along, place, at) === 'reached';
    reached[row] = isReached ? 1 : 0;
    if (isReached) writeRow(corner, gaps, sweep, row);
    else for (let i = 0; i < SWEEP_KEYS.length; i += 1) columns[SWEEP_KEYS[i]!][row] = Number.NaN;
  }
}
