/**
 * The uncertainties once more by drawing corners at random (JCGM 101:2008): no derivative, no straight line. It tells whether the linear
 * values of the law of propagation are good enough, and what the answers' true spread is where they are not.
 */
import { assemble } from '../corner.ts';
import { inputSigmas } from '../inputs/sigma.ts';
import { rideTravel } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';
import { createSensitivities } from '../sensitivity/sensitivity.ts';
import { allSteps, type Steps } from '../stops/steps.ts';
import { numericalTolerance } from './digits.ts';
import { createDraw, createGauge, gaugeInto } from './draws.ts';
import { type Histogram, histogramOf } from './histogram.ts';
import { type Knowledge, type KnownAnswer, type KnownKey, knowledgeAt } from './knowledge.ts';
import { evenNumbers, normalNumbers } from './random.ts';
import { coverageInterval, deviationOf, meanOf } from './statistics.ts';

export interface MonteCarloOptions {
  /** Number of corners; default 10 000. */
  readonly draws?: number;
  readonly seed?: number;
  /** The pose; default the set pose. mm */
  readonly travel?: number;
  readonly rack?: number;
  /** Default: every answer that exists but the axle's and `toeChange`, which cost most. */
  readonly keys?: readonly KnownKey[];
}

export interface DrawnAnswer {
  readonly key: KnownKey;
  readonly linear: KnownAnswer;
  /** Of the drawn corners that have the answer. */
  readonly mean: number;
  readonly uncertainty: number;
  /** Ninety-five of a hundred drawn values lie between; as many below as above (JCGM 101:2008, 7.7.2). */
  readonly low: number;
  readonly high: number;
  /** Numerical tolerance δ: half of the last digit when the linear uncertainty is stated with one. */
  readonly tolerance: number;
  /** Whether both ends of value ± 1.96·u lie within δ of the drawn ones (JCGM 101:2008, 8.1.2), the scatter of these allowed for. */
  readonly isLinearGood: boolean;
  /** Drawn corners that could be built and do not have the answer. */
  readonly without: number;
  readonly histogram: Histogram;
}

export interface MonteCarlo {
  readonly draws: number;
  readonly seed: number;
  /** Draws whose points make no corner, or one that does not reach the pose: they are counted and left out. */
  readonly unbuilt: number;
  /** Whether the model states no uncertainty at all: then every corner drawn is the same. */
  readonly isExact: boolean;
  readonly answers: readonly DrawnAnswer[];
}

/** 97.5 % point of the normal distribution. */
const COVERAGE_FACTOR = 1.959964;
const COVERAGE = 0.95;
/** Three standard deviations of a drawn end of the interval, for one draw and u = 1: √(p(1−p))/φ with p = 2.5 % and φ the normal density there. */
const END_SCATTER = (3 * Math.sqrt(0.025 * 0.975)) / 0.05845;
/** Corners drawn between two steps. */
const BATCH = 50;
export const USUAL_DRAWS = 10_000;

const COSTLY: ReadonlySet<KnownKey> = new Set([
  'toeChange',
  'innerSteer',
  'outerSteer',
  'ackermann',
  'turningCircle',
]);

function summed(key: KnownKey, linear: KnownAnswer, built: Float64Array): DrawnAnswer {
  const sorted = built.filter((value) => Number.isFinite(value)).sort();
  const mean = meanOf(sorted);
  const [low, high] = coverageInterval(sorted, COVERAGE);
  const half = COVERAGE_FACTOR * linear.uncertainty;
  const tolerance = linear.uncertainty > 0 ? numericalTolerance(linear.uncertainty) : 0;
  const scatter = (END_SCATTER * linear.uncertainty) / Math.sqrt(sorted.length);
  const away = Math.max(Math.abs(linear.value - half - low), Math.abs(linear.value + half - high));
  return {
    key,
    linear,
    mean,
    uncertainty: deviationOf(sorted, mean),
    low,
    high,
    tolerance,
    isLinearGood: away <= tolerance + scatter + ROUNDING * (1 + Math.abs(linear.value)),
    without: built.length - sorted.length,
    histogram: histogramOf(sorted),
  };
}

/** Differences that are rounding, as a part of the value: answers that nothing uncertain moves. */
const ROUNDING = 1e-9;

function askedKeys(knowledge: Knowledge, keys: readonly KnownKey[] | undefined): KnownKey[] {
  const there = Object.keys(knowledge.answers ?? {}) as KnownKey[];
  return there.filter((key) => (keys === undefined ? !COSTLY.has(key) : keys.includes(key)));
}

/** Draws corners, some dozens a step. Null where the pose itself is out of reach. */
export function* monteCarloInSteps(
  model: Model,
  options: MonteCarloOptions = {},
): Steps<MonteCarlo | null> {
  const { draws = USUAL_DRAWS, seed = 1, rack = 0 } = options;
  const travel = options.travel ?? rideTravel(model.travel);
  const corner = assemble(model);
  const made = createSensitivities(corner);
  const sigmas = inputSigmas(model, made.inputs);
  const knowledge = knowledgeAt(made, sigmas, travel, rack);
  if (knowledge.answers === null) return null;
  const keys = askedKeys(knowledge, options.keys);
  const gauge = createGauge({ travel, rack, keys });
  const draw = createDraw(corner, made.inputs, sigmas, normalNumbers(evenNumbers(seed)));
  const rows = keys.map(() => new Float64Array(draws));
  const out = new Float64Array(keys.length);
  let built = 0;
  for (let count = 1; count <= draws; count += 1) {
    if (gaugeInto(gauge, draw(), out)) {
      for (let i = 0; i < keys.length; i += 1) rows[i]![built] = out[i]!;
      built += 1;
    }
    if (count % BATCH === 0) yield count / draws;
  }
  const answers = keys.map((key, i) =>
    summed(key, knowledge.answers![key]!, rows[i]!.subarray(0, built)),
  );
  return {
    draws,
    seed,
    unbuilt: draws - built,
    isExact: sigmas.every((one) => one === 0),
    answers,
  };
}

/** The same at once. */
export function monteCarlo(model: Model, options?: MonteCarloOptions): MonteCarlo | null {
  return allSteps(monteCarloInSteps(model, options));
}
