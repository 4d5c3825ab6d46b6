/** Corners drawn at random, a step at a time wherever it runs; the newest question wins. */
import {
  type Model,
  type MonteCarlo,
  type MonteCarloOptions,
  monteCarloInSteps,
} from '../../solver/index.ts';
import type { Runner } from './background.ts';
import { createNewestJob } from './turns.ts';

export type MonteCarloRequest =
  | {
      readonly kind: 'draw';
      /** Grows with every request. */
      readonly number: number;
      readonly model: Model;
      readonly options: MonteCarloOptions;
    }
  | { readonly kind: 'cancel' };

export interface MonteCarloAnswer {
  readonly number: number;
  /** 0 to 1. */
  readonly progress: number;
  readonly isDone: boolean;
  /** What was drawn; null until it is done, and where the pose is out of reach. */
  readonly found: MonteCarlo | null;
}

/** `later` runs a function soon, after whatever waits; `clock` counts ms. */
export function createMonteCarloRunner(
  answer: (answer: MonteCarloAnswer) => void,
  later: (run: () => void) => void,
  clock: () => number,
): Runner<MonteCarloRequest> {
  const job = createNewestJob<MonteCarlo | null>(later, clock);

  return {
    ask(request) {
      job.drop();
      if (request.kind === 'cancel') return;
      const { number, model, options } = request;
      job.begin(monteCarloInSteps(model, options), {
        hearProgress: (progress) => answer({ number, progress, isDone: false, found: null }),
        hearDone: (found) => answer({ number, progress: 1, isDone: true, found }),
      });
    },
  };
}
