/** Fits a model's points to what was read, and says what moved, what is left and what does not agree. */
import type { Input } from '../inputs/input.ts';
import type { Model } from '../model/model.ts';
import type { Steps } from '../stops/steps.ts';
import { type Agreement, agreementInSteps } from './agreement.ts';
import { type Answers, answersInSteps } from './answers.ts';
import { expectedInto, planReadings } from './expected.ts';
import { type FitInput, fitInputs, statesPlusMinus } from './fitInputs.ts';
import { withHeights } from './heights.ts';
import {
  type Closeness,
  type FitPlace,
  type FitProblem,
  type Fitted,
  mostProbableInSteps,
  narrowed,
  startInSteps,
} from './mostProbable.ts';
import { plusMinusAfter, widened } from './posterior.ts';
import { scaled } from './progress.ts';
import type { Reading } from './reading.ts';
import { modelAt, type Unknown, unknownsOf } from './unknowns.ts';

/** A reading beside what the points give for it. */
export interface FitReading {
  readonly reading: Reading;
  readonly before: number;
  readonly after: number;
  /** Its ± with that of its height. */
  readonly plusMinus: number;
  /** (read − after) / ±: what remains unexplained. */
  readonly off: number;
}

/** An input that the fit moved. */
export interface FitMove {
  readonly input: Input;
  readonly before: number;
  readonly after: number;
  /** (after − before) / ±. */
  readonly moved: number;
  readonly plusMinusBefore: number;
  readonly plusMinusAfter: number;
}

export interface Fit extends Agreement, Answers {
  readonly ok: true;
  readonly model: Model;
  /** The readings that were used, in order, and the indices in the list given of those whose pose is out of reach. */
  readonly readings: readonly FitReading[];
  readonly unreached: readonly number[];
  /** Largest move first, by its own ±; moves below a hundredth are left out. */
  readonly moves: readonly FitMove[];
  /** False where the search ended before it had settled: the result is then the best that was found. */
  readonly isSettled: boolean;
}

/**
 * Why there is no fit: no reading whose pose can be reached; no point with a ±; or the corner cannot be moved about
 * where it stands.
 */
export interface NoFit {
  readonly ok: false;
  readonly why: 'noReadings' | 'noPlusMinus' | 'stuck';
}

/** How closely the fit is settled, in ± of any point, and from where on it counts as not settled. */
const CLOSENESS: Closeness = { step: 1e-7, stale: 1e-3 };
const UNSETTLED = 1e-3;
/** Moves below this share of a ± are not worth naming. */
const LEAST_MOVE = 0.01;

/** The readings that the model as measured can be read for, by their indices. */
export function reachedReadings(measured: Model, readings: readonly Reading[]): readonly number[] {
  const values = new Float64Array(readings.length);
  expectedInto(planReadings(readings), measured, values);
  return readings.map((_, i) => i).filter((i) => Number.isFinite(values[i]!));
}

/** The problem of fitting the inputs to readings, all of which the model as measured can be read for. */
export function fitProblem(
  measured: Model,
  inputs: readonly Unknown[],
  readings: readonly Reading[],
): FitProblem {
  const plan = planReadings(readings);
  const reader = {
    size: readings.length,
    into: (model: Model, out: Float64Array) => expectedInto(plan, model, out),
  };
  return { unknowns: unknownsOf(measured, inputs), readings, reader };
}

function movesOf(
  inputs: readonly FitInput[],
  start: Float64Array,
  { x, posterior }: Fitted,
): FitMove[] {
  const one = new Float64Array(inputs.length);
  const moves = inputs.flatMap(({ input, plusMinus }, index): FitMove[] => {
    const moved = x[index]!;
    if (Math.abs(moved) < LEAST_MOVE) return [];
    one.fill(0);
    one[index] = plusMinus;
    const before = start[index]!;
    return [
      {
        input,
        before,
        after: before + moved * plusMinus,
        moved,
        plusMinusBefore: plusMinus,
        plusMinusAfter: plusMinusAfter(posterior, one),
      },
    ];
  });
  return moves.sort((a, b) => Math.abs(b.moved) - Math.abs(a.moved));
}

/** What is asked of the corner depends on more inputs than what was read. */
function answersOfAll(whole: FitProblem, heard: readonly number[], fitted: Fitted): Steps<Answers> {
  const { unknowns, readings } = whole;
  const columns = unknowns.inputs.length;
  const x = new Float64Array(columns);
  heard.forEach((place, k) => {
    x[place] = fitted.x[k]!;
  });
  return answersInSteps(unknowns, x, widened(fitted.posterior, heard, columns), readings);
}

/** The inputs that some reading depends on at all: the others stay where they are. */
function heardAt({ unknowns, readings }: FitProblem, { slopes }: FitPlace): readonly number[] {
  const columns = unknowns.inputs.length;
  return unknowns.inputs
    .map((_, i) => i)
    .filter((i) => readings.some((_, row) => slopes[row * columns + i] !== 0));
}

/**
 * Moves the inputs as little as their ± allow (weighted least squares with every input's measured value as one more
 * reading of it) until the readings are met as well as theirs allow. `heights` is how well the travel of each was known,
 * mm. Progress 0 to 1.
 */
export function* fitInSteps(
  measured: Model,
  given: readonly Reading[],
  heights = 0,
): Steps<Fit | NoFit> {
  const all = fitInputs(measured);
  if (!statesPlusMinus(measured)) return { ok: false, why: 'noPlusMinus' };
  const reached = reachedReadings(measured, given);
  if (reached.length === 0) return { ok: false, why: 'noReadings' };
  const own = reached.map((i) => given[i]!);
  const readings = withHeights(measured, own, heights);
  const whole = fitProblem(measured, all, readings);
  const start = yield* scaled(startInSteps(whole), 0, 0.15);
  if (start === null) return { ok: false, why: 'stuck' };
  const heard = heardAt(whole, start);
  const inputs = heard.map((i) => all[i]!);
  const problem = fitProblem(measured, inputs, readings);
  const fitted = yield* scaled(settledInSteps(problem, narrowed(start, heard)), 0.15, 0.45);
  if (fitted === null) return { ok: false, why: 'stuck' };
  const agreement = yield* scaled(agreementInSteps(problem, fitted), 0.45, 0.8);
  const told = yield* scaled(answersOfAll(whole, heard, fitted), 0.8, 1);
  const { unknowns } = problem;
  return {
    ok: true,
    ...agreement,
    ...told,
    model: modelAt(unknowns, fitted.x, true),
    readings: readings.map(({ value, plusMinus }, i) => ({
      reading: own[i]!,
      plusMinus,
      before: start.values[i]!,
      after: fitted.values[i]!,
      off: (value - fitted.values[i]!) / plusMinus,
    })),
    unreached: given.map((_, i) => i).filter((i) => !reached.includes(i)),
    moves: movesOf(inputs, unknowns.start, fitted),
    isSettled: fitted.left < UNSETTLED,
  };
}

/** From a place to the fit of all readings, as closely as it settles. */
export function settledInSteps(problem: FitProblem, from: FitPlace): Steps<Fitted | null> {
  const used = problem.readings.map((_, i) => i);
  return mostProbableInSteps(problem, from, used, CLOSENESS);
}
