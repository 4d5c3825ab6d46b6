/** Measure again: which inputs spoil an answer most, and what its ± would become if the first of them were measured better. */
import type { Input } from '../inputs/input.ts';
import { GRADES } from '../inputs/sigma.ts';
import type { Knowledge, KnownAnswer } from './knowledge.ts';

/** An input and its part in an answer's ±. */
export interface Spoiler {
  readonly input: Input;
  /** One standard uncertainty of the input, in its unit. */
  readonly sigma: number;
  /** What it alone makes of the answer's standard uncertainty, in the answer's unit. */
  readonly effect: number;
  /** Its share of the answer's variance, 0 to 1. */
  readonly share: number;
}

/** A point, or a measured number, whose coordinates spoil an answer together. */
export interface SpoilingPoint {
  readonly path: string;
  readonly label: string;
  /** Worst first. */
  readonly spoilers: readonly Spoiler[];
  readonly effect: number;
  readonly share: number;
}

export interface Again {
  /** By coordinate, worst first; inputs without effect are left out. */
  readonly spoilers: readonly Spoiler[];
  /** By point, worst first. */
  readonly points: readonly SpoilingPoint[];
  /** The answer's standard uncertainty now, and with the first one, two, three coordinates measured better. */
  readonly steps: readonly number[];
  /** The same with the first one, two, three points measured better. */
  readonly pointSteps: readonly number[];
}

/** How well lengths are measured when they are measured again with care, mm. Common practice, no source. */
export const USUAL_BETTER = 0.5;

/** Angles read on the bench, degrees: as well as they are read again. */
const BETTER_ANGLE = GRADES.find(({ name }) => name === 'bench')?.degree ?? 0;
const STEPS = 3;
/** Shares below this are rounding. */
const NO_SHARE = 1e-9;

/** The ± of an input measured again, lengths to `better` mm: never worse than now; 0 takes everything as known perfectly. */
export function betterSigma({ input, sigma }: Spoiler, better: number): number {
  if (better === 0) return 0;
  if (input.unit === 'mm') return Math.min(sigma, better);
  return Math.min(sigma, input.unit === 'degree' ? BETTER_ANGLE : sigma / 2);
}

/** What of an input's variance in the answer goes when it is measured again. */
function gain(spoiler: Spoiler, better: number): number {
  return spoiler.effect ** 2 * (1 - (betterSigma(spoiler, better) / spoiler.sigma) ** 2);
}

function stepsOf(total: number, gains: readonly number[]): number[] {
  let variance = total;
  const left = gains.slice(0, STEPS).map((less) => {
    variance -= less;
    return Math.sqrt(Math.max(0, variance));
  });
  return [Math.sqrt(total), ...left];
}

function pointsOf(spoilers: readonly Spoiler[]): SpoilingPoint[] {
  const byPath = new Map<string, Spoiler[]>();
  for (const spoiler of spoilers) {
    const { path } = spoiler.input;
    byPath.set(path, [...(byPath.get(path) ?? []), spoiler]);
  }
  return [...byPath].map(([path, own]) => ({
    path,
    label: own[0]!.input.pointLabel,
    spoilers: own,
    effect: Math.hypot(...own.map(({ effect }) => effect)),
    share: own.reduce((sum, { share }) => sum + share, 0),
  }));
}

/** Ranks the inputs of an answer; variances of independent inputs add up (JCGM 100:2008, 5.1.2). */
export function measureAgain(
  { inputs, sigmas }: Pick<Knowledge, 'inputs' | 'sigmas'>,
  answer: KnownAnswer,
  better: number = USUAL_BETTER,
): Again {
  const total = answer.uncertainty ** 2;
  const spoilers = inputs
    .map((input, i): Spoiler => {
      const sigma = sigmas[i]!;
      const effect = Math.abs(answer.slopes[i]! * sigma);
      return { input, sigma, effect, share: total > 0 ? effect ** 2 / total : 0 };
    })
    .filter(({ share }) => share > NO_SHARE)
    .sort((one, other) => other.share - one.share);
  const points = pointsOf(spoilers).sort((one, other) => other.share - one.share);
  return {
    spoilers,
    points,
    steps: stepsOf(
      total,
      spoilers.map((spoiler) => gain(spoiler, better)),
    ),
    pointSteps: stepsOf(
      total,
      points.map((point) => point.spoilers.reduce((sum, one) => sum + gain(one, better), 0)),
    ),
  };
}
