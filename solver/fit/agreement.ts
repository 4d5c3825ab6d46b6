/** Whether readings and points can all be true together, and which reading cannot when the rest can. */
import { chiSquareTail } from '../math/chiSquare.ts';
import type { Steps } from '../stops/steps.ts';
import {
  type Closeness,
  type FitProblem,
  type Fitted,
  mostProbableInSteps,
} from './mostProbable.ts';
import { plusMinusAfter } from './posterior.ts';
import { scaled } from './progress.ts';

/** Probabilities from which chance no longer explains what is off, and hardly can: common practice, no source. */
export const STRAINED_BELOW = 0.05;
export const DISAGREE_BELOW = 0.001;

/**
 * Of two readings whose removal both mend the fit, the one that mends it by this much less is left alone: it would be
 * e² (about 7) times less likely. Chosen here.
 */
const AS_GOOD = 4;

/** Refits without one reading are for comparing, not for cutting metal: they may keep the whole fit's slopes. */
const REFIT: Closeness = { step: 1e-3, stale: 0.5 };

/** One reading against everything else. */
export interface Alone {
  /** What the points and the other readings say it should have been, and how far that is known together with it. */
  readonly expected: number;
  readonly plusMinus: number;
  /** (read − expected) / plusMinus: of size 1 where all is well. */
  readonly distance: number;
  /** By how much chi-square drops without it, and the probability of what is then left. */
  readonly drop: number;
  readonly probabilityWithout: number;
}

export interface Agreement {
  /** Least sum of squares of readings and points, in units of ±, with one degree of freedom a reading. */
  readonly chiSquare: number;
  readonly degrees: number;
  /** How often chance alone would bring as much or more where every ± is true. */
  readonly probability: number;
  readonly verdict: 'agree' | 'strained' | 'disagree';
  /** One a reading, in order. */
  readonly alone: readonly (Alone | null)[];
  /** Indices of the readings without any single one of which the rest agrees; several where they cannot be told apart. */
  readonly suspects: readonly number[];
}

function verdictOf(probability: number): Agreement['verdict'] {
  if (probability < DISAGREE_BELOW) return 'disagree';
  return probability < STRAINED_BELOW ? 'strained' : 'agree';
}

/** The fit is made again without the reading, and the reading compared with what the rest foretells. */
function* aloneInSteps(problem: FitProblem, fitted: Fitted, index: number): Steps<Alone | null> {
  const { readings, unknowns } = problem;
  const others = readings.map((_, i) => i).filter((i) => i !== index);
  const rest = yield* mostProbableInSteps(problem, fitted, others, REFIT);
  if (rest === null) return null;
  const { value, plusMinus } = readings[index]!;
  const columns = unknowns.inputs.length;
  const row = rest.slopes.subarray(index * columns, (index + 1) * columns);
  const expected = rest.values[index]!;
  const together = Math.hypot(plusMinus, plusMinusAfter(rest.posterior, row));
  const left = rest.readingsPart + rest.pointsPart;
  return {
    expected,
    plusMinus: together,
    distance: (value - expected) / together,
    drop: Math.max(0, fitted.readingsPart + fitted.pointsPart - left),
    probabilityWithout: others.length === 0 ? 1 : chiSquareTail(left, others.length),
  };
}

function suspectsOf(alone: readonly (Alone | null)[], verdict: Agreement['verdict']) {
  if (verdict === 'agree' || alone.length < 2) return [];
  const most = Math.max(...alone.map((one) => one?.drop ?? 0));
  return alone.flatMap((one, index) =>
    one !== null && one.probabilityWithout >= STRAINED_BELOW && one.drop >= most - AS_GOOD
      ? [index]
      : [],
  );
}

/**
 * Compares a fit of all readings with chance, and each reading with all the rest (leaving one out). In the linear case
 * least chi-square over m readings has m degrees of freedom: n points bring n equations and n unknowns.
 */
export function* agreementInSteps(problem: FitProblem, fitted: Fitted): Steps<Agreement> {
  const count = problem.readings.length;
  const chiSquare = fitted.readingsPart + fitted.pointsPart;
  const probability = chiSquareTail(chiSquare, count);
  const alone: (Alone | null)[] = [];
  for (let index = 0; index < count; index += 1) {
    alone.push(
      yield* scaled(aloneInSteps(problem, fitted, index), index / count, (index + 1) / count),
    );
  }
  const verdict = verdictOf(probability);
  const suspects = suspectsOf(alone, verdict);
  return { chiSquare, degrees: count, probability, verdict, alone, suspects };
}
