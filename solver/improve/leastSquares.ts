/**
 * Nonlinear least squares within bounds: damped Gauss–Newton steps (K. Levenberg 1944, D. W. Marquardt 1963) in the scale
 * of the columns (J. J. Moré, The Levenberg–Marquardt algorithm, 1978), every step the exact least of its quadratic inside
 * the bounds; the damping follows how well the last step was foretold (H. B. Nielsen, IMM-REP-1999-05).
 */
import type { Steps } from '../stops/steps.ts';
import { boxedStep } from './boxedStep.ts';
import { columnsOf } from './columns.ts';

/** What is made small: half the sum of squares of `residuals`, with every number in [low, high]. */
export interface LeastSquares {
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** Null where there is no such thing. The count of residuals is the same everywhere. */
  readonly residuals: (x: readonly number[]) => Float64Array | null;
  /** Derivatives, a column a number; by central differences of `reach` where left out. */
  readonly columns?: ((x: readonly number[]) => readonly Float64Array[] | null) | undefined;
  /** Width of a difference to either side, in the numbers' own unit. Default 1e-5 of the number, no less than 1e-5. */
  readonly reach?: number | undefined;
}

export interface Solved {
  readonly x: readonly number[];
  /** Half the sum of squares. */
  readonly cost: number;
  /** False where the turns ran out first. */
  readonly isSettled: boolean;
  readonly turns: number;
}

export interface SolvingOptions {
  readonly mostTurns?: number;
  /** A step that is foretold to lower the cost by a smaller share than this ends the search. */
  readonly smallestGain?: number;
}

const MOST_TURNS = 60;
const SMALLEST_GAIN = 1e-10;
/** The cosine between residuals and any column at which no slope is left. */
const LEVEL = 1e-13;
const FIRST_DAMPING = 1e-3;
const LEAST_DAMPING = 1e-12;
const MOST_TRIES = 24;

function half(residuals: Float64Array): number {
  let sum = 0;
  for (const each of residuals) sum += each * each;
  return sum / 2;
}

function product(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += a[i]! * b[i]!;
  return sum;
}

/** A place with its residuals, derivatives and scale. */
interface Here {
  readonly x: readonly number[];
  readonly residuals: Float64Array;
  readonly cost: number;
  readonly columns: readonly Float64Array[];
  /** The greatest length so far of each column: what a unit of each number is worth. */
  readonly scale: Float64Array;
}

function placeAt(
  problem: LeastSquares,
  x: readonly number[],
  residuals: Float64Array,
  before: Float64Array | null,
): Here | null {
  const columns = columnsOf(problem, x);
  if (columns === null) return null;
  const scale = Float64Array.from(columns, (column, i) => {
    const size = Math.max(before?.[i] ?? 0, Math.sqrt(product(column, column)));
    return size > 0 ? size : 1;
  });
  return { x, residuals, cost: half(residuals), columns, scale };
}

/** True where no number can be moved within its bounds to lower the cost. */
function isLevel({ low, high }: LeastSquares, { x, residuals, columns, scale }: Here): boolean {
  const size = Math.sqrt(product(residuals, residuals));
  return columns.every((column, i) => {
    const rise = product(column, residuals);
    const isHeld = rise > 0 ? x[i]! <= low[i]! : x[i]! >= high[i]!;
    return isHeld || Math.abs(rise) <= LEVEL * scale[i]! * size;
  });
}

/** The damped step inside the bounds, in the numbers' own units. */
function stepFrom({ low, high }: LeastSquares, here: Here, damping: number): Float64Array | null {
  const { x, residuals, columns, scale } = here;
  const n = x.length;
  const curvature = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1) {
    for (let j = i; j < n; j += 1) {
      const value = product(columns[i]!, columns[j]!) / (scale[i]! * scale[j]!);
      curvature[i * n + j] = value;
      curvature[j * n + i] = value;
    }
    curvature[i * n + i] = curvature[i * n + i]! + damping;
  }
  const step = boxedStep({
    curvature,
    slope: Float64Array.from(columns, (column, i) => product(column, residuals) / scale[i]!),
    low: Float64Array.from(x, (each, i) => Math.min(0, (low[i]! - each) * scale[i]!)),
    high: Float64Array.from(x, (each, i) => Math.max(0, (high[i]! - each) * scale[i]!)),
  });
  return step?.map((each, i) => each / scale[i]!) ?? null;
}

/** What the straightened residuals say the cost is after a step. */
function foretold({ residuals, columns }: Here, step: Float64Array): number {
  const after = residuals.slice();
  columns.forEach((column, i) => {
    for (let k = 0; k < after.length; k += 1) after[k] = after[k]! + column[k]! * step[i]!;
  });
  return half(after);
}

interface Damping {
  value: number;
  growth: number;
}

type Turn =
  | 'settled'
  | 'stuck'
  | { readonly x: readonly number[]; readonly residuals: Float64Array };

/** Tries steps, damped more and more, until one lowers the cost. */
function* turnFrom(
  problem: LeastSquares,
  here: Here,
  damping: Damping,
  smallestGain: number,
): Steps<Turn> {
  const { low, high } = problem;
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    const step = stepFrom(problem, here, damping.value);
    const gain = step === null ? Number.NaN : here.cost - foretold(here, step);
    if (step !== null && gain <= smallestGain * here.cost) return 'settled';
    const x = here.x.map((each, i) =>
      Math.min(high[i]!, Math.max(low[i]!, each + (step?.[i] ?? 0))),
    );
    const residuals = step === null ? null : problem.residuals(x);
    yield 0;
    const truth = residuals === null ? Number.NaN : (here.cost - half(residuals)) / gain;
    if (residuals !== null && truth > 1e-4) {
      const share = Math.max(1 / 3, 1 - (2 * truth - 1) ** 3);
      damping.value = Math.max(LEAST_DAMPING, damping.value * share);
      damping.growth = 2;
      return { x, residuals };
    }
    damping.value *= damping.growth;
    damping.growth *= 2;
  }
  return 'stuck';
}

/** Solves from a start, which is moved into the bounds first; null where there is nothing at the start. */
export function* boundedLeastSquares(
  problem: LeastSquares,
  start: readonly number[],
  options: SolvingOptions = {},
): Steps<Solved | null> {
  const { low, high } = problem;
  const { mostTurns = MOST_TURNS, smallestGain = SMALLEST_GAIN } = options;
  const x = start.map((each, i) => Math.min(high[i]!, Math.max(low[i]!, each)));
  const residuals = problem.residuals(x);
  let here = residuals === null ? null : placeAt(problem, x, residuals, null);
  if (here === null) return null;
  const damping: Damping = { value: FIRST_DAMPING, growth: 2 };
  for (let turns = 0; turns < mostTurns; turns += 1) {
    const answer = { x: here.x, cost: here.cost, turns };
    if (here.cost === 0 || isLevel(problem, here)) return { ...answer, isSettled: true };
    const turn: Turn = yield* turnFrom(problem, here, damping, smallestGain);
    if (typeof turn === 'string') return { ...answer, isSettled: turn === 'settled' };
    const next = placeAt(problem, turn.x, turn.residuals, here.scale);
    if (next === null) return { x: turn.x, cost: half(turn.residuals), isSettled: false, turns };
    here = next;
    yield turns / mostTurns;
  }
  return { x: here.x, cost: here.cost, isSettled: false, turns: mostTurns };
}
