/** Which inputs spoil an answer most, and what its ± would become if the first of them were measured better. */
import { GRADES, type Input } from '../../../solver/index.ts';
import type { Answer, Knowledge } from '../../worker/knowledge.ts';

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

export interface Again {
  /** Worst first; inputs without effect are left out. */
  readonly spoilers: readonly Spoiler[];
  /** The answer's standard uncertainty now, and with the first one, two, three measured better. */
  readonly steps: readonly number[];
}

/** Angles read on the bench, degrees: as well as they are read again. */
const BETTER_ANGLE = GRADES.find(({ name }) => name === 'bench')?.degree ?? 0;
const STEPS = 3;

/** The ± of an input when it is measured again, lengths to `better` mm: never worse than now. */
export function betterSigma({ input, sigma }: Spoiler, better: number): number {
  if (input.unit === 'mm') return Math.min(sigma, better);
  return Math.min(sigma, input.unit === 'degree' ? BETTER_ANGLE : sigma / 2);
}

/** Ranks the inputs of an answer; variances of independent inputs add up (JCGM 100:2008, 5.1.2). */
export function measureAgain(knowledge: Knowledge, answer: Answer, better: number): Again {
  const total = answer.uncertainty ** 2;
  const spoilers = knowledge.inputs
    .map((input, i): Spoiler => {
      const sigma = knowledge.sigmas[i]!;
      const effect = Math.abs(answer.slopes[i]! * sigma);
      return { input, sigma, effect, share: total > 0 ? effect ** 2 / total : 0 };
    })
    // Below a millionth it is noise of the arithmetic.
    .filter(({ share }) => share > 1e-6)
    .sort((one, other) => other.share - one.share);
  let variance = total;
  const steps = [Math.sqrt(variance)];
  for (const spoiler of spoilers.slice(0, STEPS)) {
    variance -= spoiler.effect ** 2 * (1 - (betterSigma(spoiler, better) / spoiler.sigma) ** 2);
    steps.push(Math.sqrt(Math.max(0, variance)));
  }
  return { spoilers, steps };
}
